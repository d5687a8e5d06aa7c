import { expect, test } from 'vitest';
import {
  awgToMm,
  formatGauge,
  inchFractionToMm,
  MM_PER_INCH,
  nearestGauge,
  swgToMm,
} from '#lib/rings/gauges.ts';
import { parseSize } from '#lib/rings/parse-size.ts';

// ASTM B258 defines the American gauge by two fixed points and a geometric row between them.
test('the fixed points of ASTM B258: No. 36 is 0.0050 in, No. 0000 is 0.4600 in', () => {
  expect(awgToMm(36)).toBe(0.127);
  expect(awgToMm(-3)).toBe(11.684);
});

// Diameters in inches as ASTM B258 tabulates them, to 0.0001 in, as quoted in public AWG tables.
test.each([
  [8, 0.1285],
  [10, 0.1019],
  [12, 0.0808],
  [14, 0.0641],
  [16, 0.0508],
  [18, 0.0403],
  [20, 0.032],
  [22, 0.0253],
  [24, 0.0201],
  [26, 0.0159],
  [28, 0.0126],
  [30, 0.01],
])('%i AWG is %f in', (number, inches) => {
  expect((awgToMm(number) ?? 0) / MM_PER_INCH).toBeCloseTo(inches, 4);
});

test('AWG grows by the 39th root of 92 from size to size', () => {
  for (let n = -3; n < 20; n++)
    expect((awgToMm(n) ?? 0) / (awgToMm(n + 1) ?? 1)).toBeCloseTo(92 ** (1 / 39), 3);
});

// Imperial standard wire gauge, Order in Council of 23 August 1883; mm = in x 25.4 (international inch, 1959).
test.each([
  [6, 0.192],
  [8, 0.16],
  [9, 0.144],
  [10, 0.128],
  [11, 0.116],
  [12, 0.104],
  [13, 0.092],
  [14, 0.08],
  [15, 0.072],
  [16, 0.064],
  [17, 0.056],
  [18, 0.048],
  [19, 0.04],
  [20, 0.036],
  [21, 0.032],
  [22, 0.028],
  [23, 0.024],
  [24, 0.022],
  [25, 0.02],
  [26, 0.018],
  [27, 0.0164],
  [28, 0.0148],
])('%i SWG is %f in', (number, inches) => {
  expect(swgToMm(number)).toBeCloseTo(inches * 25.4, 4);
});

test('printed millimetres that many tables truncate: 21 SWG is 0.8128 and not 0.812', () => {
  expect(swgToMm(21)).toBe(0.8128);
  expect(swgToMm(18)).toBe(1.2192);
  expect(awgToMm(18)).toBe(1.0237);
  expect(awgToMm(16)).toBe(1.2908);
});

// The same number names thicker wire in SWG: 25.9 % at 16, 19.1 % at 18, 12.6 % at 20, 10.5 % at 22 (from the two tables above).
test.each([
  [16, 25.9],
  [18, 19.1],
  [20, 12.6],
  [22, 10.5],
])('%i SWG is %f %% thicker than AWG of the same number', (number, percent) => {
  expect(((swgToMm(number) ?? 0) / (awgToMm(number) ?? 1) - 1) * 100).toBeCloseTo(percent, 1);
});

// Fractions of the international inch (25.4 mm exactly), rounded to 1/10,000 mm.
test.each([
  [3, 32, 2.3813],
  [7, 64, 2.7781],
  [1, 8, 3.175],
  [9, 64, 3.5719],
  [5, 32, 3.9688],
  [11, 64, 4.3656],
  [3, 16, 4.7625],
  [13, 64, 5.1594],
  [7, 32, 5.5563],
  [1, 4, 6.35],
  [9, 32, 7.1438],
  [5, 16, 7.9375],
  [3, 8, 9.525],
])('%i/%i in is %f mm, reckoned and read', (top, bottom, mm) => {
  expect(inchFractionToMm(top, bottom)).toBe(mm);
  expect(parseSize(`${top}/${bottom} in`, 'inner diameter')).toEqual({
    ok: true,
    value: { stated: `${top}/${bottom} in`, mm },
  });
});

test('no gauge is made up outside its table', () => {
  for (const number of [-4, 41, 18.5, Number.NaN]) expect(awgToMm(number)).toBeNull();
  for (const number of [-1, 37, 18.5, Number.NaN]) expect(swgToMm(number)).toBeNull();
});

test('near coincidences are told apart: 1.0160 mm is 19 SWG and nearest to 18 AWG', () => {
  expect(nearestGauge('SWG', 1.016)).toEqual({ number: 19, mm: 1.016 });
  expect(nearestGauge('AWG', 1.016)).toEqual({ number: 18, mm: 1.0237 });
  expect(formatGauge('AWG', -3)).toBe('4/0 AWG');
});
