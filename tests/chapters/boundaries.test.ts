import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { findBoundaries, type Unit } from '#lib/chapters/boundaries.ts';
import type { Habits } from '#lib/chapters/openers.ts';

/** Sentences of five seconds each. */
const spoken = (texts: readonly string[]): readonly Unit[] =>
  texts.map((text, index) => ({ text, startMs: index * 5_000, endMs: index * 5_000 + 4_500 }));

const soup = [
  'The soup needs onions.',
  'Fry the onions for the soup.',
  'Soup likes salt and onions.',
  'Stir the soup.',
];
const boat = [
  'The boat has a mast.',
  'Hoist the sail up the mast.',
  'A boat without a sail drifts.',
  'Tie the sail.',
];
const frost = [
  'Frost came early.',
  'The frost killed the roses.',
  'Cover roses against frost.',
  'Roses hate frost.',
];

describe('boundaries', () => {
  test('lie where the words change', () => {
    const found = findBoundaries(spoken([...soup, ...boat, ...frost]));
    expect(found.startsFor(3)).toEqual([0, 4, 8]);
    expect(found.startsFor(1)).toEqual([0]);
  });

  test('go to how a sentence opens where the words are the same', () => {
    const rings = Array.from(
      { length: 12 },
      (_, index) => `Close ring ${index % 3} and ring ${(index + 1) % 3} there.`,
    );
    rings[5] = 'Now we are going to start with ring 2 and ring 0.';
    expect(findBoundaries(spoken(rings)).startsFor(2)).toEqual([0, 5]);
  });

  test('keep what the teacher has set, and have at least as many pieces', () => {
    const found = findBoundaries(spoken([...soup, ...boat, ...frost]), { fixed: [2, 6] });
    expect(found.fewest).toBe(3);
    expect(found.startsFor(1)).toEqual([0, 2, 6]);
    expect(found.startsFor(5)).toEqual(expect.arrayContaining([0, 2, 6]));
  });

  test('follow the opening that a workshop uses, when it has used it often enough', () => {
    const rings = Array.from(
      { length: 16 },
      (_, index) => `Close ring ${index % 3} and ring ${(index + 1) % 3} there.`,
    );
    rings[6] = 'Hands up close ring 2 and ring 0 there.';
    rings[11] = 'Right then close ring 2 and ring 0 there.';
    const habits = (times: number): Habits => ({
      chapters: 8,
      openings: new Map([['hands up', times]]),
      usualMs: null,
    });
    expect(findBoundaries(spoken(rings), { habits: habits(7) }).startsFor(2)).toEqual([0, 6]);
    expect(findBoundaries(spoken(rings), { habits: habits(1) }).startsFor(2)).toEqual(
      findBoundaries(spoken(rings)).startsFor(2),
    );
  });

  test('a usual length of chapter draws the number towards it', () => {
    const units = spoken(Array.from({ length: 60 }, (_, index) => `Close ring ${index % 3} and turn it.`));
    const suggested = (usualMs: number | null) =>
      findBoundaries(units, { habits: { chapters: 9, openings: new Map(), usualMs } }).suggested;
    expect(suggested(15_000)).toBeGreaterThan(suggested(null));
    expect(suggested(300_000)).toBeLessThanOrEqual(suggested(15_000));
  });

  test('nothing said has no pieces; one sentence has one', () => {
    expect(findBoundaries([]).startsFor(3)).toEqual([]);
    expect(findBoundaries(spoken(['Hello.'])).startsFor(3)).toEqual([0]);
  });

  test('any text: as many pieces as were asked for, in order, from the first sentence on', () => {
    const word = fc.constantFrom('ring', 'open', 'the', 'now', '', '…', 'Drähte', '環', "don't");
    const text = fc.array(word, { maxLength: 6 }).map((words) => words.join(' '));
    fc.assert(
      fc.property(
        fc.array(text, { minLength: 1, maxLength: 40 }),
        fc.nat(50),
        fc.array(fc.nat(45)),
        (texts, ask, fixed) => {
          const found = findBoundaries(spoken(texts), { fixed });
          const starts = found.startsFor(ask);
          expect(starts).toHaveLength(Math.min(found.most, Math.max(found.fewest, ask)));
          expect(starts[0]).toBe(0);
          expect([...new Set(starts)].sort((a, b) => a - b)).toEqual(starts);
          for (const at of fixed) if (at < texts.length) expect([0, ...starts]).toContain(at);
          expect(found.suggested).toBeGreaterThanOrEqual(found.fewest);
        },
      ),
      { numRuns: 60 },
    );
  });
});
