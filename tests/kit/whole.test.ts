import fc from 'fast-check';
import { expect, test } from 'vitest';
import { divide, multiplyDivide } from '#lib/kit/whole.ts';

const ROUNDINGS = ['up', 'nearest', 'down'] as const;

/** The same in arithmetic without a limit. */
function exact(a: number, b: number, c: number, rounding: (typeof ROUNDINGS)[number]): number {
  const [top, by] = [BigInt(a) * BigInt(b), BigInt(c)];
  const whole = { down: top / by, up: (top + by - 1n) / by, nearest: (2n * top + by) / (2n * by) };
  return Number(whole[rounding]);
}

test('products and quotients are exact on both sides of what a number holds to the unit', () => {
  const factor = fc.oneof(fc.nat(1000), fc.nat(2 ** 27), fc.maxSafeNat());
  fc.assert(
    fc.property(
      factor,
      factor,
      fc.integer({ min: 1, max: 2 ** 40 }),
      fc.constantFrom(...ROUNDINGS),
      (a, b, c, rounding) => {
        const wanted = exact(a, b, c, rounding);
        fc.pre(Number.isSafeInteger(wanted));
        expect(multiplyDivide(a, b, c, rounding)).toBe(wanted);
      },
    ),
    { numRuns: 5000 },
  );
});

test('a quotient just below a whole number is not taken for it', () => {
  const divisor = fc.integer({ min: 2, max: 2 ** 26 });
  fc.assert(
    fc.property(divisor, fc.integer({ min: 1, max: 2 ** 26 }), (by, times) => {
      expect(divide(by * times - 1, by, 'down')).toBe(times - 1);
      expect(divide(by * times + 1, by, 'up')).toBe(times + 1);
    }),
    { numRuns: 5000 },
  );
});
