/**
 * What is foretold of a piece before any sample is made. Of rings of one size
 * it is read between stored shapes, in well under a millisecond; a mix of
 * sizes is worked out, which takes some tenths of a second.
 */
import { failed, ok, type Result } from '#lib/result.ts';
import { pitchIn } from '#lib/weave/space/known-shape.ts';
import type { KnownWeave } from '#lib/weave/space/known-weave.ts';
import { isOwn } from '#lib/weave/space/own-id.ts';
import {
  measuredPiece,
  type PieceShape,
  type PieceShapeFault,
  pushedPitch,
  shapeOfPiece,
} from '#lib/weave/space/piece-in-space.ts';
import { isTooTight, type RingMeasure } from '#lib/weave/space/shape-of-weave.ts';
import { measuresOf } from './measures.ts';
import type { Pictured } from './pictured.ts';

/** Lengths in mm. */
export interface OneRepeat {
  /** Pulled taut, the longest that was found: a piece takes hardly fewer repeats than this gives. */
  readonly tautMm: number;
  /** Pushed together from taut until nothing gives. */
  readonly pushedMm: number;
}

export interface Foretold {
  readonly weave: string;
  /** Null for a closed group of rings, which no repeat makes longer. */
  readonly oneRepeat: OneRepeat | null;
  /** Aspect ratio of its rings, and the smallest at which the weave exists; null where it mixes sizes. */
  readonly fit: { readonly has: number; readonly needs: number } | null;
}

/** What is foretold of a lesson's piece, or why nothing can be. */
export function foretell(content: Pictured): Result<Foretold, PieceShapeFault> {
  const sizes = measuresOf(content);
  const measured = measuredPiece(content, sizes, content.own);
  if (!measured.ok) return measured;
  const { known, cells, measures } = measured.value;
  const { id, kind } = known.weave;
  const fit = fitOf(known, measures);
  if (fit && isTooTight(fit.needs, fit.has)) return failed({ code: 'too-tight', ...fit, isOwn: isOwn(id) });
  if (fit && kind === 'unit') return ok({ weave: id, oneRepeat: null, fit });
  const read = fit && readBetween(known, cells, measures, fit);
  if (read) return ok(read);
  const shape = shapeOfPiece(content, sizes, { own: content.own });
  return shape.ok ? ok(foretoldOf(shape.value)) : shape;
}

/** The same of a shape that has been worked out already. */
export function foretoldOf(shape: PieceShape): Foretold {
  const { known, cell, cells } = shape;
  const weave = known.weave.id;
  const measures = cell.rings.map(({ radius, wire }) => ({ inner: 2 * radius - wire, wire }));
  const fit = fitOf(known, measures);
  if (shape.pieceCell.isUnit) return { weave, oneRepeat: null, fit };
  const read = fit && readBetween(known, cells, measures, fit);
  return read ?? { weave, oneRepeat: { tautMm: cell.pitch, pushedMm: pushedPitch(shape) }, fit };
}

/** Null where sizes are mixed. */
function fitOf({ settled }: KnownWeave, measures: readonly RingMeasure[]): Foretold['fit'] {
  const [first] = measures;
  const needs = settled.leastAspectRatio;
  if (!first || !measures.every((each) => isSameSize(each, first))) return null;
  return { has: first.inner / first.wire, needs };
}

/** Read between stored shapes; null beyond the last of them, and between two folds. */
function readBetween(
  { weave, settled }: KnownWeave,
  cells: number,
  [first]: readonly RingMeasure[],
  fit: NonNullable<Foretold['fit']>,
): Foretold | null {
  const pitch = pitchIn(settled, Math.max(fit.has, fit.needs));
  if (!first || !pitch) return null;
  const length = first.wire * cells;
  return {
    weave: weave.id,
    oneRepeat: { tautMm: pitch.taut * length, pushedMm: pitch.pushed * length },
    fit,
  };
}

/** Sizes are kept to 1/10,000 mm. */
const isSameSize = (a: RingMeasure, b: RingMeasure): boolean =>
  Math.abs(a.inner - b.inner) < 1e-6 && Math.abs(a.wire - b.wire) < 1e-6;
