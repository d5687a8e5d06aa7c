/** Differences of two contents of a lesson: applied to the older they give the newer. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyChange, checkContent, type Draft } from '#lib/lesson/change.ts';
import { draftChangesBetween } from '#lib/lesson/changes-between.ts';
import { revisionDifference } from '#lib/lesson/revision-difference.ts';
import { wordDifference } from '#lib/lesson/word-difference.ts';
import { compareCues } from '#lib/transcript/cue.ts';
import { aContent } from '#tests/support/a-content.ts';

const runs = { numRuns: Number(process.env['DIFFERENCE_RUNS'] ?? 150) };

const aText = fc
  .array(fc.constantFrom('ring', 'ring ', 'wire\n', ' ', 'the ', 'eye,', 'pair\u00a0', 'weave ', '“lay” '), {
    maxLength: 30,
  })
  .map((words) => words.join(''));

describe('texts by word', () => {
  test('the parts make both texts again, whatever they are', () => {
    fc.assert(
      fc.property(fc.oneof(aText, fc.string()), fc.oneof(aText, fc.string()), (before, after) => {
        const parts = wordDifference(before, after);
        const text = (without: string) =>
          parts
            .filter(({ how }) => how !== without)
            .map((part) => part.text)
            .join('');
        expect(text('added')).toBe(before);
        expect(text('removed')).toBe(after);
      }),
      runs,
    );
  });

  test('a word that was changed is the only thing told', () => {
    expect(wordDifference('Close four small rings.', 'Close eight small rings.')).toEqual([
      { how: 'same', text: 'Close ' },
      { how: 'removed', text: 'four ' },
      { how: 'added', text: 'eight ' },
      { how: 'same', text: 'small rings.' },
    ]);
  });
});

const aDraft = fc
  .record({
    title: aText,
    chapters: fc.uniqueArray(fc.tuple(fc.integer({ min: 0, max: 9 }), fc.nat(90_000), aText), {
      selector: ([id]) => id,
      maxLength: 8,
    }),
    cues: fc.uniqueArray(fc.tuple(fc.integer({ min: 0, max: 19 }), fc.nat(90_000), aText), {
      selector: ([id]) => id,
      maxLength: 16,
    }),
    sizes: fc.uniqueArray(fc.tuple(fc.integer({ min: 0, max: 5 }), fc.integer({ min: 100, max: 300 })), {
      selector: ([id]) => id,
      maxLength: 4,
    }),
  })
  .map(({ title, chapters, cues, sizes }): Draft => {
    const content = checkContent(
      aContent({
        title: title.replaceAll('\n', ' ').trim() || 'A lesson',
        chapters: chapters.map(([id, startMs, text]) => ({
          id: `ch-${id}`,
          kind: 'setup' as const,
          title: text.replaceAll('\n', ' ').trim(),
          startMs,
        })),
        sizes: sizes.map(([id, bodyMm]) => ({ id: `size-${id}`, name: `size ${id}`, bodyMm })),
      }),
    );
    if (!content.ok) throw new Error(JSON.stringify(content.fault));
    return {
      content: content.value,
      cues: cues
        .map(([id, startMs, text]) => ({
          id: `cue-${id}`,
          startMs,
          endMs: startMs + 900,
          text,
          settings: '',
        }))
        .toSorted(compareCues),
    };
  });

describe('revisions', () => {
  test('the changes between two, made on the older, give the newer byte for byte', () => {
    fc.assert(
      fc.property(aDraft, aDraft, (older, newer) => {
        const made = draftChangesBetween(older, newer).reduce(applyChange, older);
        expect(JSON.stringify(made)).toBe(JSON.stringify(newer));
      }),
      runs,
    );
  });

  test('what is told of two is told exactly where they differ, with the right counts', () => {
    fc.assert(
      fc.property(aDraft, aDraft, (older, newer) => {
        const told = revisionDifference({ ...older, recording: null }, { ...newer, recording: null });
        const ids = (list: readonly { readonly id: string }[]) => new Set(list.map(({ id }) => id));
        for (const [part, before, now] of [
          ['chapters', older.content.chapters, newer.content.chapters],
          ['transcript', older.cues, newer.cues],
          ['sizes', older.content.sizes, newer.content.sizes],
        ] as const) {
          const count = (how: string) => told.find((one) => one.part === part && one.how === how)?.count ?? 0;
          const all: readonly { readonly id: string }[] = now;
          expect(count('added')).toBe(all.filter(({ id }) => !ids(before).has(id)).length);
          expect(count('removed')).toBe(
            (before as readonly { readonly id: string }[]).filter(({ id }) => !ids(now).has(id)).length,
          );
        }
        expect(told.some(({ part }) => part === 'title')).toBe(older.content.title !== newer.content.title);
      }),
      runs,
    );
  });
});
