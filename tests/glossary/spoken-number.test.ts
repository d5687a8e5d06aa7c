import { describe, expect, it } from 'vitest';
import { sayNumber } from '#lib/glossary/number-words.ts';
import { readNumber, tokensOf } from '#lib/glossary/spoken-number.ts';

const read = (text: string) => {
  const tokens = tokensOf(text);
  const number = readNumber(tokens, 0);
  return number && [number.figures, number.value, tokens.length - number.to];
};

describe('numbers as they are said', () => {
  it.each([
    ['eighteen', '18', 18],
    ['forty-four', '44', 44],
    ['a hundred', '100', 100],
    ['two hundred and ten', '210', 210],
    ['one thousand two hundred and five', '1205', 1205],
    ['one point two', '1.2', 1.2],
    ['point eight', '0.8', 0.8],
    ['nought point nine five', '0.95', 0.95],
    ['three point one two five', '3.125', 3.125],
    ['seventy-three', '73', 73],
    ['a half', '1/2', 0.5],
    ['half', '1/2', 0.5],
    ['three quarters', '3/4', 0.75],
    ['one eighth', '1/8', 0.125],
    ['five sixteenths', '5/16', 0.3125],
    ['eleven sixty-fourths', '11/64', 0.171875],
    ['seven thirty-seconds', '7/32', 0.21875],
    ['six and a half', '6 1/2', 6.5],
    ['one and three quarters', '1 3/4', 1.75],
    ['18', '18', 18],
    ['4.2', '4.2', 4.2],
    ['4,2', '4.2', 4.2],
    ['3/16', '3/16', 0.1875],
    ['1 1/4', '1 1/4', 1.25],
    ['6½', '6 1/2', 6.5],
  ])('%s', (text, figures, value) => {
    expect(read(text)).toEqual([figures, value, 0]);
  });

  it('stops where a number ends', () => {
    expect(read('two four')).toEqual(['2', 2, 1]);
    expect(read('eighteen twenty')).toEqual(['18', 18, 1]);
    expect(read('two and one')).toEqual(['2', 2, 2]);
    expect(read('ring')).toBeNull();
    expect(read('and')).toBeNull();
  });

  it('reads back every number that it says', () => {
    for (let n = 1; n < 30_000; n += n < 1_200 ? 1 : 97)
      expect(read(sayNumber(n))?.[1], sayNumber(n)).toBe(n);
  });
});
