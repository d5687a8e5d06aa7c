import { describe, expect, test } from 'vitest';
import { freezeRevision, revision, type ToFreeze } from '#lib/lesson/revision.ts';
import { revisionDifference } from '#lib/lesson/revision-difference.ts';
import { aContent, aTranscript } from '#tests/support/a-content.ts';

const CORRECTION = {
  id: 'co-1',
  kind: 'kit wrong',
  startMs: null,
  endMs: null,
  wrong: 'two small rings',
  right: 'four small rings',
  affects: 'holders of a kit',
  kitsChange: true,
  of: null,
  effects: [],
  revision: null,
} as const;
const toFreeze = (over: Partial<ToFreeze> = {}): ToFreeze => ({
  number: 1,
  publishedAt: new Date('2026-03-01T10:00:00Z'),
  workshop: { name: 'Kettle Row Rings', slug: 'kettle-row' },
  content: aContent(),
  cues: aTranscript,
  recording: null,
  stillKeys: new Map(),
  terms: [],
  published: [],
  ...over,
});

describe('freezing a revision', () => {
  test('gives a document that its schema takes back unchanged, whatever order its keys come in', () => {
    const frozen = freezeRevision(toFreeze());
    const mixed: unknown = JSON.parse(JSON.stringify(frozen), (_, value: unknown) =>
      value !== null && typeof value === 'object' && !Array.isArray(value)
        ? Object.fromEntries(Object.entries(value).reverse())
        : value,
    );
    expect(revision.parse(mixed)).toEqual(frozen);
    expect(JSON.stringify(freezeRevision(toFreeze()))).toBe(JSON.stringify(freezeRevision(toFreeze())));
    expect(revisionDifference(revision.parse(mixed), frozen)).toEqual([]);
  });

  // The worked example A (TRADE arithmetic by hand): n = (170 - 26.6) / 8.6 = 16.67, up: 17; 4n+2 copper, 2n aluminium.
  test('freezes the kit of every size', () => {
    const { kits } = freezeRevision(toFreeze());
    expect(kits.map(({ size, repeats, finishedMm }) => [size, repeats, finishedMm])).toEqual([
      ['s', 17, 172.8],
      ['m', 19, 190],
      ['l', 21, 207.2],
    ]);
    expect(
      kits[0]?.rings.map(({ opened, closed, issued, packs }) => [opened, closed, issued, packs]),
    ).toEqual([
      [36, 34, 77, 1],
      [34, 0, 38, 1],
      [2, 0, 3, 1],
    ]);
    expect(kits[0]?.packsMinor).toBe(1270);
  });

  test('numbers new corrections and keeps published ones word for word', () => {
    const published = { ...CORRECTION, revision: 2 };
    const tampered = { ...published, wrong: 'something else', revision: null };
    const fresh = { ...CORRECTION, id: 'co-2' };
    const frozen = freezeRevision(
      toFreeze({
        number: 3,
        published: [published],
        content: aContent({ corrections: [fresh, tampered], dismissed: ['licence-missing'] }),
      }),
    );
    expect(frozen.content.corrections).toEqual([published, { ...fresh, revision: 3 }]);
    expect(frozen.content.dismissed).toEqual([]);
  });

  test('takes the moment of a published correction from the draft, which moves with the recording', () => {
    const published = { ...CORRECTION, startMs: 40_000, endMs: 42_000, revision: 1 };
    const moved = { ...published, startMs: 33_000, endMs: 35_000 };
    const frozen = freezeRevision(
      toFreeze({ number: 2, published: [published], content: { ...aContent(), corrections: [moved] } }),
    );
    expect(frozen.content.corrections).toEqual([moved]);
  });

  test('keeps published corrections that the draft lost', () => {
    const published = { ...CORRECTION, revision: 1 };
    const frozen = freezeRevision(toFreeze({ number: 2, published: [published] }));
    expect(frozen.content.corrections).toEqual([published]);
  });

  test('gives each step its picture with words for who cannot see it', () => {
    const { stills } = freezeRevision(
      toFreeze({ stillKeys: new Map([[30_000, 'recordings/r/still-30000.jpg']]) }),
    );
    expect(stills).toHaveLength(1);
    expect(stills[0]?.text).toBe(
      'The repeat unit, step 1: open one copper ring; pick up two copper rings, closed beforehand; go through two rings from the front.',
    );
  });
});

describe('what changed between revisions', () => {
  test('matches things by their id and names them', () => {
    const beside = { recording: null, kits: [], terms: [], workshop: { name: 'Kettle Row Rings' } };
    const older = { ...beside, content: aContent(), cues: aTranscript };
    const [first, second, third] = aContent().chapters;
    if (!first || !second || !third) throw new Error('the fixture has three chapters');
    const newer = {
      ...beside,
      content: aContent({ chapters: [third, { ...second, title: 'Six rings' }], summary: 'Other words.' }),
      cues: aTranscript.slice(1),
    };
    expect(revisionDifference(older, newer)).toEqual([
      { part: 'summary', how: 'changed', names: [], count: 1 },
      { part: 'chapters', how: 'changed', names: ['Six rings'], count: 1 },
      { part: 'chapters', how: 'removed', names: ['Welcome'], count: 1 },
      { part: 'chapters', how: 'reordered', names: ['The end', 'Six rings'], count: 2 },
      { part: 'transcript', how: 'removed', names: [], count: 1 },
    ]);
  });
});
