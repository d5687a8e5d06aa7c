/** Where light lies along a wire: an offset of the middle line towards the lamp, and how strong it is. */
import { unit, type Vector } from '../space/vector.ts';
import type { Curve } from './curve.ts';
import type { SeenRing } from './seen-ring.ts';

/** Half way between lamp and eye: upper left, in the picture's directions (down is positive). */
const [LX, LY, LZ]: Vector = unit([-0.42, -0.62, 0.66]);

/**
 * The line along which the wire is brightest, `out` of the way from the
 * middle to the surface: the light's own direction with what runs along the
 * wire taken away.
 */
export function lightLine({ centre, cosine, sine, half }: SeenRing, out: number): Curve {
  const away = half * out;
  const square = cosine[0] ** 2 + cosine[1] ** 2 + cosine[2] ** 2;
  return (angle, at) => {
    const c = Math.cos(angle);
    const s = Math.sin(angle);
    const [mx, my, mz] = [
      cosine[0] * c + sine[0] * s,
      cosine[1] * c + sine[1] * s,
      cosine[2] * c + sine[2] * s,
    ];
    const [tx, ty, tz] = [
      sine[0] * c - cosine[0] * s,
      sine[1] * c - cosine[1] * s,
      sine[2] * c - cosine[2] * s,
    ];
    // The wire's direction turns towards the ring's middle as fast as the angle goes on.
    const along = (LX * tx + LY * ty + LZ * tz) / square;
    const turning = -(LX * mx + LY * my + LZ * mz) / square;
    at[0] = centre[0] + mx + (LX - along * tx) * away;
    at[1] = centre[1] + my + (LY - along * ty) * away;
    at[2] = tx + (along * mx - turning * tx) * away;
    at[3] = ty + (along * my - turning * ty) * away;
  };
}

/** The angle at which the wire runs most nearly along the light. */
export const dimmest = ({ cosine, sine }: SeenRing): number =>
  Math.atan2(-(LX * cosine[0] + LY * cosine[1] + LZ * cosine[2]), LX * sine[0] + LY * sine[1] + LZ * sine[2]);

/** Stretches between two angles where the line is bright enough to glint: 1 where the wire runs square to the light, 0 where along it. */
export function glints(
  { cosine, sine }: SeenRing,
  from: number,
  to: number,
  least: number,
): readonly (readonly [number, number])[] {
  const square = cosine[0] ** 2 + cosine[1] ** 2 + cosine[2] ** 2;
  const onCosine = LX * cosine[0] + LY * cosine[1] + LZ * cosine[2];
  const onSine = LX * sine[0] + LY * sine[1] + LZ * sine[2];
  /** Of the light's direction so much may run along the wire, squared, in the ring's own measure. */
  const most = (1 - least * least) * square;
  const steps = Math.max(4, Math.ceil((to - from) / 0.09));
  const found: (readonly [number, number])[] = [];
  let start: number | null = null;
  for (let n = 0; n <= steps; n++) {
    const angle = from + ((to - from) * n) / steps;
    const along = onSine * Math.cos(angle) - onCosine * Math.sin(angle);
    const isBright = along * along <= most;
    if (isBright && start === null) start = angle;
    if (start !== null && (!isBright || n === steps)) {
      const end = isBright ? angle : angle - (to - from) / steps;
      if (end - start > 0.05) found.push([start, end]);
      start = null;
    }
  }
  return found;
}
