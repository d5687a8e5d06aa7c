/** A draft carried over to a re-edited recording: what must hold for every edit and every draft. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyChange, type Change, checkContent, type Draft, inverseOf } from '#lib/lesson/change.ts';
import { adjustJoin, joinsOf } from '#lib/retiming/adjust.ts';
import { type CutItem, carryOver } from '#lib/retiming/carry-over.ts';
import { type EditList, editList, listPieces, type Piece } from '#lib/retiming/edit-list.ts';
import { retakesIn } from '#lib/retiming/retakes.ts';
import { toNew, toOld } from '#lib/retiming/time-map.ts';
import { aContent } from '#tests/support/a-content.ts';
import { aDraft, anEdit, moment, OLD_MS, runs } from './an-edit.ts';

const madeOn = (draft: Draft, changes: readonly Change[]): Draft => changes.reduce(applyChange, draft);
const all = { wordsStay: new Set<number>() };
const idOf = (item: CutItem): string => {
  switch (item.of) {
    case 'cue':
      return item.cue.id;
    case 'chapter':
      return item.chapter.id;
    case 'step':
      return item.id;
    case 'correction':
      return item.correction.id;
  }
};

describe('any edit list', () => {
  test('covers both recordings whole, without overlap', () => {
    fc.assert(
      fc.property(anEdit, (list) => {
        expect(editList.safeParse(list).success).toBe(true);
        let at = 0;
        for (const edit of list.edits) {
          // Inserts too short to be told from doubt are left out.
          expect(edit.new.startMs - at).toBeGreaterThanOrEqual(0);
          expect(edit.new.startMs - at).toBeLessThan(60);
          at = edit.new.endMs;
        }
        expect(list.newMs - at).toBeLessThan(60);
        const inOld = list.edits.map(({ old }) => old).toSorted((one, other) => one.startMs - other.startMs);
        const covered = inOld.reduce((sum, { startMs, endMs }) => sum + endMs - startMs, 0);
        expect(covered).toBe(OLD_MS);
      }),
      runs,
    );
  });

  test('maps what was kept there and back to the same moment', () => {
    fc.assert(
      fc.property(anEdit, moment, (list, oldMs) => {
        const placed = toNew(list)(oldMs);
        fc.pre(placed.is === 'there' && oldMs < placed.edit.old.endMs);
        const back = toOld(list)(placed.ms);
        const away = Math.abs(back.ms - oldMs);
        // At another speed two moments may share a millisecond.
        expect(away).toBeLessThanOrEqual(list.speed === 1 ? 0 : 1);
        expect(back.is).toBe('there');
      }),
      runs,
    );
  });

  test('keeps the order of what was kept in order', () => {
    fc.assert(
      fc.property(anEdit, moment, moment, (list, one, other) => {
        const place = toNew(list);
        const [first, second] = [place(Math.min(one, other)), place(Math.max(one, other))];
        const isKept = (placed: typeof first) => placed.is === 'there' && placed.edit.kind === 'kept';
        fc.pre(isKept(first) && isKept(second));
        expect(first.ms).toBeLessThanOrEqual(second.ms);
      }),
      runs,
    );
  });

  test('stays whole where shared sound is shorter than what a moved point would leave of it', () => {
    const cut = (old: [number, number], atMs: number) => ({
      kind: 'cut' as const,
      old: { startMs: old[0], endMs: old[1] },
      new: { startMs: atMs, endMs: atMs },
    });
    const short: EditList = {
      edits: [
        cut([0, 300], 0),
        { kind: 'kept', old: { startMs: 300, endMs: 400 }, new: { startMs: 0, endMs: 99 } },
        cut([400, 120_000], 99),
      ],
      oldMs: 120_000,
      newMs: 99,
      speed: 1.01,
      pitchMoved: true,
    };
    expect(adjustJoin(short, 0, { end: null, start: 0 })).toEqual(short);
  });

  test('stays within the old recording where a limit lies between two milliseconds', () => {
    const list: EditList = {
      edits: [
        { kind: 'cut', old: { startMs: 0, endMs: 4_200 }, new: { startMs: 0, endMs: 0 } },
        { kind: 'inserted', old: { startMs: 0, endMs: 0 }, new: { startMs: 0, endMs: 4_159 } },
        { kind: 'kept', old: { startMs: 4_200, endMs: 20_900 }, new: { startMs: 4_159, endMs: 20_694 } },
        { kind: 'cut', old: { startMs: 20_900, endMs: 120_000 }, new: { startMs: 20_694, endMs: 20_694 } },
      ],
      oldMs: 120_000,
      newMs: 20_694,
      speed: 1.01,
      pitchMoved: true,
    };
    const moved = adjustJoin(list, 0, { end: null, start: 0 });
    expect(editList.safeParse(moved).success).toBe(true);
    expect(joinsOf(moved)[0]).toEqual({ end: null, start: 1 });
  });

  test('stays whole when an edit point is moved by hand, and the sound around it stays in step', () => {
    fc.assert(
      fc.property(anEdit, fc.nat(), fc.integer({ min: -8_000, max: 8_000 }), (list, which, by) => {
        const joins = joinsOf(list);
        const at = which % joins.length;
        const join = joins[at];
        fc.pre(join !== undefined);
        const moved = adjustJoin(list, at, {
          end: join.end === null ? null : join.end + by,
          start: join.start === null ? null : join.start + by,
        });
        expect(editList.safeParse(moved).success).toBe(true);
        expect(moved.newMs).toBe(list.newMs);
        const shared = ({ edits }: EditList) =>
          edits.filter(({ kind }) => kind === 'kept' || kind === 'moved');
        const before = shared(list);
        expect(shared(moved)).toHaveLength(before.length);
        for (const [k, now] of shared(moved).entries()) {
          const was = before[k];
          if (!was) continue;
          const pace = (was.old.endMs - was.old.startMs) / (was.new.endMs - was.new.startMs);
          const along = (newMs: number) => was.old.startMs + (newMs - was.new.startMs) * pace;
          expect(Math.abs(along(now.new.startMs) - now.old.startMs)).toBeLessThanOrEqual(1);
          expect(Math.abs(along(now.new.endMs) - now.old.endMs)).toBeLessThanOrEqual(1);
        }
      }),
      runs,
    );
  });
});

describe('any draft', () => {
  test('loses nothing: every cue, chapter, step and correction is carried under its id or named as cut', () => {
    fc.assert(
      fc.property(aDraft, anEdit, fc.boolean(), (draft, list, wordsStay) => {
        const choices = { wordsStay: new Set(wordsStay ? retakesIn(list).map(({ cut }) => cut) : []) };
        const { changes, cut } = carryOver(draft, list, choices);
        const carried = madeOn(draft, changes);
        expect(checkContent(carried.content).ok).toBe(true);
        const gone = new Set([...cut.values()].flat().map(idOf));
        const left = new Set(carried.cues.map(({ id }) => id));
        expect(draft.cues.filter(({ id }) => left.has(id) === gone.has(id))).toEqual([]);
        const chapters = new Set(carried.content.chapters.map(({ id }) => id));
        expect(draft.content.chapters.filter(({ id }) => chapters.has(id) === gone.has(id))).toEqual([]);
        // Steps and corrections are never taken out: without their moment they stand and are named.
        for (const part of ['start', 'repeat', 'finishing', 'steps'] as const) {
          expect(carried.content[part].map(({ id }) => id)).toEqual(draft.content[part].map(({ id }) => id));
          for (const [k, item] of draft.content[part].entries()) {
            const now = carried.content[part][k]?.atMs ?? null;
            expect(now === null).toBe(item.atMs === null || gone.has(item.id));
          }
        }
        expect(carried.content.corrections.map(({ id }) => id)).toEqual(
          draft.content.corrections.map(({ id }) => id),
        );
        for (const correction of carried.content.corrections) {
          expect(correction.startMs === null).toBe(gone.has(correction.id));
        }
        for (const cue of carried.cues) {
          expect(cue.startMs).toBeGreaterThanOrEqual(0);
          expect(cue.endMs).toBeGreaterThan(cue.startMs);
          expect(cue.endMs).toBeLessThanOrEqual(list.newMs + 1);
        }
        const starts = carried.content.chapters.map(({ startMs }) => startMs);
        expect(starts).toEqual(starts.toSorted((one, other) => one - other));
      }),
      runs,
    );
  });

  test('can be taken back', () => {
    fc.assert(
      fc.property(aDraft, anEdit, (draft, list) => {
        let now = madeOn(draft, []);
        const inverses: Change[] = [];
        for (const change of carryOver(draft, list, all).changes) {
          inverses.unshift(inverseOf(now, change));
          now = applyChange(now, change);
        }
        const back = madeOn(now, inverses);
        expect(back.content).toEqual(draft.content);
        expect(new Set(back.cues)).toEqual(new Set(draft.cues));
      }),
      runs,
    );
  });

  test('is left alone by a recording that was not edited', () => {
    const same = listPieces(
      [{ old: { startMs: 0, endMs: OLD_MS }, new: { startMs: 0, endMs: OLD_MS } }],
      OLD_MS,
      OLD_MS,
    );
    fc.assert(
      fc.property(aDraft, (draft) => {
        const inside = { ...draft, cues: draft.cues.filter(({ endMs }) => endMs <= OLD_MS) };
        const corrections = draft.content.corrections.filter(({ endMs }) => (endMs ?? 0) <= OLD_MS);
        const within = { ...inside, content: { ...draft.content, corrections } };
        expect(carryOver(within, { ...same, speed: 1, pitchMoved: false }, all).changes).toEqual([]);
      }),
      runs,
    );
  });
});

describe('one edit', () => {
  const pieces: readonly Piece[] = [
    { old: { startMs: 7_000, endMs: 40_000 }, new: { startMs: 0, endMs: 33_000 } },
    { old: { startMs: 50_000, endMs: 80_000 }, new: { startMs: 33_000, endMs: 63_000 } },
    { old: { startMs: 85_000, endMs: 120_000 }, new: { startMs: 67_000, endMs: 102_000 } },
  ];
  const list: EditList = { ...listPieces(pieces, OLD_MS, 102_000), speed: 1, pitchMoved: false };
  const cue = (id: string, startMs: number, endMs: number) => ({
    id,
    startMs,
    endMs,
    text: id,
    settings: '',
  });
  const draft: Draft = {
    content: aContent({ corrections: [] }),
    cues: [
      cue('before', 1_000, 4_000),
      cue('first', 8_000, 12_000),
      cue('into the cut', 38_000, 41_000),
      cue('mostly cut', 39_500, 44_000),
      cue('across the cut', 38_000, 53_000),
      cue('after', 51_000, 54_000),
      cue('said again', 81_000, 84_000),
      cue('last', 118_000, 121_000),
    ],
  };

  test('reads as it was made', () => {
    expect(
      list.edits.map(({ kind, old, new: now }) => [kind, old.startMs, old.endMs, now.startMs, now.endMs]),
    ).toEqual([
      ['cut', 0, 7_000, 0, 0],
      ['kept', 7_000, 40_000, 0, 33_000],
      ['cut', 40_000, 50_000, 33_000, 33_000],
      ['kept', 50_000, 80_000, 33_000, 63_000],
      ['cut', 80_000, 85_000, 63_000, 63_000],
      ['inserted', 80_000, 80_000, 63_000, 67_000],
      ['kept', 85_000, 120_000, 67_000, 102_000],
    ]);
    expect(retakesIn(list).map(({ cut }) => cut)).toEqual([4]);
  });

  test('moves cues, clips what reaches into a cut, and names what is gone', () => {
    const { changes, cut, clipped, needWords } = carryOver(draft, list, all);
    const times = new Map(
      madeOn(draft, changes).cues.map(({ id, startMs, endMs }) => [id, [startMs, endMs]]),
    );
    expect(times.get('first')).toEqual([1_000, 5_000]);
    expect(times.get('into the cut')).toEqual([31_000, 33_000]);
    expect(times.get('after')).toEqual([34_000, 37_000]);
    expect(times.get('last')).toEqual([100_000, 102_000]);
    expect([...cut].map(([at, items]) => [at, items.filter(({ of }) => of === 'cue').map(idOf)])).toEqual([
      [0, ['before']],
      [2, ['mostly cut', 'across the cut']],
      [4, ['said again']],
    ]);
    expect(clipped.map(({ cue: { id }, lostMs }) => [id, lostMs])).toEqual([['into the cut', 1_000]]);
    expect(needWords).toEqual([{ startMs: 63_000, endMs: 67_000 }]);
  });

  test('lets the words of a sentence that was said again stay with it', () => {
    const { changes, cut, needWords } = carryOver(draft, list, { wordsStay: new Set([4]) });
    const again = madeOn(draft, changes).cues.find(({ id }) => id === 'said again');
    expect([again?.startMs, again?.endMs]).toEqual([63_800, 66_200]);
    expect(cut.has(4)).toBe(false);
    expect(needWords).toEqual([]);
  });
});
