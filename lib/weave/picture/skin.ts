/**
 * The side of a wire that faces the eye, as shapes to fill. Where a wire
 * bends more tightly in the picture than it is thick, strokes along it would
 * show their ends and cover their own light; its skin, between true edges and
 * cut straight across the wire in space, meets without a trace everywhere.
 */
import { type Curve, closedPath } from './curve.ts';
import type { SeenRing } from './seen-ring.ts';
import { LAMP } from './shine.ts';

const [LX, LY] = LAMP;

/** A line along a wire's skin, by any measure of the way along it. */
interface SkinLine {
  /**
   * Writes where it is: the angle round the ring and how fast that goes on,
   * then where across the wire beside the light's part, -1 and 1 for the
   * edges, and how fast that changes.
   */
  readonly place: (way: number, out: Float64Array) => void;
  /** On which side of the light it lies: its places across count from there. */
  readonly side: 1 | -1;
  /** How far the line is drawn towards the lamp, by the light's part across the wire. */
  readonly out: number;
  /** Whether it lies on the skin, which comes towards the eye in the middle; else in the plane of the edges, as strokes do, or everywhere as near to the eye as this part of half the wire. */
  readonly bulges: boolean | number;
}

/** Room for one place, as no two are looked at at once. */
const PLACE = new Float64Array(4);

const written = (at: number): number => PLACE[at] as number;

function skinCurve({ centre, cosine, sine, half }: SeenRing, { place, side, out, bulges }: SkinLine): Curve {
  const radius = Math.hypot(...cosine);
  const [cx, cy, cz] = cosine;
  const [sx, sy, sz] = sine;
  // Asked for tens of thousands of times a picture: numbers by name, no lists of them.
  return (way, at) => {
    place(way, PLACE);
    const theta = written(0);
    const thetaBy = written(1);
    const aside = side * written(2);
    const asideBy = side * written(3);
    const c = Math.cos(theta);
    const s = Math.sin(theta);
    const mx = cx * c + sx * s;
    const my = cy * c + sy * s;
    const mz = cz * c + sz * s;
    const tx = sx * c - cx * s;
    const ty = sy * c - cy * s;
    const tz = sz * c - cz * s;
    const speed = Math.max(1e-9, Math.sqrt(tx * tx + ty * ty));
    const ux = tx / speed;
    const uy = ty / speed;
    // Across the wire; how fast it and the wire's direction turn.
    const ax = uy;
    const ay = -ux;
    const turn = (-thetaBy * (mx * ax + my * ay)) / speed;
    const across = out * (LX * ax + LY * ay) + aside;
    const acrossBy = asideBy - out * turn * (LX * ux + LY * uy);
    const bulge = bulges === true ? Math.sqrt(Math.max(0, 1 - across * across)) : Number(bulges);
    const bulgeBy = bulges !== true || bulge < 1e-6 ? 0 : (-across * acrossBy) / bulge;
    const rise = tz / radius;
    const along = -bulge * rise;
    const alongBy = (bulge * mz * thetaBy) / radius - bulgeBy * rise;
    at[0] = centre[0] + mx + half * (across * ax + along * ux);
    at[1] = centre[1] + my + half * (across * ay + along * uy);
    const byAcross = half * (acrossBy + along * turn);
    const byAlong = half * (alongBy - across * turn);
    at[2] = tx * thetaBy + byAcross * ax + byAlong * ux;
    at[3] = ty * thetaBy + byAcross * ay + byAlong * uy;
  };
}

/** A strip of skin: how far it is drawn towards the lamp, and half its width; 0 and 1 for the whole. */
export interface Strip {
  readonly out: number;
  readonly wide: number;
}

/** How near to the eye the edges of a strip lie on the skin, in half wires. */
const edgeBulge = ({ wide }: Strip): number => Math.sqrt(1 - wide * wide);

/** The middle between the edges of a strip, to be drawn as a stroke as broad as that: where it bends it then has the skin's own edges. */
export const stripMiddle = (ring: SeenRing, strip: Strip): Curve =>
  skinCurve(ring, {
    place: (angle, at) => {
      at[0] = angle;
      at[1] = 1;
      at[2] = 0;
      at[3] = 0;
    },
    side: 1,
    out: strip.out,
    bulges: edgeBulge(strip),
  });

/** A strip between two angles, as path text to be filled that leaves it by no more than `off`, picture units. */
export const stripPath = (
  ring: SeenRing,
  { out, wide }: Strip,
  [from, to]: readonly [number, number],
  off: number,
): string => {
  const place = (angle: number, at: Float64Array): void => {
    at[0] = angle;
    at[1] = 1;
    at[2] = wide;
    at[3] = 0;
  };
  return between(ring, { place, side: 1, out, bulges: true }, [from, to], off);
};

/** A stretch of light: its middle and how far it reaches to both sides, by angle. */
interface Gleam {
  readonly middle: number;
  readonly reach: number;
}

/** A strip that grows narrower towards the ends of a stretch of light, as far as it lies between two angles. */
export function gleamPath(
  ring: SeenRing,
  { middle, reach }: Gleam,
  { out, wide }: Strip,
  {
    from,
    to,
    bulges,
    off,
  }: { readonly from: number; readonly to: number; readonly bulges: boolean; readonly off: number },
): string {
  const wayAt = (angle: number): number => Math.asin(Math.max(-1, Math.min(1, (angle - middle) / reach)));
  const place = (way: number, at: Float64Array): void => {
    const [s, c] = [Math.sin(way), Math.cos(way)];
    at[0] = middle + reach * s;
    at[1] = reach * c;
    at[2] = wide * c;
    at[3] = -wide * s;
  };
  return between(ring, { place, side: 1, out, bulges }, [wayAt(from), wayAt(to)], off);
}

/** What lies between a line and its like on the light's other side. */
function between(ring: SeenRing, line: SkinLine, [from, to]: readonly [number, number], off: number): string {
  /** Straight across the wire, from one side of the strip to the other. */
  const cut = (way: number, side: 1 | -1): { curve: Curve; from: number; to: number } => {
    line.place(way, PLACE);
    const [theta, aside] = [written(0), written(2)];
    // By the turn round the wire, as its cut is half a circle seen aslant; else a straight line.
    const lit = line.bulges ? line.out * litAcross(ring, theta) : 0;
    const place = (at: number, out: Float64Array): void => {
      out[0] = theta;
      out[1] = 0;
      out[2] = line.bulges ? Math.sin(at) - lit : at;
      out[3] = line.bulges ? Math.cos(at) : 1;
    };
    const at = (across: number): number =>
      line.bulges ? Math.asin(Math.max(-1, Math.min(1, lit + across))) : across;
    return {
      curve: skinCurve(ring, { ...line, place }),
      from: at(side * aside),
      to: at(-side * aside),
    };
  };
  return closedPath(
    [
      { curve: skinCurve(ring, line), from, to },
      cut(to, 1),
      { curve: skinCurve(ring, { ...line, side: -1 }), from: to, to: from },
      cut(from, -1),
    ],
    off,
  );
}

/** The lamp's part across a wire. */
function litAcross({ cosine, sine }: SeenRing, angle: number): number {
  const tx = sine[0] * Math.cos(angle) - cosine[0] * Math.sin(angle);
  const ty = sine[1] * Math.cos(angle) - cosine[1] * Math.sin(angle);
  return (LX * ty - LY * tx) / Math.max(1e-9, Math.sqrt(tx * tx + ty * ty));
}

/** Angles that differ by less are the same. */
const NO_ANGLE = 1e-9;

/** The parts of a stretch of wire between the angles where it turns towards the eye and away again, the furthest first. */
export function partsByDepth(
  { cosine, sine }: SeenRing,
  from: number,
  to: number,
): readonly (readonly [number, number])[] {
  const cuts = [from];
  for (let turn = Math.ceil(from / Math.PI); turn * Math.PI < to - NO_ANGLE; turn++)
    if (turn * Math.PI > from + NO_ANGLE) cuts.push(turn * Math.PI);
  cuts.push(to);
  const parts = cuts.slice(1).map((until, n) => [cuts[n] as number, until] as const);
  const near = ([a, b]: readonly [number, number]): number =>
    cosine[2] * Math.cos((a + b) / 2) + sine[2] * Math.sin((a + b) / 2);
  return parts.toSorted((a, b) => near(a) - near(b));
}
