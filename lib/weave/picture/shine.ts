/** Where light lies along a wire: an offset of the middle line towards the lamp, and how strong it is. */
import { dot, unit, type Vector } from '../space/vector.ts';
import type { Curve } from './curve.ts';
import { alongRing, type SeenRing, wireDirection } from './seen-ring.ts';

/** Half way between lamp and eye: upper left, in the picture's directions (down is positive). */
const TO_LIGHT: Vector = unit([-0.42, -0.62, 0.66]);

/** The light's own direction with what runs along the wire taken away: towards the brightest line of the surface. */
function lit(ring: SeenRing, angle: number): Vector {
  const d = wireDirection(ring, angle);
  const along = dot(TO_LIGHT, d);
  return [TO_LIGHT[0] - along * d[0], TO_LIGHT[1] - along * d[1], TO_LIGHT[2] - along * d[2]];
}

/** The line along which the wire is brightest, `out` of the way from the middle to the surface. */
export const lightLine =
  (ring: SeenRing, out: number): Curve =>
  (angle) => {
    const [x, y, z] = alongRing(ring, angle);
    const [lx, ly] = lit(ring, angle);
    return [x + lx * ring.half * out, y + ly * ring.half * out, z];
  };

/** How bright that line is: 1 where the wire runs square to the light, 0 where along it. */
export const brightness = (ring: SeenRing, angle: number): number => {
  const [x, y, z] = lit(ring, angle);
  return Math.hypot(x, y, z);
};

/** Stretches between two angles where the line is bright enough to glint. */
export function glints(
  ring: SeenRing,
  from: number,
  to: number,
  least: number,
): readonly (readonly [number, number])[] {
  const steps = Math.max(4, Math.ceil((to - from) / 0.09));
  const found: (readonly [number, number])[] = [];
  let start: number | null = null;
  for (let n = 0; n <= steps; n++) {
    const angle = from + ((to - from) * n) / steps;
    const isBright = brightness(ring, angle) >= least;
    if (isBright && start === null) start = angle;
    if (start !== null && (!isBright || n === steps)) {
      const end = isBright ? angle : angle - (to - from) / steps;
      if (end - start > 0.05) found.push([start, end]);
      start = null;
    }
  }
  return found;
}
