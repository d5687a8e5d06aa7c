/** Where light lies along a wire: an offset of the middle line towards the lamp, and how strong it is. */
import { unit, type Vector } from '../space/vector.ts';
import type { Curve } from './curve.ts';
import type { SeenRing } from './seen-ring.ts';

/** Half way between lamp and eye: upper left, in the picture's directions (down is positive). */
export const LAMP: Vector = unit([-0.42, -0.62, 0.66]);
const [LX, LY, LZ] = LAMP;

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

/**
 * Stretches that reach in between two angles and where the wire runs square
 * enough to the light to glint: 1 for square to it, 0 for along it. Null
 * where all of the ring does.
 */
export function glints(
  ring: SeenRing,
  from: number,
  to: number,
  least: number,
): readonly { readonly middle: number; readonly reach: number }[] | null {
  const { cosine, sine } = ring;
  const onCosine = LX * cosine[0] + LY * cosine[1] + LZ * cosine[2];
  const onSine = LX * sine[0] + LY * sine[1] + LZ * sine[2];
  // The light's part along the wire goes as a sine from where the wire runs square to the light.
  const most = Math.sqrt((1 - least * least) * (cosine[0] ** 2 + cosine[1] ** 2 + cosine[2] ** 2));
  const largest = Math.hypot(onCosine, onSine);
  if (largest <= most) return null;
  const reach = Math.asin(most / largest);
  const square = dimmest(ring) + Math.PI / 2;
  const found: { middle: number; reach: number }[] = [];
  for (
    let middle = square + Math.PI * Math.floor((from - square) / Math.PI);
    middle - reach < to;
    middle += Math.PI
  )
    if (middle + reach > from) found.push({ middle, reach });
  return found;
}
