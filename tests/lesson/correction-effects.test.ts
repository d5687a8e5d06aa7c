/** What a correction proposes to put right in a lesson, taken and taken back. Every word of the lesson is invented. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyChange, type Change, checkContent, type Draft } from '#lib/lesson/change.ts';
import type { Correction } from '#lib/lesson/content.ts';
import {
  type ProposedEffect,
  proposeEffects,
  takeBackEffect,
  takeEffect,
  takenEffects,
} from '#lib/lesson/correction-effects.ts';
import { correctionsNewestFirst, emptyCorrection } from '#lib/lesson/corrections.ts';
import { replaceValue, valueRules } from '#lib/lesson/replace-value.ts';
import { freezeRevision } from '#lib/lesson/revision.ts';
import { aContent } from '#tests/support/a-content.ts';

const cue = (id: string, startMs: number, text: string) => ({
  ...{ id, startMs, text, settings: '' },
  endMs: startMs + 4_000,
});
const draft: Draft = {
  content: aContent({
    summary: 'Two copper rings at a time, closed beforehand.',
    chapters: [
      { id: 'ch-1', kind: 'opening', title: 'Welcome', startMs: 0 },
      { id: 'ch-2', kind: 'repeat unit', title: 'Two copper rings', startMs: 30_000 },
    ],
    cautions: [{ id: 'ca-1', of: null, text: 'Keep two copper rings away from small children.' }],
    links: [{ id: 'li-1', label: 'Wire', address: 'https://wire.example/copper' }],
  }),
  cues: [
    cue('c1', 0, 'Welcome to the bench.'),
    cue('c2', 31_000, 'Pick up 2 copper rings, both closed.'),
    cue('c3', 50_000, 'And two aluminium rings.'),
  ],
};
const fail = (): never => {
  throw new Error('there is one');
};
const correction = (over: Partial<Correction>): Correction => ({ ...emptyCorrection('co-1'), ...over });
const places = (effects: readonly ProposedEffect[]) =>
  effects.map(({ kind, of, field, after }) => [kind, of, field, after]);
const made = (on: Draft, changes: readonly Change[]): Draft => changes.reduce(applyChange, on);

describe('a value in a text', () => {
  test.each([
    ['two small rings', 'four small rings', 'Take 2 small rings.', 'Take four small rings.'],
    ['“two small rings.”', '“four small rings.”', 'Two small rings first.', 'Four small rings first.'],
    ['I close four rings', 'I close eight rings', 'Close four rings.', 'Close eight rings.'],
    ['eighteen gauge', '18 SWG', 'It is eighteen gauge, or 18 SWG.', 'It is 18 SWG, or 18 SWG.'],
    ['18', '18 SWG', 'Wire of 18 SWG; 18 it is.', 'Wire of 18 SWG; 18 SWG it is.'],
    ['a square chain', 'a round chain', 'A square chain is woven.', 'A round chain is woven.'],
    ['one small ring', 'two small rings', 'Open one small ring.', 'Open two small rings.'],
    // Nothing but a hollow word stands beside the number: it could be any other.
    ['the four', 'the eight', 'Turn the four corners.', 'Turn the eight corners.'],
    ['four', 'four', 'Take four.', 'Take four.'],
    ['', 'four', 'Take four.', 'Take four.'],
    ['eleven sixty-fourths', '3/16 in', 'Rings of 11/64 inside.', 'Rings of 3/16 in inside.'],
  ])('%s, %s: %s', (wrong, right, text, after) => {
    expect(replaceValue(text, valueRules(wrong, right))).toBe(after);
  });

  test('texts that hold the right value alone stay byte for byte, whatever the texts are', () => {
    const words = fc
      .array(fc.constantFrom('two', '2', 'four', 'small', 'rings', 'ring', 'the', ',', '18', 'SWG', '“x”'), {
        maxLength: 9,
      })
      .map((all) => all.join(' '));
    fc.assert(
      fc.property(words, words, fc.oneof(words, fc.string()), (wrong, right, text) => {
        const rules = valueRules(wrong, right);
        const once = replaceValue(text, rules);
        if (once === text) return;
        expect(rules.length).toBeGreaterThan(0);
        expect(rules.some((rule) => once.toLowerCase().includes(rule.right.toLowerCase()))).toBe(true);
      }),
      { numRuns: 300 },
    );
  });
});

describe('what a correction proposes', () => {
  const counted = correction({
    ...{ kind: 'kit wrong', wrong: 'two copper rings', right: 'three copper rings' },
    ...{ startMs: 30_000, endMs: 36_000 },
  });

  test('every place that holds the value: cue, chapter, count, caution, summary; its own moment first', () => {
    const proposed = proposeEffects(draft, counted);
    expect(places(proposed)).toEqual([
      ['cue text', 'c2', 'text', 'Pick up three copper rings, both closed.'],
      ['chapter', 'ch-2', 'title', 'Three copper rings'],
      ['count', 'repeat-1', 'carries/0/count', '3'],
      ['text', 'summary', 'value', 'Three copper rings at a time, closed beforehand.'],
      ['caution', 'ca-1', 'text', 'Keep three copper rings away from small children.'],
    ]);
    expect(proposed.map(({ isNear }) => isNear)).toEqual([true, true, true, false, false]);
  });

  test('a step, a ring kind, a material and a dead link', () => {
    const step = correction({ wrong: 'Do repeat 2', right: 'Do repeat 2 twice' });
    expect(places(proposeEffects(draft, step))).toEqual([
      ['step', 'repeat-2', 'sentence', 'Do repeat 2 twice with the left hand.'],
    ]);
    // 1.2192 mm: 18 SWG (BS 3737 table); 1.024 mm: 18 AWG (ASTM B258).
    const wired = {
      ...draft,
      content: {
        ...draft.content,
        ringKinds: draft.content.ringKinds.map((kind) => ({
          ...kind,
          wire: { stated: '18 AWG', mm: 1.0237 },
        })),
      },
    };
    const wire = correction({ wrong: 'The wire is 18 AWG.', right: 'The wire is 18 SWG.' });
    expect(places(proposeEffects(wired, wire))).toEqual([
      ['ring kind', 'copper', 'wire', '18 SWG'],
      ['ring kind', 'aluminium', 'wire', '18 SWG'],
      ['ring kind', 'small', 'wire', '18 SWG'],
    ]);
    const clasp = correction({ wrong: 'one lobster clasp', right: 'two lobster clasps' });
    expect(places(proposeEffects(draft, clasp))).toEqual([['count', 'clasp', 'quantityMilli', '2']]);
    const link = correction({
      kind: 'link dead',
      wrong: 'https://wire.example/copper',
      right: 'https://w.example/',
    });
    expect(places(proposeEffects(draft, link))).toEqual([['link', 'li-1', 'address', 'https://w.example/']]);
  });

  test('what is right for safety is offered as a caution of its own', () => {
    const safety = correction({ kind: 'safety', wrong: 'no goggles', right: 'Wear goggles while cutting.' });
    const [effect, ...others] = proposeEffects(draft, safety);
    expect(others).toEqual([]);
    const now = made(draft, takeEffect(draft, safety, effect ?? fail()) ?? []);
    expect(now.content.cautions.at(-1)).toMatchObject({ of: null, text: 'Wear goggles while cutting.' });
    const [stated] = now.content.corrections;
    const back = made(now, takeBackEffect(now, stated ?? fail(), effect ?? fail()));
    expect(back.content.cautions).toEqual(draft.content.cautions);
  });

  test('a bare number is looked for at its own place alone', () => {
    const bare = correction({ wrong: 'two', right: 'three', startMs: 50_000, endMs: 52_000 });
    const near = proposeEffects(draft, { ...bare, wrong: 'the two', right: 'the three' });
    expect(places(near)).toEqual([['cue text', 'c3', 'text', 'And three aluminium rings.']]);
  });

  test('rings of another colour are not counted', () => {
    const content = aContent({
      repeat: aContent().repeat.map((item, k) =>
        k === 1 ? { ...item, carries: [{ ringKind: 'aluminium', count: 2 }] } : item,
      ),
    });
    expect(places(proposeEffects({ content, cues: [] }, counted))).toEqual([
      ['count', 'repeat-1', 'carries/0/count', '3'],
    ]);
  });

  test('what it is about counts as its own place', () => {
    const about = proposeEffects(draft, { ...counted, startMs: null, endMs: null, of: 'repeat-1' });
    expect(about[0]).toMatchObject({ kind: 'count', of: 'repeat-1', isNear: true });
  });
});

describe('taking effects', () => {
  const counted = correction({ wrong: 'two copper rings', right: 'three copper rings' });
  const stated = made(draft, [{ kind: 'put', list: 'corrections', item: counted }]);
  const current = (on: Draft): Correction => {
    const [first] = on.content.corrections;
    if (!first) throw new Error('there is a correction');
    return first;
  };

  test('all of them one after the other put the lesson right, and leave nothing to propose', () => {
    let now = stated;
    for (const effect of proposeEffects(now, current(now)))
      now = made(now, takeEffect(now, current(now), effect) ?? []);
    expect(proposeEffects(now, current(now))).toEqual([]);
    expect(now.content.repeat[0]?.carries[0]?.count).toBe(3);
    expect(now.cues[1]?.text).toBe('Pick up three copper rings, both closed.');
    expect(current(now)).toMatchObject({ kitsChange: true });
    expect(current(now).effects).toHaveLength(5);
    expect(checkContent(now.content).ok).toBe(true);
    expect(takenEffects(now, current(now)).map(({ name }) => name)).toContain('Three copper rings');

    for (const effect of current(now).effects.toReversed())
      now = made(now, takeBackEffect(now, current(now), effect));
    expect(JSON.stringify(now)).toBe(
      JSON.stringify(
        made(stated, [{ kind: 'put', list: 'corrections', item: { ...counted, kitsChange: true } }]),
      ),
    );
  });

  test('a place that was changed since is neither overwritten nor taken back', () => {
    const [effect] = proposeEffects(stated, current(stated));
    if (!effect) throw new Error('there is an effect');
    const elsewhere = made(stated, [{ kind: 'set', field: 'summary', value: 'Other words.' }]);
    const summary = proposeEffects(stated, current(stated)).find(({ of }) => of === 'summary');
    if (!summary) throw new Error('there is one of the summary');
    expect(takeEffect(elsewhere, current(elsewhere), summary)).toBeNull();
    const taken = made(stated, takeEffect(stated, current(stated), summary) ?? []);
    const changed = made(taken, [{ kind: 'set', field: 'summary', value: 'Other words.' }]);
    const back = made(changed, takeBackEffect(changed, current(changed), summary));
    expect(back.content.summary).toBe('Other words.');
    expect(current(back).effects).toEqual([]);
  });

  test('what says again what it said before, or is gone, is told as put right neither on the screen nor in a revision', () => {
    let now = stated;
    for (const effect of proposeEffects(now, current(now)))
      now = made(now, takeEffect(now, current(now), effect) ?? []);
    const earlier: Draft = {
      content: { ...draft.content, cautions: [], corrections: now.content.corrections },
      cues: now.cues.map((one) => (one.id === 'c2' ? { ...one, text: 'Pick up three copper rings.' } : one)),
    };
    // The cue was mended further; the caution is gone; all else is as it was before.
    expect(takenEffects(earlier, current(earlier)).map(({ of }) => of)).toEqual(['c2']);
    expect(proposeEffects(earlier, current(earlier)).map(({ of }) => of)).toContain('summary');
    const frozen = freezeRevision({
      ...{ number: 2, publishedAt: new Date(0), workshop: { name: 'Kettle Row', slug: 'kettle-row' } },
      ...{
        content: earlier.content,
        cues: earlier.cues,
        recording: null,
        stillKeys: new Map(),
        published: [],
        terms: [],
      },
    });
    expect(frozen.content.corrections[0]?.effects.map(({ of }) => of)).toEqual(['c2']);
    const again = takeEffect(
      earlier,
      current(earlier),
      proposeEffects(earlier, current(earlier))[0] ?? fail(),
    );
    expect(current(made(earlier, again ?? [])).effects).toHaveLength(5);
  });

  test('a document from before effects were noted is read as one without any', () => {
    const { effects: _, of: __, ...old } = counted;
    const read = checkContent({ ...draft.content, corrections: [old] });
    expect(read.ok && correctionsNewestFirst(read.value.corrections)).toEqual([counted]);
  });
});
