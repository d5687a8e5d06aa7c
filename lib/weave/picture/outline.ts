/**
 * The true outline of rings: both edges of each wire, where nothing nearer
 * hides them. Drawn last, it ends exactly where another wire begins.
 */

import type { Vector } from '../space/vector.ts';
import type { Curve } from './curve.ts';
import { alongRing, boxesMeet, edgePoint, type SeenRing } from './seen-ring.ts';

/** A visible stretch of one edge, by angle. */
export interface EdgePiece {
  readonly ring: number;
  readonly side: 1 | -1;
  readonly from: number;
  readonly to: number;
}

export const edgeCurve =
  (ring: SeenRing, side: 1 | -1): Curve =>
  (angle) =>
    edgePoint(ring, angle, side);

/** All visible stretches of the edges of the rings with these indices. */
export function visibleEdges(rings: readonly SeenRing[], which: readonly number[]): readonly EdgePiece[] {
  return which.flatMap((index) => {
    const ring = rings[index] as SeenRing;
    const own = ownPoints(ring);
    const hiders = rings.filter((other) => other !== ring && boxesMeet(other.box, ring.box));
    return ([1, -1] as const).flatMap((side) => {
      const seen = (angle: number): boolean => {
        const point = edgePoint(ring, angle, side);
        return !hiders.some((other) => hides(other, point)) && !hidesItself(ring, point, own);
      };
      return stretches(seen, anglesOf(ring, side)).map(([from, to]) => ({ ring: index, side, from, to }));
    });
  });
}

/** Angles close enough that nothing is stepped over, closer where the wire runs at the eye. */
function anglesOf(ring: SeenRing, side: 1 | -1): readonly number[] {
  const step = (2 * Math.PI) / ring.count;
  const angles: number[] = [];
  const fill = (a: number, b: number, depth: number): void => {
    const [p, q] = [edgePoint(ring, a, side), edgePoint(ring, b, side)];
    if (depth < 10 && Math.hypot(p[0] - q[0], p[1] - q[1]) > 0.5 * ring.half) {
      fill(a, (a + b) / 2, depth + 1);
      fill((a + b) / 2, b, depth + 1);
    } else angles.push(a);
  };
  for (let i = 0; i < ring.count; i++) fill(i * step, (i + 1) * step, 0);
  return angles;
}

/** A nearer wire over a point: one of its balls covers it, and lies nearer than the ball at the edge. */
function hides(other: SeenRing, [x, y, z]: Vector): boolean {
  const { box, half, count } = other;
  if (x < box[0] || x > box[2] || y < box[1] || y > box[3]) return false;
  const reach = half * half;
  for (let i = 0; i < count; i++) {
    const dx = (other.x[i] as number) - x;
    const dy = (other.y[i] as number) - y;
    if (dx * dx + dy * dy < reach && (other.near[i] as number) > z) return true;
  }
  return false;
}

/** The ring's own wire over its own edge: the surface stands nearer than the edge there. */
function hidesItself(ring: SeenRing, [x, y, z]: Vector, own: OwnPoints): boolean {
  const square = ring.half * ring.half;
  const reach = square * 0.994;
  for (let i = 0; i < own.length; i += 3) {
    const dx = (own[i] as number) - x;
    const dy = (own[i + 1] as number) - y;
    const flat = dx * dx + dy * dy;
    if (flat < reach && (own[i + 2] as number) + Math.sqrt(square - flat) > z + 0.02 * ring.half) return true;
  }
  return false;
}

/** Points of a ring, x, y and near in turn, closer than for other rings: its own turns are tight. */
type OwnPoints = Float64Array;

function ownPoints(ring: SeenRing): OwnPoints {
  const count = ring.count * 4;
  const points = new Float64Array(count * 3);
  for (let i = 0; i < count; i++) points.set(alongRing(ring, (i * 2 * Math.PI) / count), i * 3);
  return points;
}

/** Stretches of a closed row of angles where something is seen, ends closed in by halving. */
function stretches(
  seen: (angle: number) => boolean,
  angles: readonly number[],
): readonly (readonly [number, number])[] {
  const full = 2 * Math.PI;
  const isSeen = angles.map(seen);
  if (isSeen.every(Boolean)) return [[0, full]];
  const found: (readonly [number, number])[] = [];
  const closeIn = (visible: number, hidden: number): number => {
    let [a, b] = [visible, hidden];
    for (let n = 0; n < 7; n++) {
      const middle = (a + b) / 2;
      if (seen(middle)) a = middle;
      else b = middle;
    }
    return a;
  };
  angles.forEach((angle, i) => {
    const before = (i + angles.length - 1) % angles.length;
    if (!isSeen[i] || isSeen[before]) return;
    const start = closeIn(angle, (angles[before] as number) - (i === 0 ? full : 0));
    let last = i;
    while (isSeen[(last + 1) % angles.length]) last += 1;
    const turns = (n: number): number =>
      (angles[n % angles.length] as number) + (n >= angles.length ? full : 0);
    found.push([start, closeIn(turns(last), turns(last + 1))]);
  });
  return found;
}
