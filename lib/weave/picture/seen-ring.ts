/** A ring as the eye sees it: points along the middle of its wire, right, down (as screens count) and near. */
import type { RoundRing } from '../space/round-ring.ts';
import { add, dot, scale, spanAcross, unit, type Vector } from '../space/vector.ts';
import type { Curve } from './curve.ts';
import type { View } from './view.ts';

export interface SeenRing {
  /** Half the wire. */
  readonly half: number;
  /** Points along the ring; the last one meets the first. */
  readonly count: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Nearer is more. */
  readonly near: Float64Array;
  readonly box: Box;
  /** Ellipse in the picture: centre, and the two half axes that cosine and sine go with. */
  readonly centre: Vector;
  readonly cosine: Vector;
  readonly sine: Vector;
  /** The ellipse's half axes; the long one lies at the angles 0 and half a turn, where the wire turns towards the eye or away from it. */
  readonly long: number;
  readonly wide: number;
}

/** Left, top, right, bottom, wire included. */
export type Box = readonly [number, number, number, number];

export const boxesMeet = (a: Box, b: Box): boolean =>
  a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3];

/** Point in the picture with its nearness. */
export const seenPoint = ({ right, up, toward }: View, p: Vector): Vector => [
  dot(right, p),
  -dot(up, p),
  dot(toward, p),
];

/** Seen from its very edge a ring has no inside and no turn; it is then drawn turned by this much (a twelfth of a degree), less than an outline is wide. */
const EDGE_ON = 0.0015;

export function seeRing(ring: RoundRing, view: View): SeenRing {
  const facing = dot(ring.normal, view.toward);
  const [u, v] = spanAcross(
    Math.abs(facing) < EDGE_ON
      ? unit(add(ring.normal, scale(view.toward, facing < 0 ? -EDGE_ON - facing : EDGE_ON - facing)))
      : ring.normal,
  );
  const half = ring.wire / 2;
  const count = Math.max(
    48,
    Math.min(192, 4 * Math.ceil((2 * Math.PI * ring.radius) / (0.2 * ring.wire) / 4)),
  );
  const centre = seenPoint(view, ring.centre);
  const sized = (d: Vector): Vector => {
    const [a, b, c] = seenPoint(view, d);
    return [a * ring.radius, b * ring.radius, c * ring.radius];
  };
  const axes = byAxes(sized(u), sized(v));
  const x = new Float64Array(count);
  const y = new Float64Array(count);
  const near = new Float64Array(count);
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i < count; i++) {
    const [px, py, pz] = alongRing({ centre, ...axes }, (i * 2 * Math.PI) / count);
    x[i] = px;
    y[i] = py;
    near[i] = pz;
    left = Math.min(left, px);
    right = Math.max(right, px);
    top = Math.min(top, py);
    bottom = Math.max(bottom, py);
  }
  const box: Box = [left - half, top - half, right + half, bottom + half];
  return { half, count, x, y, near, box, centre, ...axes };
}

/** An ellipse's half axes, and it by the angle from its long one. */
function byAxes(cosine: Vector, sine: Vector): Pick<SeenRing, 'long' | 'wide' | 'cosine' | 'sine'> {
  const [cc, ss] = [cosine[0] ** 2 + cosine[1] ** 2, sine[0] ** 2 + sine[1] ** 2];
  const cs = cosine[0] * sine[0] + cosine[1] * sine[1];
  const spread = Math.hypot(cc - ss, 2 * cs);
  const end = Math.atan2(2 * cs, cc - ss) / 2;
  const [c, s] = [Math.cos(end), Math.sin(end)];
  return {
    long: Math.sqrt((cc + ss + spread) / 2),
    wide: Math.sqrt(Math.max(0, (cc + ss - spread) / 2)),
    cosine: add(scale(cosine, c), scale(sine, s)),
    sine: add(scale(sine, c), scale(cosine, -s)),
  };
}

/** The middle of the wire at an angle. */
export function alongRing(
  { centre, cosine, sine }: Pick<SeenRing, 'centre' | 'cosine' | 'sine'>,
  angle: number,
): Vector {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  return [
    centre[0] + cosine[0] * c + sine[0] * s,
    centre[1] + cosine[1] * c + sine[1] * s,
    centre[2] + cosine[2] * c + sine[2] * s,
  ];
}

/** The middle of the wire as a curve. */
export const middleCurve =
  ({ centre, cosine, sine }: SeenRing): Curve =>
  (angle, out) => {
    const c = Math.cos(angle);
    const s = Math.sin(angle);
    out[0] = centre[0] + cosine[0] * c + sine[0] * s;
    out[1] = centre[1] + cosine[1] * c + sine[1] * s;
    out[2] = sine[0] * c - cosine[0] * s;
    out[3] = sine[1] * c - cosine[1] * s;
  };

const PLACE = new Float64Array(4);

const written = (at: number): number => PLACE[at] as number;

/** The angle at which a line along a ring lies beside a point of its wire: one that is nearer to the eye lies elsewhere along it than the middle does. */
export function beside(ring: SeenRing, line: Curve, angle: number): number {
  const { centre, cosine, sine } = ring;
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const x = centre[0] + cosine[0] * c + sine[0] * s;
  const y = centre[1] + cosine[1] * c + sine[1] * s;
  const tx = sine[0] * c - cosine[0] * s;
  const ty = sine[1] * c - cosine[1] * s;
  let found = angle;
  // Closer with each round; after the third by far less than a hair.
  for (let round = 0; round < 3; round++) {
    line(found, PLACE);
    found -= ((written(0) - x) * tx + (written(1) - y) * ty) / (written(2) * tx + written(3) * ty);
  }
  return found;
}

/**
 * The edge of the wire as it is seen: square to both the wire and the line of
 * sight, so in the picture's plane. `side` 1 or -1; smooth, though it turns
 * very fast where the wire runs almost straight at the eye.
 */
export function edgeCurve({ centre, cosine, sine, half }: SeenRing, side: 1 | -1): Curve {
  const out1 = side * half;
  // How fast the wire's direction in the picture turns is this over its squared speed there.
  const bend = cosine[0] * sine[1] - cosine[1] * sine[0];
  return (angle, out) => {
    const c = Math.cos(angle);
    const s = Math.sin(angle);
    const tx = sine[0] * c - cosine[0] * s;
    const ty = sine[1] * c - cosine[1] * s;
    const speed = Math.max(1e-12, Math.sqrt(tx * tx + ty * ty));
    const k = out1 / speed;
    const slope = 1 + (out1 * bend) / (speed * speed * speed);
    out[0] = centre[0] + cosine[0] * c + sine[0] * s + ty * k;
    out[1] = centre[1] + cosine[1] * c + sine[1] * s - tx * k;
    out[2] = tx * slope;
    out[3] = ty * slope;
  };
}

/**
 * Whether the wire turns so tightly in the picture at one of its points, or
 * within a wire's thickness of it, that flat ends of strokes would show.
 */
export function isTight({ long, wide, half, count }: SeenRing, point: number): boolean {
  if ((wide * wide) / long > 2.5 * half) return false;
  const off = ((point * 2 * Math.PI) / count) % Math.PI;
  return Math.min(off, Math.PI - off) < (2.4 * half) / long;
}
