/**
 * The shape of a sequence that is none of the stored weaves, derived from who
 * passes through whom and from which side: starts are thrown, swollen until
 * their wires touch, shaken, and pulled taut over a range of aspect ratios.
 * The same sequence gives the same shapes on every run. What is found is the
 * best of some dozens of starts, not proven to be the best of all.
 */
import { type CellLink, linkedAs } from './cell-links.ts';
import { isTrueShape } from './check-shape.ts';
import { findStart } from './find-start.ts';
import { hangsByOne } from './hangs-by-one.ts';
import { cellOfShape } from './known-shape.ts';
import type { KnownWeave } from './known-weave.ts';
import { OWN } from './own-id.ts';
import { type OwnSequence, ownKey } from './own-weave.ts';
import { randomRow } from './random-row.ts';
import { ALONE, type Cell, middleRadius } from './round-ring.ts';
import type { SettledShape } from './settled-weave.ts';
import { settledChain, thickestChain } from './shape-chain.ts';
import { sidesOtherwise } from './sides-seen.ts';
import { toldSigns } from './told-signs.ts';
import { groupsOfTwins, linksOfGroups, withTwins } from './twin-rings.ts';
import { add, scale, unit, type Vector } from './vector.ts';

/** Starts are thrown for rings of this aspect ratio; it sets the unit of the throw, no more. */
const THROWN_AT = 4;
const THROWS_A_RING = 3_000;
const SHAKES = 16;
/** How far above the smallest aspect ratio shapes are kept. */
const ABOVE = [0.01, 0.06, 0.15, 0.3, 0.5, 0.8, 1.2, 1.7, 2.4, 3.4];
const ROUNDS = 250;
const LEAST_GAIN = 1e-5;

/** How a chain may lie: without a twist, or turning from cell to cell as it likes; and how many starts are tried of each. */
const LAID = [{ twist: 0, freeTwist: false, starts: 28 }];
const TURNING = [90, -90, 120, -120, 45, -45, 180].map((twist) => ({
  twist,
  freeTwist: true,
  starts: 6,
})); /** A chain that turns must be so many times as long as the same chain laid flat, before that counts as crumpled. */
const CRUMPLED = 1.2;

interface Way {
  readonly links: readonly CellLink[];
  /** Degrees. */
  readonly twist: number;
  readonly freeTwist: boolean;
}

/** A cell that lies in one way, for rings of an aspect ratio. */
interface Lying {
  readonly way: Way;
  readonly cell: Cell;
  readonly aspectRatio: number;
}

/**
 * Derives a weave. Takes from a second to a minute, and gives way after each
 * piece of the work, so that a caller can do other things between them or
 * leave off.
 *
 * @returns null where no shape was found
 */
export function* deriveWeave(sequence: OwnSequence): Generator<void, KnownWeave | null> {
  const random = randomRow(1);
  for (const links of toldSigns(sequence)) {
    const lying = yield* bestLying(sequence, links, random);
    const known = lying && (yield* settled(sequence, lying, random));
    if (known) return known;
  }
  return null;
}

/**
 * Flat, where every side is then seen as it was told. Turning, where that
 * cannot be; and where the chain hangs on single rings, so that it turns by
 * itself, if it becomes so much longer that it was crumpled as it lay flat.
 */
function* bestLying(
  sequence: OwnSequence,
  links: readonly CellLink[],
  random: () => number,
): Generator<void, Lying | undefined> {
  const laid = yield* thickStarts(sequence, links, LAID, random);
  if (sequence.kind === 'unit') return laid[0];
  const flat = yield* tautest(laid, random, ({ cell }) => sidesOtherwise(sequence, cell) === 0);
  if (flat && !hangsByOne(sequence.rings, links)) return flat;
  const turning = yield* tautest(yield* thickStarts(sequence, links, TURNING, random), random);
  const worth = (one: Lying | undefined): number =>
    one
      ? (one.cell.pitch / one.aspectRatio) *
        (1 - (2 * sidesOtherwise(sequence, one.cell)) / sequence.links.length)
      : Number.NEGATIVE_INFINITY;
  const best = worth(turning) > CRUMPLED * worth(flat) ? turning : flat;
  return best ?? (yield* tautest(laid, random));
}

/** Starts with their wires swollen until they touch, the thickest first. */
function* thickStarts(
  sequence: OwnSequence,
  links: readonly CellLink[],
  ways: readonly (Omit<Way, 'links'> & { readonly starts: number })[],
  random: () => number,
): Generator<void, readonly Lying[]> {
  const found: Lying[] = [];
  for (const { starts, ...lie } of ways) {
    const way = { links, ...lie };
    const before = found.length;
    for (let n = 0; n < starts; n++) {
      // What cannot lie this way is given up early.
      if (n >= starts / 2 && found.length === before) break;
      // Twins may lie in rows of their own, or side by side.
      const start = thrown(sequence, way, n % 4 !== 3, random);
      const thick = start && thickestFrom(start, way);
      if (thick) found.push(thick);
      yield;
    }
  }
  return found.sort((a, b) => a.aspectRatio - b.aspectRatio);
}

/** The start that comes out longest for rings a good deal wider than they must be, and shaken. */
function* tautest(
  found: readonly Lying[],
  random: () => number,
  isWanted: (taut: Lying) => boolean = () => true,
): Generator<void, Lying | undefined> {
  const aspectRatio = 1.2 * (found[0]?.aspectRatio ?? 0) + 0.5;
  let best: Lying | undefined;
  for (const each of found) {
    const taut = each.aspectRatio <= aspectRatio ? tautFrom(each.cell, each.way, aspectRatio) : null;
    if (taut && isWanted(taut)) best = longer(best, taut);
    yield;
  }
  for (let n = 0; best && n < SHAKES; n++) {
    const taut = tautFrom(shakenCell(best.cell, 0.1 + 0.6 * random(), random), best.way, aspectRatio);
    if (taut && isWanted(taut)) best = longer(best, taut);
    yield;
  }
  return best;
}

const longer = (one: Lying | undefined, other: Lying): Lying =>
  one && one.cell.pitch >= other.cell.pitch - 1e-7 ? one : other;

/** The smallest aspect ratio from a place on, and shapes above it. */
function* settled(
  sequence: OwnSequence,
  from: Lying,
  random: () => number,
): Generator<void, KnownWeave | null> {
  const { way } = from;
  let least = thickestFrom(from.cell, way) ?? from;
  for (let n = 0; sequence.kind === 'chain' && n < SHAKES; n++) {
    const shaken = thickestFrom(shakenCell(least.cell, 0.05 + 0.5 * random(), random), way);
    if (shaken && shaken.aspectRatio < least.aspectRatio - 1e-7) least = shaken;
    yield;
  }
  const shapes = yield* shapesAbove(sequence, least, from, random);
  const { links, twist, freeTwist } = way;
  if (shapes.length === 0) return null;
  const id = OWN + ownKey(sequence);
  return {
    weave: { id, kind: sequence.kind, rings: sequence.rings, twist, freeTwist, links },
    settled: { id, leastAspectRatio: rounded(least.aspectRatio), shapes },
  };
}

function thrown(
  { kind, rings }: OwnSequence,
  { links, twist }: Way,
  areTwinsApart: boolean,
  random: () => number,
): Cell | null {
  const radius = middleRadius(THROWN_AT, 1);
  const groups = areTwinsApart
    ? Array.from({ length: rings }, (_, ring) => ring)
    : groupsOfTwins(rings, links);
  const once = linksOfGroups(groups, links);
  const longest = 2 * radius * Math.min(4, Math.max(1, once.length / 3));
  const sizes = Array.from({ length: Math.max(...groups) + 1 }, () => ({ radius, wire: 1 }));
  const found = findStart(
    {
      sizes,
      links: once,
      twist: (twist * Math.PI) / 180,
      pitch: kind === 'unit' ? [ALONE, ALONE] : [0.3, longest],
      throws: THROWS_A_RING * sizes.length,
    },
    random,
  );
  return found && withTwins(found, groups, links);
}

function thickestFrom(start: Cell, way: Way): Lying | null {
  const { links, freeTwist } = way;
  if (!linkedAs(start, links)) return null;
  const thick = thickestChain(start, { links, freeTwist, rounds: ROUNDS, leastGain: LEAST_GAIN });
  const ring = thick?.cell.rings[0];
  if (!thick || !ring) return null;
  return { way, cell: thick.cell, aspectRatio: (2 * ring.radius) / (thick.factor * ring.wire) - 1 };
}

function tautFrom(from: Cell, way: Way, aspectRatio: number): Lying | null {
  const { links, freeTwist } = way;
  const start = widened(from, aspectRatio);
  if (!linkedAs(start, links)) return null;
  const cell = settledChain(start, 'longest', { links, freeTwist, rounds: ROUNDS, leastGain: LEAST_GAIN });
  return cell && { way, cell, aspectRatio };
}

/** Taut shapes by rising aspect ratio, each one held against the links and the wires by other means than the solver's. */
function* shapesAbove(
  { kind }: OwnSequence,
  least: Lying,
  from: Lying,
  random: () => number,
): Generator<void, readonly SettledShape[]> {
  const { way } = from;
  const grid = ABOVE.map((above) => Math.round((least.aspectRatio + above) * 1000) / 1000);
  if (kind === 'unit')
    return storedShapes(
      grid,
      grid.map((at) => widened(least.cell, at)),
      way,
    );
  const taut: (Cell | null)[] = grid.map(() => null);
  const seek = (index: number, start: Cell): void => {
    const cell = tautFrom(start, way, grid[index] ?? 0)?.cell;
    if (cell && cell.pitch > (taut[index]?.pitch ?? 0) + 1e-7) taut[index] = cell;
  };
  for (const index of grid.keys()) {
    seek(index, least.cell);
    seek(index, from.cell);
    yield;
  }
  const upwards = [...grid.keys()];
  for (const order of [upwards.toReversed(), upwards])
    for (const index of order) {
      for (const near of [taut[index - 1], taut[index + 1]]) if (near) seek(index, near);
      const own = taut[index];
      if (own) seek(index, shakenCell(own, 0.1 + 0.6 * random(), random));
      yield;
    }
  return storedShapes(grid, taut, way);
}

function storedShapes(
  grid: readonly number[],
  cells: readonly (Cell | null)[],
  { links, freeTwist }: Way,
): readonly SettledShape[] {
  return grid.flatMap((aspectRatio, index) => {
    const cell = cells[index];
    if (!cell) return [];
    const isAlone = cell.pitch >= ALONE;
    const pushed = isAlone
      ? null
      : settledChain(cell, 'shortest', { links, freeTwist, rounds: ROUNDS, leastGain: LEAST_GAIN });
    const shape: SettledShape = {
      aspectRatio,
      pitch: rounded(cell.pitch),
      pushed: pushed && rounded(pushed.pitch),
      twist: rounded(cell.twist),
      rings: cell.rings.map(({ centre, normal }) => [...centre, ...normal].map(rounded)),
    };
    return isTrueShape(cellOfShape(shape), links) ? [shape] : [];
  });
}

/** The same places for rings of another aspect ratio; wire diameter 1. */
function widened(cell: Cell, aspectRatio: number): Cell {
  const radius = middleRadius(aspectRatio, 1);
  const by = radius / (cell.rings[0]?.radius ?? radius);
  return {
    pitch: cell.pitch >= ALONE ? cell.pitch : cell.pitch * by,
    twist: cell.twist,
    rings: cell.rings.map((ring) => ({ ...ring, centre: scale(ring.centre, by), radius, wire: 1 })),
  };
}

/** Every ring moved and tilted a little; `by` in the unit of the rings. */
export function shakenCell(cell: Cell, by: number, random: () => number): Cell {
  const off = (size: number): Vector => [
    (random() - 0.5) * size,
    (random() - 0.5) * size,
    (random() - 0.5) * size,
  ];
  return {
    ...cell,
    rings: cell.rings.map((ring) => ({
      ...ring,
      centre: add(ring.centre, off(by)),
      normal: unit(add(ring.normal, off(0.6 * by))),
    })),
  };
}

const rounded = (value: number): number => Math.round(value * 1e5) / 1e5 + 0;
