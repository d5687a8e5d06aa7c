/** Whether two rings pass through each other, and which way. */
import type { RoundRing } from './round-ring.ts';
import { dot, spanAcross, subtract, type Vector } from './vector.ts';

export type LinkSign = -1 | 0 | 1;

/**
 * The linking number of two circles that do not touch: each crossing of the
 * second circle with the disc of the first counts +1 where it runs along the
 * first one's normal and -1 where against. Two circles link once or not at
 * all. Exact up to rounding.
 */
export function linkSign(a: RoundRing, b: RoundRing): LinkSign {
  const between = subtract(b.centre, a.centre);
  const reach = a.radius + b.radius;
  if (dot(between, between) > reach * reach) return 0;
  const [u, v] = spanAcross(b.normal);
  // Height over a's plane along b: h + m cos(t - phase).
  const h = dot(between, a.normal);
  const mu = b.radius * dot(u, a.normal);
  const mv = b.radius * dot(v, a.normal);
  const m = Math.hypot(mu, mv);
  if (m <= Math.abs(h)) return 0;
  const phase = Math.atan2(mv, mu);
  const half = Math.acos(-h / m);
  const inside = (angle: number): boolean => {
    const c = Math.cos(angle) * b.radius;
    const s = Math.sin(angle) * b.radius;
    const p: Vector = [
      between[0] + u[0] * c + v[0] * s,
      between[1] + u[1] * c + v[1] * s,
      between[2] + u[2] * c + v[2] * s,
    ];
    return dot(p, p) < a.radius * a.radius;
  };
  // The height falls at phase + half and rises at phase - half.
  const rises = inside(phase - half);
  const falls = inside(phase + half);
  if (rises === falls) return 0;
  return rises ? 1 : -1;
}
