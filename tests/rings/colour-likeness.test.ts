import { expect, test } from 'vitest';
import { oklabOf, unlikeness } from '#lib/rings/colour-likeness.ts';

// CSS Color Module Level 4, section 9.3: the sRGB colours red and green in Oklab.
test.each([
  ['#ff0000', [0.628, 0.2249, 0.1258]],
  ['#008000', [0.5198, -0.1403, 0.1077]],
  ['#ffffff', [1, 0, 0]],
] as const)('Oklab of %s', (code, expected) => {
  for (const [index, value] of oklabOf(code).entries()) expect(value).toBeCloseTo(expected[index] ?? 9, 3);
});

test('black and white differ by all there is, a colour and itself by nothing, whichever comes first', () => {
  expect(unlikeness('#000000', '#ffffff')).toBeCloseTo(1, 3);
  expect(unlikeness('#b8643c', '#b8643c')).toBe(0);
  expect(unlikeness('#b8643c', '#2f66b3')).toBe(unlikeness('#2f66b3', '#b8643c'));
});

test('never more unlike than to eyes that see everything', () => {
  const far = (a: string, b: string): number => {
    const [one, other] = [oklabOf(a), oklabOf(b)];
    return Math.hypot(one[0] - other[0], one[1] - other[1], one[2] - other[2]);
  };
  for (const [a, b] of [
    ['#b3302f', '#3c8a4a'],
    ['#2f66b3', '#6e4a9e'],
    ['#dcb92c', '#9bbf3b'],
  ] as const)
    expect(unlikeness(a, b)).toBeLessThan(far(a, b));
});
