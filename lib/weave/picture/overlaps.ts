/**
 * Where wires cover each other in a picture. A wire is a row of balls; two
 * balls that cover each other in the picture and do not meet in space are
 * ordered by the nearness of their middles, exactly. So every overlap is
 * known, and which wire lies nearer.
 */
import { type Box, boxesMeet, type SeenRing } from './seen-ring.ts';

/** A patch where ring `above` covers ring `below`. */
export interface Overlap {
  readonly above: number;
  readonly below: number;
  /** Flat (point, from, to): a point of one ring, and the points of the other that lie over it or under it, both ends included. */
  readonly runs: readonly number[];
  /** Whether the single points are those of `above`, and the runs those of `below`; else the other way about. */
  readonly isPointAbove: boolean;
}

/** Wires that only graze in the picture may be painted in either order. */
const GRAZING = 0.995;

export function overlapsOf(rings: readonly SeenRing[]): readonly Overlap[] {
  const overlaps: Overlap[] = [];
  const known = new Map<string, PairRuns>();
  const forms = formsOf(rings);
  // From left to right, so that a ring is held only against those that begin before it ends.
  const sorted = rings.map((_, index) => index).sort((i, j) => leftOf(rings, i) - leftOf(rings, j) || i - j);
  sorted.forEach((i, at) => {
    const a = rings[i] as SeenRing;
    const own = ownRuns(a);
    if (own.length > 0) overlaps.push({ above: i, below: i, runs: own, isPointAbove: true });
    for (let next = at + 1; next < sorted.length; next++) {
      const j = sorted[next] as number;
      const b = rings[j] as SeenRing;
      if (b.box[0] >= a.box[2]) break;
      if (!boxesMeet(a.box, b.box)) continue;
      // The same two rings further along a piece cover each other in the same points.
      const away = [0, 1, 2].map((axis) =>
        Math.round(((b.centre[axis] ?? 0) - (a.centre[axis] ?? 0)) * FINE),
      );
      const key = `${forms[i]} ${forms[j]} ${away.join(' ')}`;
      const runs = known.get(key) ?? pairRuns(a, b);
      known.set(key, runs);
      if (runs.aOver.length > 0) overlaps.push({ above: i, below: j, runs: runs.aOver, isPointAbove: true });
      if (runs.bOver.length > 0) overlaps.push({ above: j, below: i, runs: runs.bOver, isPointAbove: false });
    }
  });
  return overlaps.sort((one, other) => one.above - other.above || one.below - other.below);
}

const leftOf = (rings: readonly SeenRing[], index: number): number => (rings[index] as SeenRing).box[0];

/** Parts of a picture unit within which two places are the same. */
const FINE = 1e4;

/** A number for each ring, the same for rings that differ by their place alone. */
function formsOf(rings: readonly SeenRing[]): readonly number[] {
  const known = new Map<string, number>();
  return rings.map(({ cosine, sine, half }) => {
    const key = [...cosine, ...sine, half].map((part) => Math.round(part * FINE)).join(' ');
    const form = known.get(key) ?? known.size;
    known.set(key, form);
    return form;
  });
}

/** Runs as in `Overlap`, its single points on the first ring. */
interface PairRuns {
  readonly aOver: readonly number[];
  readonly bOver: readonly number[];
}

function pairRuns(a: SeenRing, b: SeenRing): PairRuns {
  const aOver = new Runs();
  const bOver = new Runs();
  const reach = (a.half + b.half) * GRAZING;
  const square = reach * reach;
  const others = pointsIn(b, a.box);
  for (const p of pointsIn(a, b.box)) {
    const x = a.x[p] as number;
    const y = a.y[p] as number;
    const z = a.near[p] as number;
    for (const q of others) {
      const dx = (b.x[q] as number) - x;
      const dy = (b.y[q] as number) - y;
      if (dx * dx + dy * dy >= square) continue;
      if (z > (b.near[q] as number)) aOver.add(p, q);
      else bOver.add(p, q);
    }
  }
  return { aOver: aOver.flat, bOver: bOver.flat };
}

/** Flat (point, from, to), gathered pair by pair. */
class Runs {
  readonly flat: number[] = [];

  add(point: number, other: number): void {
    const { flat } = this;
    const end = flat.length;
    if (end > 0 && flat[end - 3] === point && flat[end - 1] === other - 1) flat[end - 1] = other;
    else flat.push(point, other, other);
  }
}

/** Points of a ring whose balls reach into a box, by rising number. */
function pointsIn({ x, y, half, count }: SeenRing, [left, top, right, bottom]: Box): Int32Array {
  const inside = new Int32Array(count);
  let found = 0;
  for (let p = 0; p < count; p++) {
    const px = x[p] as number;
    const py = y[p] as number;
    if (px < left - half || px > right + half || py < top - half || py > bottom + half) continue;
    inside[found++] = p;
  }
  return inside.subarray(0, found);
}

/** Squared, in half wires: nearer points of one ring are neighbours round its turn. */
const FAR_APART = 20;

/** A ring seen nearly from its edge covers itself: its near side lies over its far side. */
function ownRuns(a: SeenRing): readonly number[] {
  // Two points lie at least this part of their distance apart in the picture.
  const facing = a.wide / a.long;
  if (facing * facing * FAR_APART >= 4) return [];
  const runs: number[] = [];
  const reach = 2 * a.half * GRAZING;
  for (let p = 0; p < a.count; p++)
    for (let q = 0; q < a.count; q++) {
      const dx = (a.x[q] as number) - (a.x[p] as number);
      const dy = (a.y[q] as number) - (a.y[p] as number);
      const flat = dx * dx + dy * dy;
      if (flat >= reach * reach) continue;
      const dz = (a.near[p] as number) - (a.near[q] as number);
      // Near the turn both sides look alike, and leaving them out lets the cut lie where the wire runs straight.
      if (dz > 0 && flat + dz * dz > FAR_APART * a.half * a.half) runs.push(p, q, q);
    }
  return runs;
}
