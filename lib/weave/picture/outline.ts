/**
 * The true outline of rings: both edges of each wire, where nothing nearer
 * hides them. Drawn last, it ends exactly where another wire begins.
 */

import type { Vector } from '../space/vector.ts';
import { BallsByPlace } from './balls-by-place.ts';
import type { Curve } from './curve.ts';
import { alongRing, edgeCurve, type SeenRing } from './seen-ring.ts';

/** A visible stretch of one edge, by angle. */
export interface EdgePiece {
  readonly ring: number;
  readonly side: 1 | -1;
  readonly from: number;
  readonly to: number;
}

/** All visible stretches of the edges of all rings. */
export function visibleEdges(rings: readonly SeenRing[]): readonly EdgePiece[] {
  if (rings.length === 0) return [];
  const balls = new BallsByPlace(rings);
  const point = new Float64Array(4);
  return rings.flatMap((ring, index) => {
    const own = coversItself(ring) ? chunked(ring, 4 * ring.count) : null;
    return ([1, -1] as const).flatMap((side) => {
      const edge = edgeCurve(ring, side);
      const seen = (angle: number): boolean => {
        edge(angle, point);
        const [x, y] = [point[0] as number, point[1] as number];
        const near = nearAt(ring, angle);
        return !balls.hide(x, y, near, index) && !(own && hidesItself(own, [x, y, near]));
      };
      return stretches(seen, anglesOf(ring, edge)).map(([from, to]) => ({ ring: index, side, from, to }));
    });
  });
}

/** Where the wire bends more gently than it is thick, its edges run beside it everywhere. */
const coversItself = ({ wide, long, half }: SeenRing): boolean => wide * wide < 1.1 * half * long;

const nearAt = ({ centre, cosine, sine }: SeenRing, angle: number): number =>
  centre[2] + cosine[2] * Math.cos(angle) + sine[2] * Math.sin(angle);

/** Angles close enough that nothing is stepped over, closer where the wire runs at the eye. */
function anglesOf(ring: SeenRing, edge: Curve): readonly number[] {
  const step = (2 * Math.PI) / ring.count;
  const most = 0.25 * ring.half * ring.half;
  const angles: number[] = [];
  const out = new Float64Array(4);
  const fill = (a: number, b: number, from: Place, to: Place, depth: number): void => {
    const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
    if (depth < 10 && dx * dx + dy * dy > most) {
      const middle = (a + b) / 2;
      const between = placeAt(edge, middle, out);
      fill(a, middle, from, between, depth + 1);
      fill(middle, b, between, to, depth + 1);
    } else angles.push(a);
  };
  let from = placeAt(edge, 0, out);
  for (let i = 0; i < ring.count; i++) {
    const to = placeAt(edge, (i + 1) * step, out);
    fill(i * step, (i + 1) * step, from, to, 0);
    from = to;
  }
  return angles;
}

type Place = readonly [number, number];

const placeAt = (edge: Curve, angle: number, out: Float64Array): Place => {
  edge(angle, out);
  return [out[0] as number, out[1] as number];
};

/** The ring's own wire over its own edge: the surface stands nearer than the edge there. */
function hidesItself(own: Chunked, [x, y, z]: Vector): boolean {
  const { points, half } = own;
  const square = half * half;
  const reach = square * 0.994;
  return someChunk(own, x, y, (from, to) => {
    for (let i = from; i < to; i += 3) {
      const dx = (points[i] as number) - x;
      const dy = (points[i + 1] as number) - y;
      const flat = dx * dx + dy * dy;
      if (flat < reach && (points[i + 2] as number) + Math.sqrt(square - flat) > z + 0.02 * half) return true;
    }
    return false;
  });
}

/** Points of a ring, x, y and near in turn, in chunks with a box round each, so that most are passed over. */
interface Chunked {
  readonly half: number;
  readonly points: Float64Array;
  /** Left, top, right and bottom of each chunk, the wire included. */
  readonly boxes: Float64Array;
}

/** Numbers of one chunk: eight points. */
const CHUNK = 24;

/** @param count how many points; closer than for other rings where a ring is held against itself, as its own turns are tight */
function chunked(ring: SeenRing, count: number): Chunked {
  const points = new Float64Array(count * 3);
  for (let i = 0; i < count; i++) points.set(alongRing(ring, (i * 2 * Math.PI) / count), i * 3);
  const boxes = new Float64Array(Math.ceil(points.length / CHUNK) * 4);
  for (let c = 0; c * CHUNK < points.length; c++) {
    let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
    for (let i = c * CHUNK; i < Math.min((c + 1) * CHUNK, points.length); i += 3) {
      const [x, y] = [points[i] as number, points[i + 1] as number];
      left = Math.min(left, x);
      right = Math.max(right, x);
      top = Math.min(top, y);
      bottom = Math.max(bottom, y);
    }
    boxes.set([left - ring.half, top - ring.half, right + ring.half, bottom + ring.half], c * 4);
  }
  return { half: ring.half, points, boxes };
}

/** Whether something holds of one of the chunks whose box a point lies in. */
function someChunk(
  { points, boxes }: Chunked,
  x: number,
  y: number,
  holds: (from: number, to: number) => boolean,
): boolean {
  for (let b = 0; b < boxes.length; b += 4) {
    if (x < (boxes[b] as number) || y < (boxes[b + 1] as number)) continue;
    if (x > (boxes[b + 2] as number) || y > (boxes[b + 3] as number)) continue;
    const from = (b / 4) * CHUNK;
    if (holds(from, Math.min(from + CHUNK, points.length))) return true;
  }
  return false;
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
