import { expect, test } from 'vitest';
import { colourCodeOf } from '#lib/rings/colour-words.ts';

test.each([
  ['copper', '#b8643c'],
  ['Anodised blue', '#2f66b3'],
  ['rose gold', '#c98a6b'],
])('%s has a picture colour', (words, code) => {
  expect(colourCodeOf(words)).toBe(code);
});

test('shades are darker and lighter than the colour', () => {
  const red = (words: string): number => Number.parseInt(colourCodeOf(words)?.slice(1, 3) ?? '', 16);
  expect(red('deep green')).toBeLessThan(red('green'));
  expect(red('pale green')).toBeGreaterThan(red('green'));
});

test('no colour is made up', () => {
  expect(colourCodeOf('like the sea at four')).toBeNull();
  expect(colourCodeOf('')).toBeNull();
});
