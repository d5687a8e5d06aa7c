/** A lesson's ring sequence held against the shape of the weave that it is, and of the weave that it says it is. */
import type { Result } from '#lib/result.ts';
import { weavesNamed } from '#lib/weave/named-weave.ts';
import { unitsOf } from '#lib/weave/runs.ts';
import { pieceCell } from '#lib/weave/space/piece-cell.ts';
import { type PieceShape, type PieceShapeFault, weaveOfPiece } from '#lib/weave/space/piece-in-space.ts';
import { type Proof, provePlaced, proveRepeat } from '#lib/weave/space/prove-piece.ts';
import { WEAVES_IN_SPACE } from '#lib/weave/space/weave-in-space.ts';
import type { ShapeOf } from './lesson-pictures.ts';
import { measuresOf } from './measures.ts';
import type { Pictured } from './pictured.ts';
import { unitAlone } from './unit-alone.ts';

export type LessonProof =
  | Proof
  /** The sequence is a whole other weave than the lesson says. */
  | { readonly state: 'another weave'; readonly weave: string; readonly named: string };

/** What holding one unit against its shape found. */
export interface UnitProof {
  /** Empty for the main unit, or the only one. */
  readonly unit: string;
  readonly proof: LessonProof;
}

/** Each unit by itself, as no shape holds several; the lesson's name for its weave is the main unit's. */
export function proveUnits(content: Pictured, shapeOf: ShapeOf): readonly UnitProof[] {
  const units = unitsOf(content);
  if (units.length < 2) {
    const proof = proveLesson(content, shapeOf(content));
    return proof ? [{ unit: '', proof }] : [];
  }
  return units.flatMap((unit) => {
    const alone = { ...unitAlone(content, unit), weave: unit === '' ? content.weave : '' };
    const proof = proveLesson(alone, shapeOf(alone));
    if (proof?.state !== 'differs' || unit === '') return proof ? [{ unit, proof }] : [];
    // Start and finishing are the main unit's: that they fit no other one is no fault.
    const own = new Set(alone.repeat.map(({ id }) => id));
    const contradictions = proof.contradictions.filter(({ placementId }) => own.has(placementId ?? ''));
    return contradictions.length > 0 ? [{ unit, proof: { ...proof, contradictions } }] : [];
  });
}

/** Null where nothing can be held against anything: rings are not named, or no known weave is near. */
export function proveLesson(
  content: Pictured,
  shape: Result<PieceShape, PieceShapeFault>,
): LessonProof | null {
  const cell = pieceCell(content);
  if (!cell) return null;
  const names = weavesNamed(content.weave);
  const named = [...new Set(names.flatMap(shapesOf))];
  const is = weaveOfPiece(cell)?.known.weave.id;
  if (is === undefined) {
    // Nothing to grow along: a closed group is known as it is or not at all.
    const isOther = cell.isUnit || (names.length > 0 && named.length === 0);
    const differs = isOther ? null : proveRepeat(content, cell, named);
    return differs ?? (shape.ok ? provePlaced(content, shape.value, measuresOf(content)) : null);
  }
  const [first] = named;
  if (first !== undefined && !named.includes(is))
    return proveRepeat(content, cell, named) ?? { state: 'another weave', weave: is, named: first };
  return shape.ok ? provePlaced(content, shape.value, measuresOf(content)) : null;
}

/** The shape of a stored weave: variants in two sizes share that of one size. */
const shapesOf = (weave: string): readonly string[] =>
  WEAVES_IN_SPACE.filter(({ id }) => weave === id || weave.startsWith(`${id}-`)).map(({ id }) => id);
