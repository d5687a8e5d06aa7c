/**
 * The taut shape of a weave in given rings: of one size from the nearest
 * stored shape, of several sizes by growing the rings step by step from one
 * size to their own. Says by which number rings are too tight.
 */
import { failed, ok, type Result } from '#lib/result.ts';
import type { CellLink } from './cell-links.ts';
import { linkedAs } from './cell-links.ts';
import { cellOfShape, pitchIn } from './known-shape.ts';
import { findKnownWeave, type KnownWeave } from './known-weave.ts';
import { isOwn } from './own-id.ts';
import { ALONE, type Cell, inCell, middleRadius, scaledCell } from './round-ring.ts';
import type { SettledWeave } from './settled-weave.ts';
import { clearanceOf, settledChain, thickestChain } from './shape-chain.ts';
import { scale } from './vector.ts';

/** One ring by its inner diameter and its wire, both in one unit. */
export interface RingMeasure {
  readonly inner: number;
  readonly wire: number;
}

/** A taut cell in the unit of the rings, and the links that it was checked for. */
export interface WeaveShape {
  readonly cell: Cell;
  readonly links: readonly CellLink[];
  /** How many cells of the plain weave it holds. */
  readonly cells: number;
}

export type ShapeFault =
  | { readonly code: 'unknown-weave' }
  /** `needs`: inner diameter over wire that the weave asks for; `has`: what the rings have. */
  | {
      readonly code: 'too-tight';
      readonly needs: number;
      readonly has: number;
      /** The weave was derived, so that its smallest aspect ratio is only what was found. */
      readonly isOwn: boolean;
    }
  /** Of several sizes, inner diameters as they are: wires would have to be thinner, to this part of their thickness at the most. */
  | { readonly code: 'wires-too-thick'; readonly wiresBy: number; readonly isOwn: boolean }
  | { readonly code: 'none-found' };

const ROUNDS = 160;
/** What is left to gain then is a ten-thousandth of the pitch at most: far less than wire differs from its nominal thickness. */
const LEAST_GAIN = 1e-5;

/** The links of a cell that stands for `times` cells of the plain weave. */
export const repeatedLinks = (weave: KnownWeave['weave'], times: number): readonly CellLink[] =>
  Array.from({ length: times }, (_, at) =>
    weave.links.map(({ a, b, cells, sign }) => ({
      a: a + at * weave.rings,
      b: b + ((at + cells) % times) * weave.rings,
      cells: Math.floor((at + cells) / times),
      sign,
    })),
  )
    .flat()
    .map(inOrder);

/** Pairs inside one cell are named with the lower ring first. */
const inOrder = (link: CellLink): CellLink =>
  link.cells === 0 && link.a > link.b ? { ...link, a: link.b, b: link.a } : link;

/** `times` cells as one. */
export const repeatedCell = (cell: Cell, times: number): Cell => ({
  pitch: cell.pitch >= ALONE ? cell.pitch : cell.pitch * times,
  twist: cell.twist * times,
  rings: Array.from({ length: times }, (_, at) => cell.rings.map((ring) => inCell(ring, cell, at))).flat(),
});

/** The taut shape of the stored weave with an id; see `shapeOfKnown`. */
export function shapeOfWeave(id: string, rings: readonly RingMeasure[]): Result<WeaveShape, ShapeFault> {
  const known = findKnownWeave(id);
  return known ? shapeOfKnown(known, rings) : failed({ code: 'unknown-weave' });
}

/**
 * The taut shape of a weave. `rings` names one ring for all, or one for each
 * ring of one or several cells in a row.
 */
export function shapeOfKnown(
  { weave, settled }: KnownWeave,
  rings: readonly RingMeasure[],
): Result<WeaveShape, ShapeFault> {
  const [first] = rings;
  if (!first) return failed({ code: 'unknown-weave' });
  const isOneSize = rings.every(({ inner, wire }) => inner === first.inner && wire === first.wire);
  if (isOneSize) return ofOneSize(weave, settled, first, Math.max(1, Math.round(rings.length / weave.rings)));
  return rings.length % weave.rings === 0 ? ofSizes(weave, settled, rings) : failed({ code: 'none-found' });
}

/** Whether rings of one size are below the smallest aspect ratio; a hair of tolerance, as sizes are kept to 1/10,000 mm. */
export const isTooTight = (leastAspectRatio: number, aspectRatio: number): boolean =>
  aspectRatio < leastAspectRatio - 1e-4;

function ofOneSize(
  weave: KnownWeave['weave'],
  settled: SettledWeave,
  { inner, wire }: RingMeasure,
  cells: number,
): Result<WeaveShape, ShapeFault> {
  const has = inner / wire;
  if (isTooTight(settled.leastAspectRatio, has))
    return failed({ code: 'too-tight', needs: settled.leastAspectRatio, has, isOwn: isOwn(weave.id) });
  // By the hair that sizes are rounded, rings may be tighter than wires can clear each other.
  const exists = Math.max(has, settled.tightest?.aspectRatio ?? has);
  const taut = weave.kind === 'unit' ? nearestCells(settled, exists)[0] : tautChain(weave, settled, exists);
  if (!taut) return failed({ code: 'none-found' });
  const own = exists === has ? taut : forMeasures(taut, [{ inner: has, wire: 1 }]);
  return ok({
    cell: scaledCell(repeatedCell(own, cells), wire),
    links: repeatedLinks(weave, cells),
    cells,
  });
}

/** Pulling stops where what is left to gain is this part of the pitch that is read between stored shapes: a tenth of what the reading may be off. */
const NEAR_READ = 5e-4;
/** A shape that is shorter than read by this part hangs in a fold of its own; another start is tried. */
const SHORT_OF_READ = 4e-3;

/** From stored shapes, the nearest first, until one comes out as long as is read between them; else the longest. */
function tautChain(weave: KnownWeave['weave'], settled: SettledWeave, aspectRatio: number): Cell | null {
  const rules = {
    links: weave.links,
    freeTwist: weave.freeTwist,
    rounds: ROUNDS,
    leastGain: LEAST_GAIN,
    isCareful: true,
  };
  const read = pitchIn(settled, Math.max(aspectRatio, settled.leastAspectRatio))?.taut;
  let best: Cell | null = null;
  for (const start of nearestCells(settled, aspectRatio)) {
    // A free twist settles last, when hardly any length is left to gain; pictures of whole lengths need it settled.
    const enough = read === undefined || weave.freeTwist ? undefined : read * (1 - NEAR_READ);
    const taut = settledChain(start, 'longest', rules, enough);
    if (taut && taut.pitch > (best?.pitch ?? 0)) best = taut;
    if (best && read !== undefined && best.pitch >= read * (1 - SHORT_OF_READ)) return best;
  }
  return best;
}

/** Stored shapes made as wide as an aspect ratio: first the one below it, whose wires have room to spare. */
function nearestCells({ tightest, shapes: grid }: SettledWeave, aspectRatio: number): readonly Cell[] {
  const shapes = tightest ? [tightest, ...grid] : grid;
  const above = shapes.findIndex((shape) => shape.aspectRatio > aspectRatio);
  const below = above < 0 ? shapes.length : above;
  const order = [below - 1, below, below - 2, below + 1];
  return order.flatMap((at) => {
    const shape = shapes[at];
    return shape ? [forMeasures(cellOfShape(shape), [{ inner: aspectRatio, wire: 1 }])] : [];
  });
}

/** The same places, stretched to the rings' mean width, for rings of other measures. */
function forMeasures(cell: Cell, rings: readonly RingMeasure[]): Cell {
  const radii = rings.map(({ inner, wire }) => middleRadius(inner, wire));
  const mean = (values: readonly number[]): number =>
    values.reduce((sum, each) => sum + each, 0) / values.length;
  const by = mean(radii) / mean(cell.rings.map((ring) => ring.radius));
  return {
    pitch: cell.pitch >= ALONE ? cell.pitch : cell.pitch * by,
    twist: cell.twist,
    rings: cell.rings.map((ring, index) => ({
      centre: scale(ring.centre, by),
      normal: ring.normal,
      radius: radii[index % radii.length] ?? ring.radius,
      wire: rings[index % rings.length]?.wire ?? ring.wire,
    })),
  };
}

/**
 * Wires are swollen round the middles of their rings, but thinner wire on the
 * same mandrel makes a ring narrower too: the part to which wires must go with
 * inner diameters kept, so that none is thicker for its ring than what fits.
 */
const withInnerKept = (rings: readonly RingMeasure[], factor: number): number =>
  Math.min(...rings.map(({ inner, wire }) => (factor * inner) / (inner + wire * (1 - factor))));

const GROWING = 6;

function ofSizes(
  weave: KnownWeave['weave'],
  settled: SettledWeave,
  measures: readonly RingMeasure[],
): Result<WeaveShape, ShapeFault> {
  const cells = measures.length / weave.rings;
  const links = repeatedLinks(weave, cells);
  const rules = { links, freeTwist: weave.freeTwist, rounds: ROUNDS };
  const wire = measures.reduce((sum, each) => sum + each.wire, 0) / measures.length;
  const goal = measures.map((each) => ({ inner: each.inner / wire, wire: each.wire / wire }));
  const meanRatio = goal.reduce((sum, each) => sum + each.inner, 0) / goal.length;
  const [from] = nearestCells(settled, Math.max(meanRatio, settled.leastAspectRatio + 0.1));
  if (!from) return failed({ code: 'none-found' });
  let cell = repeatedCell(from, cells);
  for (let step = 1; step <= GROWING; step++) {
    const part = step / GROWING;
    const grown = forMeasures(
      cell,
      goal.map((each) => ({
        inner: each.inner * part + meanRatio * (1 - part),
        wire: each.wire * part + (1 - part),
      })),
    );
    if (!linkedAs(grown, links)) return failed({ code: 'none-found' });
    const thick = thickestChain(grown, { ...rules, enough: 1.0005 });
    if (!thick) return failed({ code: 'none-found' });
    cell = thick.cell;
    if (step === GROWING && thick.factor < 1) {
      const most = thickestChain(cell, rules);
      if (!most) return failed({ code: 'none-found' });
      if (most.factor < 1)
        return failed({
          code: 'wires-too-thick',
          wiresBy: withInnerKept(goal, most.factor),
          isOwn: isOwn(weave.id),
        });
      cell = most.cell;
    }
  }
  const taut =
    weave.kind === 'unit' ? cell : settledChain(cell, 'longest', { ...rules, leastGain: LEAST_GAIN });
  return taut && clearanceOf(taut) > -1e-4
    ? ok({ cell: scaledCell(taut, wire), links, cells })
    : failed({ code: 'none-found' });
}
