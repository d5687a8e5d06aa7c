import fc from 'fast-check';
import { expect, test } from 'vitest';
import { kitCsv } from '#lib/kit/kit-csv.ts';
import { kitFor } from '#lib/kit/kit-list.ts';
import { formatAmount, formatMoney, minorPlaces, parseMoney } from '#lib/kit/money.ts';
import { formatDecimal, parseDecimal } from '#lib/kit/parse-decimal.ts';
import { byzantineMaking } from '#tests/support/a-making.ts';

// ISO 4217, list of current currency codes: minor units.
test.each([
  ['EUR', 2],
  ['GBP', 2],
  ['USD', 2],
  ['JPY', 0],
  ['KRW', 0],
  ['KWD', 3],
  ['TND', 3],
])('%s has %i places', (currency, places) => {
  expect(minorPlaces(currency)).toBe(places);
});

test.each([
  ['12.50', 'EUR', 1250],
  ['12,5', 'EUR', 1250],
  ['€ 12.50', 'EUR', 1250],
  ['12.50 eur', 'EUR', 1250],
  ['.5', 'EUR', 50],
  ['1 234', 'EUR', 123_400],
  ['1200', 'JPY', 1200],
  ['1.250', 'KWD', 1250],
])('%s of %s is %i minor units', (typed, currency, minor) => {
  expect(parseMoney(typed, currency)).toEqual({ ok: true, value: minor });
});

test.each([
  ['1,234', 'EUR', 'number-too-fine'],
  ['1.234', 'EUR', 'number-too-fine'],
  ['1.000', 'EUR', 'number-too-fine'],
  ['12.5', 'JPY', 'number-too-fine'],
  ['-3', 'EUR', 'number-not-read'],
  ['1.2.3', 'EUR', 'number-not-read'],
  ['', 'EUR', 'number-empty'],
  ['99999999999999999', 'EUR', 'number-too-large'],
])('%s of %s is refused: %s', (typed, currency, code) => {
  expect(parseMoney(typed, currency)).toMatchObject({ ok: false, fault: { code } });
});

test('what is written reads back as the same amount', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 1e9 }), fc.constantFrom('EUR', 'JPY', 'KWD'), (minor, currency) => {
      expect(parseMoney(formatMoney(minor, currency), currency)).toEqual({ ok: true, value: minor });
      expect(parseMoney(formatAmount(minor, currency), currency)).toEqual({ ok: true, value: minor });
    }),
  );
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 1e9 }), fc.integer({ min: 0, max: 4 }), (value, places) => {
      // Three decimals of which none are needed may be thousands, so they are never written.
      expect(parseDecimal(formatDecimal(value, places), places)).toEqual({ ok: true, value });
    }),
  );
});

test('a kit as CSV keeps its numbers, quotes what needs it and runs nothing', () => {
  const making = byzantineMaking();
  const [copper, ...rest] = making.ringKinds;
  if (!copper) throw new Error('no copper');
  const kit = kitFor({ ...making, ringKinds: [{ ...copper, name: '=large, "copper"' }, ...rest] }, 165);
  if (!kit.ok) throw new Error(kit.fault.code);
  const lines = kitCsv(kit.value).split('\r\n');
  expect(lines[0]).toMatch(/^what,name,inner diameter,wire,/);
  expect(lines[1]).toBe(
    `ring,"'=large, ""copper""",4.2 mm,1.2 mm,copper,copper,40,38,8,86,ring,1 x 100,14,14.78,4.80,4.13,EUR,`,
  );
  expect(lines[4]).toBe('finding,lobster clasp,,,,,,,,1,piece,1 x 1,0,1.50,1.90,1.90,EUR,');
  expect(lines.at(-1)).toBe('');
});
