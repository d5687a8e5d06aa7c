/** A move to a re-edited recording taken back; words of a new take matched. Every word is invented. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyChange, type Change, checkContent, type Draft } from '#lib/lesson/change.ts';
import { carryOver } from '#lib/retiming/carry-over.ts';
import { type EditList, listPieces } from '#lib/retiming/edit-list.ts';
import { matchWords } from '#lib/retiming/match-words.ts';
import { placeTranscript } from '#lib/retiming/place-transcript.ts';
import { retakesIn } from '#lib/retiming/retakes.ts';
import { move, moveOf, takeBack } from '#lib/retiming/take-back.ts';
import { toNew } from '#lib/retiming/time-map.ts';
import { type Cue, compareCues } from '#lib/transcript/cue.ts';
import { aContent } from '#tests/support/a-content.ts';
import { aDraft, anEdit, runs as some } from './an-edit.ts';

// Drafts of forty cues shrink for minutes; what failed is told at once instead.
const runs = { ...some, endOnFailure: true };

const madeOn = (draft: Draft, changes: readonly Change[]): Draft => changes.reduce(applyChange, draft);
const inOrder = (draft: Draft): Draft => ({ ...draft, cues: draft.cues.toSorted(compareCues) });
const heard = (id: string, startMs: number, endMs: number, text: string): Cue => ({
  ...{ id, startMs, endMs, text },
  settings: '',
});
/** Words for every part of the new recording, under ids of their own. */
const heardAll = ({ newMs }: EditList): readonly Cue[] =>
  Array.from({ length: Math.ceil(newMs / 3_000) }, (_, k) =>
    heard(`heard-${k}`, k * 3_000, k * 3_000 + 2_900, `Words ${k}`),
  );

describe('taking a move back', () => {
  test('gives the draft byte for byte, whatever was edited and decided', () => {
    fc.assert(
      fc.property(aDraft, anEdit, fc.boolean(), fc.boolean(), (any, list, stay, transcript) => {
        const draft = inOrder(any);
        const wordsStay = new Set(stay ? retakesIn(list).map(({ cut }) => cut) : []);
        const { changes } = carryOver(draft, list, { wordsStay, heard: transcript ? heardAll(list) : [] });
        // As it comes back from where it is kept.
        const kept = move.parse(JSON.parse(JSON.stringify(moveOf(draft, list, changes))));
        const moved = madeOn(draft, changes);
        const { changes: back, cut } = takeBack(moved, kept);
        expect([...cut.values()].flat().filter(({ of }) => of === 'cue' || of === 'chapter')).toEqual([]);
        const now = madeOn(moved, back);
        expect(now).toEqual(draft);
        expect(JSON.stringify(now)).toBe(JSON.stringify(draft));
      }),
      runs,
    );
  });

  test('what was written since goes back with its sound, and everything else is as it was', () => {
    fc.assert(
      fc.property(aDraft, anEdit, fc.nat(), fc.nat(119_000), (any, list, which, oldMs) => {
        const draft = inOrder(any);
        const { changes } = carryOver(draft, list, { wordsStay: new Set() });
        const moved = madeOn(draft, changes);
        const reworded = moved.cues[which % Math.max(1, moved.cues.length)];
        const placed = toNew(list)(oldMs);
        fc.pre(placed.is === 'there' && placed.ms + 900 < placed.edit.new.endMs);
        const fresh = heard('fresh', placed.ms, placed.ms + 900, 'Written since');
        const put = [fresh, ...(reworded ? [{ ...reworded, text: 'Reworded' }] : [])];
        const since = madeOn(moved, [{ kind: 'cues', put, remove: [] }]);
        const now = madeOn(since, takeBack(since, moveOf(draft, list, changes)).changes);
        expect(checkContent(now.content).ok).toBe(true);
        const others = now.cues.filter(({ id }) => id !== 'fresh' && id !== reworded?.id);
        expect(others).toEqual(draft.cues.filter(({ id }) => id !== reworded?.id));
        expect(now.content).toEqual(draft.content);
        const start = now.cues.find(({ id }) => id === 'fresh')?.startMs ?? -1;
        // At another speed two moments may share a millisecond.
        expect(Math.abs(start - oldMs)).toBeLessThanOrEqual(1);
      }),
      runs,
    );
  });
});

describe('words of a new take', () => {
  const list: EditList = {
    ...listPieces(
      [
        { old: { startMs: 0, endMs: 20_000 }, new: { startMs: 0, endMs: 20_000 } },
        { old: { startMs: 32_000, endMs: 60_000 }, new: { startMs: 30_000, endMs: 58_000 } },
      ],
      60_000,
      64_000,
    ),
    speed: 1,
    pitchMoved: false,
  };
  const draft: Draft = {
    content: aContent({
      chapters: [{ id: 'ch-1', kind: 'setup', title: 'Wire', startMs: 24_000 }],
      start: [],
      repeat: [],
      finishing: [],
      corrections: [],
    }),
    cues: [
      heard('a', 18_000, 20_000, 'Here is the wire.'),
      heard('b', 20_000, 24_000, 'So, um, what I have here, let me see.'),
      heard('c', 24_000, 28_000, 'This wire is eighteen gauge.'),
      heard('d', 28_000, 32_000, 'Close two small rings.'),
      heard('e', 33_000, 36_000, 'And on we go.'),
    ],
  };
  const transcript = [
    heard('n1', 18_000, 20_000, 'Here is a wire, misheard.'),
    heard('n2', 20_500, 23_000, 'This wire is 18 SWG.'),
    heard('n3', 23_500, 29_000, 'Close four small rings, all of them.'),
    heard('n4', 31_000, 34_000, 'And on we go.'),
    heard('n5', 59_000, 63_000, 'Thank you for watching.'),
  ];

  test('keep the ids of what they say again, take its new times and words, and fill what is new', () => {
    const wordsStay = new Set(retakesIn(list).map(({ cut }) => cut));
    expect(wordsStay.size).toBe(1);
    const { changes, cut, needWords, fromHeard } = carryOver(draft, list, { wordsStay, heard: transcript });
    const now = madeOn(draft, changes);
    expect(now.cues.map(({ id, startMs, text }) => [id, startMs, text])).toEqual([
      ['a', 18_000, 'Here is the wire.'],
      ['c', 20_500, 'This wire is 18 SWG.'],
      ['d', 23_500, 'Close four small rings, all of them.'],
      ['e', 31_000, 'And on we go.'],
      ['n5', 59_000, 'Thank you for watching.'],
    ]);
    expect([...cut.values()].flat()).toMatchObject([{ of: 'cue', cue: { id: 'b' } }]);
    expect(needWords).toEqual([]);
    expect(fromHeard).toEqual({ again: 2, added: 1 });
    // The chapter began with the wire, and does so again.
    expect(now.content.chapters[0]?.startMs).toBeGreaterThanOrEqual(20_400);
    expect(now.content.chapters[0]?.startMs).toBeLessThanOrEqual(20_600);
  });

  test('a lesson spoken anew from beginning to end goes by its words alone', () => {
    const anew: EditList = { ...listPieces([], 60_000, 45_000), speed: 1, pitchMoved: false };
    const quicker = draft.cues.map((cue) =>
      heard(`n-${cue.id}`, cue.startMs * 0.7, cue.endMs * 0.7, cue.text.replace('eighteen', 'sixteen')),
    );
    const wordsStay = new Set(retakesIn(anew).map(({ cut }) => cut));
    const { changes, cut } = carryOver(draft, anew, { wordsStay, heard: quicker });
    const now = madeOn(draft, changes);
    expect(now.cues.map(({ id, startMs }) => [id, startMs])).toEqual(
      draft.cues.map(({ id, startMs }) => [id, startMs * 0.7]),
    );
    expect(now.cues[2]?.text).toBe('This wire is sixteen gauge.');
    expect(Math.abs((now.content.chapters[0]?.startMs ?? 0) - 24_000 * 0.7)).toBeLessThan(100);
    expect([...cut.values()].flat()).toEqual([]);
  });

  test('a transcript of the old recording is placed on the new one whole', () => {
    const { cues, gone } = placeTranscript(draft.cues, list);
    expect(cues.map(({ id, startMs, timing }) => [id, startMs, timing])).toEqual([
      ['a', 18_000, undefined],
      ['b', 20_000, 'approximate'],
      ['c', 23_333, 'approximate'],
      ['d', 26_667, 'approximate'],
      ['e', 31_000, undefined],
    ]);
    expect(gone).toBe(0);
    const trimmed = {
      ...list,
      ...listPieces(
        [{ old: { startMs: 26_000, endMs: 60_000 }, new: { startMs: 0, endMs: 34_000 } }],
        60_000,
        34_000,
      ),
    };
    expect(placeTranscript(draft.cues, trimmed)).toMatchObject({
      cues: [{ id: 'c' }, { id: 'd' }, { id: 'e' }],
      gone: 2,
    });
  });

  test('said faster or slower, they are found to a word, wherever the cues are parted', () => {
    const sentences = Array.from(
      { length: 60 },
      (_, k) => `Ring ${k} goes through pair ${k + 7}, then close it.`,
    );
    const old = sentences.map((text, k) => heard(`o${k}`, k * 4_000, k * 4_000 + 3_800, text));
    // The same, a tenth faster, two sentences to a cue.
    const again = Array.from({ length: 30 }, (_, k) =>
      heard(`h${k}`, k * 7_200, k * 7_200 + 7_000, `${sentences[2 * k]} ${sentences[2 * k + 1]}`),
    );
    const { anchors, same } = matchWords(old, again);
    expect(same.size).toBe(30);
    for (const { oldMs, newMs } of anchors) expect(Math.abs(newMs - oldMs * 0.9)).toBeLessThan(400);
    expect(anchors.length).toBeGreaterThan(500);
  });

  test('texts that have nothing in common are not matched', () => {
    const { anchors, same } = matchWords(
      [heard('a', 0, 1_000, 'alpha beta gamma')],
      [heard('b', 0, 1_000, 'delta epsilon zeta')],
    );
    expect([anchors, [...same]]).toEqual([[], []]);
  });
});
