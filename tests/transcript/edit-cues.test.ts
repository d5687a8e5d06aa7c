import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Cue, cue } from '#lib/transcript/cue.ts';
import { cueAfter, editCue, joinCues, retimeCue, shiftCues, splitCue } from '#lib/transcript/edit-cues.ts';
import { findText, replaceFound } from '#lib/transcript/find-text.ts';
import { LONGEST_TEXT, tidyCueText } from '#lib/transcript/tidy-text.ts';
import { msToOffset, offsetToMs, wordStart } from '#lib/transcript/word-times.ts';

let made = 0;
const newId = () => `new-${made++}`;

const aCue = (over: Partial<Cue> = {}): Cue => ({
  id: 'a',
  startMs: 1_000,
  endMs: 5_000,
  text: 'Open the ring and close it',
  settings: 'line:0',
  ...over,
});

const anyCue: fc.Arbitrary<Cue> = fc
  .record({
    startMs: fc.nat(1_000_000),
    length: fc.integer({ min: 1, max: 20_000 }),
    text: fc.string({ maxLength: 60 }).map(tidyCueText),
  })
  .map(({ startMs, length, text }) => aCue({ startMs, endMs: startMs + length, text }));

describe('split', () => {
  test('parts words and time at the character', () => {
    expect(splitCue(aCue({ text: 'Open it. Close it.' }), 9, 'b')).toEqual({
      put: [aCue({ text: 'Open it.', endMs: 3_000 }), aCue({ id: 'b', text: 'Close it.', startMs: 3_000 })],
      remove: [],
    });
  });

  test('takes the moment that was heard, kept inside the cue', () => {
    const at = (ms: number) => splitCue(aCue(), 8, 'b', ms)?.put.map((one) => [one.startMs, one.endMs]);
    expect(at(2_222)).toEqual([
      [1_000, 2_222],
      [2_222, 5_000],
    ]);
    expect(at(0)?.[0]).toEqual([1_000, 1_050]);
    expect(at(9_000)?.[1]).toEqual([4_950, 5_000]);
  });

  test.each([0, 26, 99])('makes no empty cue at character %i', (offset) => {
    expect(splitCue(aCue(), offset, 'b')).toBeNull();
  });

  test('then joined gives the cue back, but for spaces', () => {
    fc.assert(
      fc.property(anyCue, fc.nat(60), (whole, offset) => {
        const [first, second] = splitCue(whole, offset, 'b')?.put ?? [];
        if (!first || !second) return;
        const back = joinCues(first, second);
        const bare = (text: string) => text.replace(/\s+/g, '');
        expect(back?.remove).toEqual(['b']);
        expect({ ...back?.put[0], text: '' }).toEqual({ ...whole, text: '' });
        expect(bare(back?.put[0]?.text ?? '')).toBe(bare(whole.text));
      }),
    );
  });
});

test('whatever is done to a cue, it stays one', () => {
  const time = fc.integer({ min: -10_000, max: 2_000_000 });
  fc.assert(
    fc.property(anyCue, anyCue, time, time, fc.string(), (one, other, a, b, typed) => {
      const edits = [
        retimeCue(one, { startMs: a }),
        retimeCue(one, { endMs: b }),
        retimeCue(one, { startMs: a, endMs: b }),
        shiftCues([one, other], a),
        editCue(one, typed, newId),
        cueAfter(one, other, 'new'),
        splitCue(one, 3, 'b', a) ?? { put: [] },
      ];
      for (const put of edits.flatMap((edit) => edit.put)) expect(cue.safeParse(put).error).toBeUndefined();
    }),
  );
});

test('a text too long for one cue goes on in new ones, no word lost', () => {
  const word = 'eighteen ';
  const typed = word.repeat(Math.ceil((2.5 * LONGEST_TEXT) / word.length));
  const { put } = editCue(aCue(), typed, newId);
  expect(put[0]).toMatchObject({ id: 'a', startMs: 1_000 });
  expect(put).toHaveLength(3);
  expect(put.at(-1)?.endMs).toBe(5_000);
  expect(put.map((one) => one.text).join(' ')).toBe(typed.trim());
  for (const one of put) expect(cue.safeParse(one).error).toBeUndefined();
});

test('a shift moves all by the same time, and the first no further than the start', () => {
  const cues = [aCue(), aCue({ id: 'b', startMs: 6_000, endMs: 7_000 })];
  expect(shiftCues(cues, -4_000).put.map((one) => one.startMs)).toEqual([0, 5_000]);
  expect(shiftCues(cues, 250).put.map((one) => one.endMs)).toEqual([5_250, 7_250]);
  expect(shiftCues([], 250)).toEqual({ put: [], remove: [] });
});

test('an edge stops 50 ms before the other one', () => {
  expect(retimeCue(aCue(), { startMs: 8_000 }).put[0]).toMatchObject({ startMs: 4_950, endMs: 5_000 });
  expect(retimeCue(aCue(), { endMs: 0 }).put[0]).toMatchObject({ startMs: 1_000, endMs: 1_050 });
});

test('a new cue fills the gap, two seconds at most', () => {
  const next = aCue({ id: 'b', startMs: 5_600, endMs: 6_000 });
  expect(cueAfter(aCue(), next, 'n').put[0]).toMatchObject({ startMs: 5_000, endMs: 5_600, text: '' });
  expect(cueAfter(aCue(), null, 'n').put[0]).toMatchObject({ startMs: 5_000, endMs: 7_000 });
  expect(cueAfter(null, null, 'n').put[0]).toMatchObject({ startMs: 0, endMs: 2_000 });
});

describe('word times', () => {
  test('begin and end with the cue and never go back', () => {
    fc.assert(
      fc.property(anyCue, (one) => {
        const times = Array.from({ length: one.text.length + 1 }, (_, at) => offsetToMs(one, at));
        expect(times[0]).toBe(one.startMs);
        if (one.text.length > 0) expect(times.at(-1)).toBe(one.endMs);
        expect(times).toEqual([...times].sort((a, b) => a - b));
      }),
    );
  });

  test('a moment finds its character again', () => {
    expect(msToOffset(aCue(), offsetToMs(aCue(), 9))).toBe(9);
  });

  test.each([
    [0, 0],
    [2, 0],
    [4, 5],
    [6, 5],
    [99, 24],
  ])('the word at %i starts at %i', (offset, start) => {
    expect(wordStart(aCue().text, offset)).toBe(start);
  });
});

describe('find and replace', () => {
  const cues = [aCue({ text: 'eighteen gauge, Eighteen\nGauge' }), aCue({ id: 'b', text: '4 in 1 (4+1)?' })];

  test('finds small and large letters, across a line break, in order', () => {
    expect(findText(cues, 'eighteen gauge')).toEqual([
      { cueId: 'a', start: 0, end: 14 },
      { cueId: 'a', start: 16, end: 30 },
    ]);
    expect(findText(cues, 'eighteen gauge', true)).toHaveLength(1);
  });

  test.each(['(4+1)?', '4 in 1', '1 ('])('takes %s as it is typed', (words) => {
    expect(findText(cues, words)).toHaveLength(1);
  });

  test.each(['', '  ', 'nowhere'])('finds %j nowhere', (words) => {
    expect(findText(cues, words)).toEqual([]);
  });

  test('replaces every place, of several in one cue too, and takes what is put in literally', () => {
    const { put } = replaceFound(cues, findText(cues, 'eighteen gauge'), '18 $& SWG', newId);
    expect(put.map((one) => one.text)).toEqual(['18 $& SWG, 18 $& SWG']);
  });
});
