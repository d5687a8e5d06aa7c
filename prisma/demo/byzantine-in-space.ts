/**
 * Where the rings of a byzantine chain lie in space, and how they get there.
 * Lengths are wire diameters. The chain runs along x: a joining pair, an inner
 * pair in the other direction, a pair folded back over it, the next joining
 * pair through the fold, and so on, each knot turned by a right angle.
 *
 * The settled positions come from relaxing rigid rings of inner diameter 3.5
 * wire diameters until the chain is taut and no two wires overlap.
 */
import type { Point } from './tube-drawing.ts';

export interface Ring {
  readonly centre: Point;
  readonly normal: Point;
}

/** Radius of the line through a ring's wire: (ID + WD) / 2. */
export const CORE_RADIUS = 2.25;
/** Length of one repeat of six rings, pulled taut. */
export const PITCH = 5.7525;

/** One knot: two inner rings, two folded rings, two joining rings that lock the fold. */
const KNOT: readonly Ring[] = [
  { centre: [0.32687, 1.39915, 0.03046], normal: [-0.39541, 0.9185, -0.00266] },
  { centre: [0.37735, -1.27873, 0.04518], normal: [0.35034, 0.9366, -0.00609] },
  { centre: [-0.10567, 0.04456, 1.39951], normal: [0.3956, 0.00696, 0.9184] },
  { centre: [-0.15682, 0.03085, -1.27835], normal: [-0.35015, 0.00399, 0.93669] },
  { centre: [2.99232, 0.49957, -0.00295], normal: [0.0129, 0.9999, -0.00534] },
  { centre: [2.98104, -0.50035, 0.00231], normal: [0.0129, 0.9999, -0.00534] },
];
/** Pitch of a plain chain of pairs for the same rings. */
const PAIR_PITCH = 3.298;

export type Pair = 'inner' | 'folded' | 'joining';
const FIRST: Record<Pair, number> = { inner: 0, folded: 2, joining: 4 };

/** One ring of the settled chain; `knot` counts from 0, `which` is 0 or 1. Knot -1 has the start pair. */
export function settled(pair: Pair, knot: number, which: 0 | 1): Ring {
  const ring = KNOT[FIRST[pair] + which];
  if (!ring) throw new Error('a knot has six rings');
  const turned = knot % 2 === 0 ? ring : { centre: turn(ring.centre), normal: turn(ring.normal) };
  return { ...turned, centre: [turned.centre[0] + knot * PITCH, turned.centre[1], turned.centre[2]] };
}

/**
 * A ring of the newest knot before its fold is locked: `folded` 0 hangs as a
 * plain chain of pairs, 1 is laid back. The folded pair swings about the far
 * edge of the inner pair, one ring to each side; the inner pair parts.
 */
export function folding(pair: 'inner' | 'folded', knot: number, which: 0 | 1, folded: number): Ring {
  const end = settled(pair, knot, which);
  const side = which === 0 ? 1 : -1;
  const start = knot * PITCH - (PITCH - 2.985) + PAIR_PITCH;
  const across = (amount: number): Point => (knot % 2 === 0 ? [0, amount, 0] : [0, 0, amount]);
  const along = (amount: number): Point => (knot % 2 === 0 ? [0, 0, amount] : [0, amount, 0]);
  if (pair === 'inner') {
    const loose: Ring = { centre: add([start, 0, 0], across(side * 0.52)), normal: across(1) };
    return between(loose, end, folded);
  }
  const angle = Math.PI * folded;
  const hinge = start + CORE_RADIUS - 0.6;
  const arm = PAIR_PITCH - CORE_RADIUS + 0.6;
  const centre: Point = add(
    [hinge + arm * Math.cos(angle), 0, 0],
    along(side * (0.52 + arm * Math.sin(angle))),
  );
  const swing: Ring = { centre, normal: add([Math.sin(angle) * side, 0, 0], along(Math.cos(angle))) };
  const landed: Ring = end.normal[1] + end.normal[2] > 0 ? flip(end) : end;
  return folded <= 0 ? swing : between(swing, landed, folded ** 3);
}

/** `share` of the way from one ring to another. */
export function between(from: Ring, to: Ring, share: number): Ring {
  const step = (a: Point, b: Point): Point => [
    a[0] + (b[0] - a[0]) * share,
    a[1] + (b[1] - a[1]) * share,
    a[2] + (b[2] - a[2]) * share,
  ];
  return { centre: step(from.centre, to.centre), normal: step(from.normal, to.normal) };
}

const flip = (ring: Ring): Ring => ({ centre: ring.centre, normal: scaled(ring.normal, -1) });
const scaled = (a: Point, by: number): Point => [a[0] * by, a[1] * by, a[2] * by];
const add = (a: Point, b: Point): Point => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
/** A quarter turn about the chain. */
const turn = ([x, y, z]: Point): Point => [x, -z, y];
