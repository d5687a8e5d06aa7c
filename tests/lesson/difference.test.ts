/** Differences of two contents of a lesson: applied to the older they give the newer. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { revisionChangeSentence } from '#app/words/revision-change.ts';
import { applyChange, checkContent, type Draft } from '#lib/lesson/change.ts';
import { draftChangesBetween } from '#lib/lesson/changes-between.ts';
import {
  type Content,
  type ListField,
  listField,
  type ScalarField,
  scalarField,
} from '#lib/lesson/content.ts';
import { emptyCorrection } from '#lib/lesson/corrections.ts';
import { countWord } from '#lib/lesson/count-word.ts';
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

/** Twice the same lesson with every field of it said otherwise, and a pick of both. */
const one = checked(
  aContent({
    corrections: ['a', 'b', 'c'].map((id) => ({ ...emptyCorrection(id), wrong: `wrong ${id}` })),
    links: ['a', 'b'].map((id) => ({ id, label: `link ${id}`, address: `https://${id}.example/` })),
    start: aContent()
      .finishing.slice(0, 2)
      .map((item) => ({ ...item, id: `start-${item.id}` })),
    steps: ['step-a', 'step-b'].map((id) => ({ id, sentence: `Do ${id}.`, atMs: 9_000, pictureText: '' })),
    runs: ['run-a', 'run-b'].map((id) => ({ id, unit: '', repeats: 2, swaps: [] })),
    cautions: ['ca-1', 'ca-2'].map((id) => ({ id, of: null, text: `Mind ${id}.` })),
  }),
);
const SCALARS_OTHERWISE: Partial<Content> = {
  ...{ title: 'Other title', summary: 'Other.', weave: 'box', otherNames: 'inca', licence: 'None.' },
  ...{ difficulty: 'sure hands', leaning: 'left', language: 'en-GB', prepareMinutes: 3, makeMinutes: null },
  ...{ currency: 'CHF', sample: null, kitRules: { ...one.kitRules, sparePercent: 5 } },
  ...{ endsAfter: 'repeat-2', ends: { first: [], last: [] }, dismissed: ['licence-missing'] },
};
/** What of an item is said otherwise, in each list. */
const OTHERWISE: Readonly<Record<ListField, Readonly<Record<string, unknown>>>> = {
  chapters: { title: 'Otherwise' },
  ringKinds: { colour: 'deep blue' },
  start: { sentence: 'Otherwise.' },
  repeat: { carries: [{ ringKind: 'small', count: 9 }] },
  finishing: { atMs: 77_000 },
  runs: { repeats: null },
  steps: { pictureText: 'Otherwise.' },
  sizes: { bodyMm: 201 },
  materials: { quantityMilli: 2_500 },
  cautions: { text: 'Otherwise.' },
  corrections: { affects: 'nobody' },
  links: { label: 'Otherwise' },
};

function checked(candidate: unknown): Content {
  const read = checkContent(candidate);
  if (!read.ok) throw new Error(JSON.stringify(read.fault));
  return read.value;
}

/** Some of a list's items in any order, each as it is or said otherwise. */
const aListOf = (list: ListField) =>
  fc
    .shuffledSubarray([...one[list]] as { readonly id: string }[])
    .chain((items) =>
      fc
        .array(fc.boolean(), { minLength: items.length, maxLength: items.length })
        .map((otherwise) => items.map((item, k) => (otherwise[k] ? { ...item, ...OTHERWISE[list] } : item))),
    );

const aDraft: fc.Arbitrary<Draft> = fc
  .record({
    scalars: fc.subarray(Object.keys(SCALARS_OTHERWISE) as ScalarField[]),
    lists: fc.record(Object.fromEntries(listField.options.map((list) => [list, aListOf(list)]))),
    title: aText,
    cues: fc.uniqueArray(fc.tuple(fc.integer({ min: 0, max: 19 }), fc.nat(90_000), aText), {
      selector: ([id]) => id,
      maxLength: 16,
    }),
  })
  .map(({ scalars, lists, title, cues }) => ({
    content: checked({
      ...one,
      ...Object.fromEntries(scalars.map((field) => [field, SCALARS_OTHERWISE[field]])),
      ...(scalars.includes('title') ? { title: title.replaceAll('\n', ' ').trim() || 'A lesson' } : {}),
      ...lists,
    }),
    cues: cues
      .map(([id, startMs, text]) => ({
        ...{ id: `cue-${id}`, startMs, text, settings: '' },
        endMs: startMs + 900,
      }))
      .toSorted(compareCues),
  }));

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

  test('every part of a lesson is tried', () => {
    expect(new Set(Object.keys(SCALARS_OTHERWISE))).toEqual(new Set(scalarField.options));
    for (const list of listField.options) expect(one[list].length, list).toBeGreaterThan(0);
  });

  test('what is told of two is told exactly where they differ, with the right counts', () => {
    fc.assert(
      fc.property(aDraft, aDraft, (older, newer) => {
        const told = revisionDifference({ ...BESIDE, ...older }, { ...BESIDE, ...newer });
        const expected = expectedBetween(older, newer);
        expect(new Map(told.map(({ part, how, count }) => [`${part} ${how}`, count]))).toEqual(expected);
        // The public sentence says that number, or names the one thing.
        for (const change of told) {
          const words = revisionChangeSentence(change);
          expect(words).toContain(change.how === 'reordered' ? 'The order of the ' : change.how);
          if (!(change.part in FIELDS) && change.how !== 'reordered')
            expect(words.toLowerCase().startsWith(`${countWord(change.count)} `)).toBe(true);
          const { content } = change.how === 'removed' ? older : newer;
          if (change.part === 'sizes')
            expect(content.sizes.map(({ name }) => name)).toEqual(expect.arrayContaining([...change.names]));
        }
      }),
      runs,
    );
  });
});

/** What else a revision holds: tests/lesson/told-fields.test.ts tries it. */
const BESIDE = { recording: null, kits: [], terms: [], workshop: { name: 'Kettle Row Rings' } };

/** Parts that are told as one thing, and what of a lesson they are about. */
const FIELDS: Readonly<Record<string, readonly (ScalarField | 'runs')[]>> = {
  title: ['title'],
  summary: ['summary'],
  weave: ['weave', 'otherNames'],
  difficulty: ['difficulty'],
  leaning: ['leaning'],
  language: ['language'],
  times: ['prepareMinutes', 'makeMinutes'],
  sample: ['sample'],
  'kit rules': ['kitRules'],
  currency: ['currency'],
  licence: ['licence'],
  ends: ['endsAfter', 'ends'],
  runs: ['runs'],
};

/** How many things of each part are added, changed and removed, by its own count. */
function expectedBetween(older: Draft, newer: Draft): ReadonlyMap<string, number> {
  const expected = new Map<string, number>();
  const lists = listField.options.filter((each) => each !== 'runs');
  for (const list of [...lists, 'transcript'] as const) {
    const of = ({ content, cues }: Draft) =>
      new Map((list === 'transcript' ? cues : content[list]).map((item) => [item.id, JSON.stringify(item)]));
    const [before, now] = [of(older), of(newer)];
    const count = (how: string, ids: readonly string[]) =>
      ids.length > 0 && expected.set(`${list} ${how}`, ids.length);
    count(
      'added',
      [...now.keys()].filter((id) => !before.has(id)),
    );
    count(
      'changed',
      [...now.keys()].filter((id) => before.has(id) && before.get(id) !== now.get(id)),
    );
    count(
      'removed',
      [...before.keys()].filter((id) => !now.has(id)),
    );
    const stayed = [...before.keys()].filter((id) => now.has(id));
    count(
      'reordered',
      [...now.keys()].filter((id) => before.has(id)).filter((id, place) => stayed[place] !== id),
    );
  }
  for (const [part, fields] of Object.entries(FIELDS)) {
    const of = ({ content }: Draft) => JSON.stringify(fields.map((field) => content[field]));
    if (of(older) !== of(newer)) expected.set(`${part} changed`, 1);
  }
  return expected;
}
