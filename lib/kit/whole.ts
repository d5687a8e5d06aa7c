/**
 * Exact arithmetic on whole numbers. Counts, packs and prices never pass
 * through a fraction: 50 x 1.1 is 55.000000000000007 in a computer, and a
 * rounding up would make 56 of it.
 */
import type { Rounding } from './making.ts';

/**
 * `a x b / c`, rounded as said; all whole, none below 0 and c above 0. `nearest`
 * takes a half up. Exact however large the product between is.
 */
export function multiplyDivide(a: number, b: number, c: number, rounding: Rounding): number {
  // A product that a number still holds to the unit needs no longer arithmetic.
  if (a * b <= Number.MAX_SAFE_INTEGER) return divide(a * b, c, rounding);
  const product = BigInt(a) * BigInt(b);
  const divisor = BigInt(c);
  if (rounding === 'up') return Number((product + divisor - 1n) / divisor);
  if (rounding === 'down') return Number(product / divisor);
  return Number((2n * product + divisor) / (2n * divisor));
}

/** `a / by`, rounded as said; whole, `by` above 0. `a` may be below 0: up is towards the greater number always. */
export function divide(a: number, by: number, rounding: Rounding): number {
  const floor = Math.floor(a / by);
  const rest = a - floor * by;
  if (rounding === 'down' || rest === 0) return floor;
  if (rounding === 'up') return floor + 1;
  return 2 * rest >= by ? floor + 1 : floor;
}

/** A count with so many per cent spare, rounded up: (count x (100 + percent) + 99) div 100. */
export const withSpare = (count: number, percent: number): number =>
  multiplyDivide(count, 100 + percent, 100, 'up');
