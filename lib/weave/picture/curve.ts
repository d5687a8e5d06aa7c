/** Smooth curves as short path text: cubic pieces through points with their slopes, numbers with one decimal. */
import type { Vector } from '../space/vector.ts';

export type Curve = (angle: number) => Vector;

/** One decimal, as short as it can be written. */
export function short(value: number): string {
  const rounded = Math.round(value * 10) / 10;
  return String(rounded === 0 ? 0 : rounded);
}

/** A number after another: a minus sign parts them, anything else needs a space. */
const joined = (numbers: readonly number[]): string =>
  numbers
    .map(short)
    .reduce((text, each) => (text === '' || each.startsWith('-') ? text + each : `${text} ${each}`), '');

export const moveTo = (x: number, y: number): string => `M${joined([x, y])}`;

/** How far a piece may leave its curve, in the unit of the picture. */
const LOOSE = 0.12;
/** Longest piece, in radians. */
const PIECE = Math.PI / 4;

/** A curve from one angle to another, as path text. */
export function curvePath(curve: Curve, from: number, to: number): string {
  const start = curve(from);
  const pieces = Math.max(1, Math.ceil((to - from) / PIECE - 1e-9));
  let text = moveTo(start[0], start[1]);
  let at = [Math.round(start[0] * 10) / 10, Math.round(start[1] * 10) / 10] as readonly [number, number];
  const draw = (a: number, b: number, depth: number): void => {
    const [p0, p1] = [curve(a), curve(b)];
    const [t0, t1] = [slope(curve, a, 1, b - a), slope(curve, b, -1, b - a)];
    const k = (b - a) / 3;
    const c0 = [p0[0] + t0[0] * k, p0[1] + t0[1] * k] as const;
    const c1 = [p1[0] - t1[0] * k, p1[1] - t1[1] * k] as const;
    const isLoose = [0.25, 0.5, 0.75].some((t) => {
      const seen = curve(a + (b - a) * t);
      const s = 1 - t;
      const [w0, w1, w2, w3] = [s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t];
      return (
        Math.hypot(
          w0 * p0[0] + w1 * c0[0] + w2 * c1[0] + w3 * p1[0] - seen[0],
          w0 * p0[1] + w1 * c0[1] + w2 * c1[1] + w3 * p1[1] - seen[1],
        ) > LOOSE
      );
    });
    if (isLoose && depth < 9) {
      draw(a, (a + b) / 2, depth + 1);
      draw((a + b) / 2, b, depth + 1);
      return;
    }
    const [x, y] = at;
    const end = [Math.round(p1[0] * 10) / 10, Math.round(p1[1] * 10) / 10] as const;
    text += `c${joined([c0[0] - x, c0[1] - y, c1[0] - x, c1[1] - y, end[0] - x, end[1] - y])}`;
    at = end;
  };
  for (let n = 0; n < pieces; n++)
    draw(from + ((to - from) * n) / pieces, from + ((to - from) * (n + 1)) / pieces, 0);
  return text;
}

/** Slope at an end of a piece, taken from inside it. */
function slope(curve: Curve, at: number, into: 1 | -1, width: number): readonly [number, number] {
  const h = Math.min(1e-4, Math.abs(width) / 8) * into;
  const [a, b, c] = [curve(at), curve(at + h), curve(at + 2 * h)];
  return [(4 * b[0] - 3 * a[0] - c[0]) / (2 * h), (4 * b[1] - 3 * a[1] - c[1]) / (2 * h)];
}
