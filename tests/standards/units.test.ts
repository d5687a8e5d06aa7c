/** Conversions against npm convert, a units library that knows nothing of rings: lengths, masses, densities. */
import { convert } from 'convert';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { inchFractionToMm, MM_PER_INCH } from '#lib/rings/gauges.ts';
import { findMetal } from '#lib/rings/metals.ts';
import { formatSize, parseSize } from '#lib/rings/parse-size.ts';
import { GRAMS_IN, ringsPer } from '#lib/rings/ring.ts';

test('an inch is what it is elsewhere', () => {
  expect(MM_PER_INCH).toBe(convert(1, 'inches').to('mm'));
});

test('every fraction of an inch down to a 64th, to 1/10,000 mm', () => {
  for (let bottom = 2; bottom <= 64; bottom *= 2)
    for (let top = 1; top <= 3 * bottom; top++)
      // Half a ten-thousandth, and what binary fractions lose.
      expect(Math.abs(inchFractionToMm(top, bottom) - convert(top / bottom, 'in').to('mm'))).toBeLessThan(
        0.000_050_001,
      );
});

describe('what people type', () => {
  const UNITS = [
    ['mm', 'mm'],
    [' millimetres', 'mm'],
    ['cm', 'cm'],
    [' in', 'in'],
    ['"', 'in'],
    [' inches', 'in'],
  ] as const;

  test('is read as the same length', () => {
    fc.assert(
      fc.property(fc.integer({ min: 400, max: 99_999 }), fc.constantFrom(...UNITS), (n, [written, unit]) => {
        const number = n / 1000;
        const read = parseSize(`${number}${written}`, 'length');
        expect(read.ok && Math.abs(read.value.mm - convert(number, unit).to('mm'))).toBeLessThan(
          0.000_050_001,
        );
      }),
    );
  });

  test('and reads back from how it is kept and how it is shown', () => {
    fc.assert(
      fc.property(fc.integer({ min: 400, max: 29_999 }), fc.constantFrom(...UNITS), (n, [written]) => {
        const read = parseSize(`${n / 1000}${written}`, 'length');
        if (!read.ok) throw new Error(read.fault.code);
        expect(parseSize(read.value.stated, 'length')).toEqual(read);
        expect(formatSize(read.value)).toContain(`${read.value.mm}`);
      }),
    );
  });
});

test('ounces, pounds and troy ounces (480 grains) in grams', () => {
  expect(GRAMS_IN.oz).toBeCloseTo(convert(1, 'oz').to('g'), 9);
  expect(GRAMS_IN.lb).toBeCloseTo(convert(1, 'lb').to('g'), 9);
  expect(GRAMS_IN.ozt).toBeCloseTo(convert(480, 'grains').to('g'), 9);
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 50_000 }), (tenthMilligrams) => {
      const ringG = tenthMilligrams / 10_000;
      expect(ringsPer('lb', ringG) * ringG).toBeCloseTo(convert(1, 'lb').to('g'), 6);
      expect(ringsPer('oz', ringG) / ringsPer('lb', ringG)).toBeCloseTo(1 / 16, 12);
    }),
  );
});

// ASTM B36 alloy data give C26000 as 0.308 lb/in3; a welding-alloy table gives aluminium 1100 as 0.098 lb/in3.
test.each([
  ['brass-c26000', 0.308],
  ['aluminium-1100', 0.098],
])('the density of %s is what the handbook says in pounds and inches', (id, lbPerCubicInch) => {
  const metric = convert(lbPerCubicInch, 'lb').to('g') / convert(1, 'in').to('cm') ** 3;
  // Three figures are printed, so a half in the last one: 0.2 % and 0.5 %.
  expect(Math.abs((findMetal(id)?.densityGPerCm3 ?? 0) / metric - 1)).toBeLessThan(0.005);
});
