import fc from 'fast-check';
import { expect, test } from 'vitest';
import { spareOf } from '#lib/kit/spare.ts';

const nets = fc.array(fc.integer({ min: 0, max: 2000 }), { maxLength: 8 });
const percent = fc.integer({ min: 0, max: 100 });
const spares = (counts: readonly number[], sparePercent: number, spareBy: 'line' | 'kit', spareLeast = 0) =>
  spareOf(counts, { sparePercent, spareBy, spareLeast }).map((line) => line.spare);

test('by the kit the spare is rounded up once, and each line is within one ring of its share', () => {
  fc.assert(
    fc.property(nets, percent, (counts, sparePercent) => {
      const all = counts.reduce((sum, n) => sum + n, 0);
      const shared = spares(counts, sparePercent, 'kit');
      expect(shared.reduce((sum, n) => sum + n, 0)).toBe(Math.ceil((all * sparePercent) / 100));
      shared.forEach((spare, i) => {
        const share = all === 0 ? 0 : (Math.ceil((all * sparePercent) / 100) * (counts[i] ?? 0)) / all;
        expect(Math.abs(spare - share)).toBeLessThan(1);
      });
    }),
  );
});

test('by the kit never takes more spare than by the line', () => {
  fc.assert(
    fc.property(nets, percent, (counts, sparePercent) => {
      const sum = (by: 'line' | 'kit') => spares(counts, sparePercent, by).reduce((a, b) => a + b, 0);
      expect(sum('kit')).toBeLessThanOrEqual(sum('line'));
    }),
  );
});

// By hand: 10 % of 78 + 38 + 2 is 11.8, so 12: shares 7.93, 3.86, 0.20; whole parts 7 + 3 + 0, the two left go to
// the largest remainders.
test('shares out 12 spare rings by count', () => {
  expect(spares([78, 38, 2], 10, 'kit')).toEqual([8, 4, 0]);
  expect(spares([78, 38, 2], 10, 'kit', 2)).toEqual([8, 4, 2]);
  expect(spares([78, 38, 2], 10, 'line')).toEqual([8, 4, 1]);
  expect(spares([0, 5], 0, 'line', 3)).toEqual([0, 3]);
});
