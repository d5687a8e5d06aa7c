/** Stretches of wire that lie wholly under others or under their own ring, and so need not be painted. */
import type { BallsByPlace } from './balls-by-place.ts';
import type { SeenRing } from './seen-ring.ts';

/** Where across a wire is looked whether anything of it is seen: -1 and 1 are its edges. */
const ACROSS = [0, 0.99, 0.93, 0.85, 0.74, 0.6, 0.4, 0.2].flatMap((at) => (at === 0 ? [at] : [at, -at]));

/** Whether nothing is seen of a ring's skin between two angles; the first point that is seen ends the search. */
export function isHidden(ring: SeenRing, from: number, to: number, balls: BallsByPlace): boolean {
  const { count, half, centre, cosine, sine } = ring;
  const radius = Math.hypot(...cosine);
  const steps = Math.max(1, Math.ceil(((to - from) * count) / (2 * Math.PI)));
  for (let n = 0; n <= steps; n++) {
    const angle = from + ((to - from) * n) / steps;
    const c = Math.cos(angle);
    const s = Math.sin(angle);
    const tx = sine[0] * c - cosine[0] * s;
    const ty = sine[1] * c - cosine[1] * s;
    const tz = sine[2] * c - cosine[2] * s;
    const speed = Math.max(1e-9, Math.sqrt(tx * tx + ty * ty));
    const x = centre[0] + cosine[0] * c + sine[0] * s;
    const y = centre[1] + cosine[1] * c + sine[1] * s;
    const near = centre[2] + cosine[2] * c + sine[2] * s;
    for (const across of ACROSS) {
      // As on the skin: towards the eye in the middle, and along the wire by as much as it runs at the eye.
      const bulge = half * Math.sqrt(1 - across * across);
      const along = (-bulge * tz) / radius / speed;
      const aside = (half * across) / speed;
      const px = x + aside * ty + along * tx;
      const py = y - aside * tx + along * ty;
      if (!balls.hide(px, py, near + (bulge * speed) / radius, NONE, -SPARE)) return false;
    }
  }
  return true;
}

/** What lies so near the rim of what covers it is taken for seen, picture units: more than lies between two places that are looked at. */
const SPARE = 0.25;

/** No ring's number: balls of the ring itself hide its skin too. */
const NONE = -1;
