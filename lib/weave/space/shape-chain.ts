/**
 * From a start to a shape of given rings: wires are swollen until they have
 * their thickness, then the chain is pulled or pushed. Accepted only where
 * every wire clears every other and the links, sides included, are still the
 * wanted ones.
 */
import { type CellLink, linkedAs, pairsWithin } from './cell-links.ts';
import { circleDistance } from './circle-distance.ts';
import { type Cell, inCell, leastDistance, type RoundRing } from './round-ring.ts';
import { type Settling, settle } from './settle.ts';

/** Wires are held to touch where they are this near to it, as a part of the wire. */
export const TOUCHING = 1e-6;

/** Free space between the nearest wires of a chain as a part of their thickness; below 0 where they overlap. */
export function clearanceOf(cell: Cell): number {
  const thick = Math.max(...cell.rings.map((ring) => ring.wire));
  return pairsWithin(cell, thick).reduce((least, { a, b, cells }) => {
    const first = cell.rings[a] as RoundRing;
    const second = inCell(cell.rings[b] as RoundRing, cell, cells);
    return Math.min(least, circleDistance(first, second) / leastDistance(first, second) - 1);
  }, Number.POSITIVE_INFINITY);
}

/** Whether a chain can exist as it is: wires clear each other, links as wanted. */
export const isSound = (cell: Cell, links: readonly CellLink[]): boolean =>
  clearanceOf(cell) >= -TOUCHING && linkedAs(cell, links);

export interface ShapeRules extends Pick<Settling, 'freeTwist' | 'rounds' | 'leastGain' | 'enough'> {
  readonly links: readonly CellLink[];
  /** Whether a chain that ends in overlaps is pulled again with care, which takes several times as long. */
  readonly isCareful?: boolean;
}

/** Rings given their thickness from a start in which wires may overlap; null where they do not fit from there. */
export function swollen(start: Cell, rules: ShapeRules): Cell | null {
  const clear = clearanceOf(start);
  if (clear >= -TOUCHING) return start;
  const { cell, swell, overlap } = settle(
    start,
    { wish: 'thickest', ...rules, enough: 1.0005 },
    Math.max(0.02, 0.95 * (1 + clear)),
  );
  return swell >= 1 && overlap < TOUCHING && linkedAs(cell, rules.links) ? cell : null;
}

/**
 * The chain pulled taut (or pushed together) from a start; null where the rings do not fit from there.
 *
 * @param enough pitch at which pulling stops
 */
export function settledChain(
  start: Cell,
  wish: 'longest' | 'shortest',
  rules: ShapeRules,
  enough?: number,
): Cell | null {
  const thick = swollen(start, rules);
  if (!thick) return null;
  for (const mostOverlap of rules.isCareful ? MOST_OVERLAPS : MOST_OVERLAPS.slice(0, 1)) {
    const { cell } = settle(thick, {
      wish,
      freeTwist: rules.freeTwist,
      rounds: rules.rounds,
      mostOverlap,
      ...(rules.leastGain === undefined ? {} : { leastGain: rules.leastGain }),
      ...(enough === undefined ? {} : { enough }),
    });
    if (isSound(cell, rules.links)) return cell;
  }
  return null;
}

/** Where rings hold each other on all sides, quick steps end in overlaps that no small movement takes out; then overlaps are kept small on the way. */
const MOST_OVERLAPS = [Number.POSITIVE_INFINITY, 1e-4, 1e-6];

/** How thick the wires can be made at the given middle radii, as a factor of their thickness in the start. */
export function thickestChain(
  start: Cell,
  rules: ShapeRules,
): { readonly cell: Cell; readonly factor: number } | null {
  const from = Math.max(0.02, 0.95 * (1 + Math.min(0, clearanceOf(start))));
  const { cell, swell, overlap } = settle(start, { wish: 'thickest', ...rules }, from);
  return overlap < TOUCHING && linkedAs(cell, rules.links) ? { cell, factor: swell } : null;
}
