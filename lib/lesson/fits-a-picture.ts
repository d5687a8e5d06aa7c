/** Whether one picture can hold the whole length of a lesson's piece, and why not. */
import { unitOf, unitsOf } from '#lib/weave/runs.ts';
import { ringsAdded } from '#lib/weave/sequence.ts';
import { pieceCell } from '#lib/weave/space/piece-cell.ts';
import { weaveOfPiece } from '#lib/weave/space/piece-in-space.ts';
import { measuresOf } from './measures.ts';
import type { Pictured } from './pictured.ts';

/** Rings that a picture of the whole length holds at most; beyond them it says nothing that fewer do not say. */
const MOST_RINGS = 3000;

/** Why a whole length has no picture. */
export type NoWholeLength = 'too-many-rings' | 'sizes-differ' | 'weaves-differ';

/** Null where units are the same weave in rings of the same sizes, rings of one size stand in for each other, and it is not endless. */
export function whyNoWholeLength(content: Pictured, repeats: number): NoWholeLength | null {
  const sizes = measuresOf(content);
  const sizeOf = (kind: string): string => `${sizes.get(kind)?.inner} ${sizes.get(kind)?.wire}`;
  const units = unitsOf(content);
  const added = Math.max(
    0,
    ...units.map((unit) => unitOf(content, unit).reduce((sum, each) => sum + ringsAdded(each), 0)),
  );
  if (repeats * added > MOST_RINGS) return 'too-many-rings';
  if (content.runs.some(({ swaps }) => swaps.some(({ ringKind, by }) => sizeOf(ringKind) !== sizeOf(by))))
    return 'sizes-differ';
  const isOne = units.length === 1 || new Set(units.map((unit) => formOf(content, unit, sizeOf))).size === 1;
  return isOne ? null : 'weaves-differ';
}

/** The weave that a unit repeats and the size of its ring at each place, as text; its own name where none is known. */
function formOf(content: Pictured, unit: string, sizeOf: (kind: string) => string): string {
  const repeat = unitOf(content, unit).map(({ unit: _, ...each }) => each);
  const cell = pieceCell({ ...content, repeat });
  const found = cell && weaveOfPiece(cell);
  if (!found) return unit;
  const { weave, match } = found;
  const kinds = cell.rings.map(({ ringKind }) => sizeOf(ringKind));
  // Of one size it matters to no ring where its unit begins.
  if (new Set(kinds).size === 1) return `${weave.id}: ${kinds[0]}`;
  const cells = Math.abs(match.cellsARepeat);
  const places = kinds.map((size, at) => {
    const { ring, cell: inCell } = match.images[at] ?? { ring: -1, cell: 0 };
    return `${ring} ${((inCell % cells) + cells) % cells} ${size}`;
  });
  return `${weave.id}, ${cells}: ${places.sort().join(', ')}`;
}
