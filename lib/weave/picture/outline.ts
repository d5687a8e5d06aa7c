/**
 * The true outline of rings: both edges of each wire, where nothing nearer
 * hides them. Drawn last, it ends exactly where another wire begins.
 */

import { cross } from '../space/vector.ts';
import type { BallsByPlace } from './balls-by-place.ts';
import type { Curve } from './curve.ts';
import { edgeCurve, type SeenRing } from './seen-ring.ts';

/** A visible stretch of one edge, by angle. */
export interface EdgePiece {
  readonly ring: number;
  readonly side: 1 | -1;
  readonly from: number;
  readonly to: number;
}

/**
 * All visible stretches of the edges of all rings.
 *
 * @param round by ring how far before other wires its outline ends, so that a broad one does not reach over them
 */
export function visibleEdges(
  rings: readonly SeenRing[],
  balls: BallsByPlace,
  round: (ring: number) => number,
): readonly EdgePiece[] {
  const point = new Float64Array(4);
  return rings.flatMap((ring, index) => {
    const away = round(index);
    const own = coversItself(ring) ? hiddenByItself(ring) : null;
    return ([1, -1] as const).flatMap((side) => {
      const edge = edgeCurve(ring, side);
      const seen = (angle: number): boolean => {
        edge(angle, point);
        return (
          !balls.hide(point[0] as number, point[1] as number, nearAt(ring, angle), index, away) &&
          !own?.(side, angle)
        );
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
  const most = 0.04 * ring.half * ring.half;
  const angles: number[] = [];
  const out = new Float64Array(4);
  // Where the edge was at the last angle.
  let fromX = 0;
  let fromY = 0;
  const fill = (a: number, b: number, depth: number): void => {
    edge(b, out);
    const x = out[0] as number;
    const y = out[1] as number;
    const dx = x - fromX;
    const dy = y - fromY;
    if (depth < 10 && dx * dx + dy * dy > most) {
      const middle = (a + b) / 2;
      fill(a, middle, depth + 1);
      fill(middle, b, depth + 1);
      return;
    }
    angles.push(a);
    fromX = x;
    fromY = y;
  };
  edge(0, out);
  fromX = out[0] as number;
  fromY = out[1] as number;
  for (let i = 0; i < ring.count; i++) fill(i * step, (i + 1) * step, 0);
  return angles;
}

/**
 * Whether a ring's own wire lies over its own edge, exactly. The line of
 * sight from a point of the edge meets the torus in the roots of a quartic;
 * as it touches the torus in the point itself, two of them are there, and
 * what is left is a quadratic.
 */
function hiddenByItself({ cosine, sine, half }: SeenRing): (side: 1 | -1, angle: number) => boolean {
  const radius = Math.hypot(...cosine);
  // How far the ring faces the eye, and so how far the line of sight runs across its plane.
  const nz = cross(cosine, sine)[2] / (radius * radius);
  const flat = radius * radius * (1 - nz * nz);
  return (side, angle) => {
    const c = Math.cos(angle);
    const s = Math.sin(angle);
    const mz = cosine[2] * c + sine[2] * s;
    const tx = sine[0] * c - cosine[0] * s;
    const ty = sine[1] * c - cosine[1] * s;
    const k = (side * half) / Math.max(1e-12, Math.sqrt(tx * tx + ty * ty));
    const px = cosine[0] * c + sine[0] * s + ty * k;
    const py = cosine[1] * c + sine[1] * s - tx * k;
    const square = px * px + py * py + mz * mz;
    const rest = 2 * (square + radius * radius - half * half - 2 * flat);
    // t * t + 4 * mz * t + 4 * mz * mz + rest = 0, for t towards the eye.
    if (4 * mz * mz + rest < 0) return true;
    return mz < 0 && rest <= 0;
  };
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
