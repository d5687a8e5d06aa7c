import { describe, expect, it } from 'vitest';
import { findNumberTraps } from '#lib/glossary/number-traps.ts';

const traps = (text: string, ...known: readonly number[]) => {
  const { suggestions, toHear } = findNumberTraps([{ id: 'a', text }], new Set(known));
  return [
    ...suggestions.map(({ heard, instead, reason }) => `${heard} > ${instead} (${reason})`),
    ...toHear.map(({ heard, otherwise }) => `${heard} or ${otherwise}`),
  ];
};

describe('numbers that are easily misheard', () => {
  it.each([
    ['in sixty gauge wire', 'sixty > sixteen (no such gauge)'],
    ['80 gauge', '80 > 18 (no such gauge)'],
    ['the European 41 weave', '41 > 4-in-1 (links run together)'],
    ['a forty one pattern', 'forty one > 4-in-1 (links run together)'],
    ['a two to chain', 'two to > 2-2 (links run together)'],
    ['the inner diameter is forty-two millimetres', 'forty-two > four point two (point lost)'],
    ['thirty rings', 'thirty rings or thirteen'],
    ['thirteen gauge', 'thirteen gauge or thirty'],
  ])('%s', (text, trap) => {
    expect(traps(text)).toEqual([trap]);
  });

  it('are compared with what the kit says', () => {
    expect(traps('you need fifty rings', 15)).toEqual(['fifty > fifteen (kit says otherwise)']);
    expect(traps('you need fifty rings', 50)).toEqual([]);
  });

  it.each([
    'eighteen gauge wire',
    'page forty one of the book',
    'forty-four blue rings',
    'a chain of four in one',
    'the wrist is a hundred and sixty millimetres',
    'one point two millimetres of wire',
  ])('leaves alone: %s', (text) => {
    expect(traps(text)).toEqual([]);
  });
});
