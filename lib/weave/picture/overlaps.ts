/**
 * Where wires cover each other in a picture. A wire is a row of balls; two
 * balls that cover each other in the picture and do not meet in space are
 * ordered by the nearness of their middles, exactly. So every overlap is
 * known, and which wire lies nearer.
 */
import { boxesMeet, type SeenRing } from './seen-ring.ts';

/** A patch where ring `above` covers ring `below`: the pairs of points that overlap, as flat (above, below) indices. */
export interface Overlap {
  readonly above: number;
  readonly below: number;
  readonly pairs: readonly number[];
}

/** Wires that only graze in the picture may be painted in either order. */
const GRAZING = 0.995;

export function overlapsOf(rings: readonly SeenRing[]): readonly Overlap[] {
  const overlaps: Overlap[] = [];
  rings.forEach((a, i) => {
    rings.forEach((b, j) => {
      if (j < i || !boxesMeet(a.box, b.box)) return;
      overlaps.push(...(i === j ? ownOverlaps(a, i) : pairOverlaps(a, b, i, j)));
    });
  });
  return overlaps;
}

function pairOverlaps(a: SeenRing, b: SeenRing, i: number, j: number): readonly Overlap[] {
  const aOver: number[] = [];
  const bOver: number[] = [];
  const reach = (a.half + b.half) * GRAZING;
  const [left, top, right, bottom] = b.box;
  for (let p = 0; p < a.count; p++) {
    const x = a.x[p] as number;
    const y = a.y[p] as number;
    if (x < left - a.half || x > right + a.half || y < top - a.half || y > bottom + a.half) continue;
    const z = a.near[p] as number;
    for (let q = 0; q < b.count; q++) {
      const dx = (b.x[q] as number) - x;
      if (dx > reach || dx < -reach) continue;
      const dy = (b.y[q] as number) - y;
      if (dx * dx + dy * dy >= reach * reach) continue;
      if (z > (b.near[q] as number)) aOver.push(p, q);
      else bOver.push(q, p);
    }
  }
  return [
    ...(aOver.length > 0 ? [{ above: i, below: j, pairs: aOver }] : []),
    ...(bOver.length > 0 ? [{ above: j, below: i, pairs: bOver }] : []),
  ];
}

/** A ring seen nearly from its edge covers itself: its near side lies over its far side. */
function ownOverlaps(a: SeenRing, i: number): readonly Overlap[] {
  const pairs: number[] = [];
  const reach = 2 * a.half * GRAZING;
  for (let p = 0; p < a.count; p++)
    for (let q = 0; q < a.count; q++) {
      const dx = (a.x[q] as number) - (a.x[p] as number);
      const dy = (a.y[q] as number) - (a.y[p] as number);
      const flat = dx * dx + dy * dy;
      if (flat >= reach * reach) continue;
      const dz = (a.near[p] as number) - (a.near[q] as number);
      // Near the turn both sides look alike, and leaving them out lets the cut lie where the wire runs straight.
      if (dz > 0 && flat + dz * dz > 20 * a.half * a.half) pairs.push(p, q);
    }
  return pairs.length > 0 ? [{ above: i, below: i, pairs }] : [];
}
