import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Change, type Draft, keysOf } from '#lib/lesson/change.ts';
import {
  forgetSteps,
  type History,
  makeStep,
  noHistory,
  redoStep,
  TYPING_BREAK_MS,
  undoStep,
} from '#lib/lesson/history.ts';
import { layOn } from '#lib/lesson/pending.ts';
import { aChange, aDraft } from './a-draft.ts';

const title = (value: string): Change => ({ kind: 'set', field: 'title', value });

function typed(draft: Draft, at: readonly (readonly [string, number, string?])[]) {
  return at.reduce<{ history: History; draft: Draft }>(
    (last, [text, atMs, run]) =>
      makeStep(last.history, last.draft, [title(text)], { label: 'title', atMs, run }),
    { history: noHistory, draft },
  );
}

test('undone all the way, the draft is as it was; redone all the way, as it became', () => {
  const steps = fc.array(fc.array(aChange, { minLength: 1, maxLength: 3 }), { maxLength: 8 });
  fc.assert(
    fc.property(aDraft, steps, (start, made) => {
      let now: { history: History; draft: Draft } = { history: noHistory, draft: start };
      made.forEach((changes, at) => {
        now = makeStep(now.history, now.draft, changes, { label: `step ${at}`, atMs: at });
      });
      const end = now.draft;
      for (let next = undoStep(now.history, now.draft); next; next = undoStep(next.history, next.draft))
        now = next;
      expect(now.draft).toEqual(start);
      for (let next = redoStep(now.history, now.draft); next; next = redoStep(next.history, next.draft))
        now = next;
      expect(now.draft).toEqual(end);
    }),
  );
});

test('the changes of an undo, made on the saved draft, come to what is shown', () => {
  fc.assert(
    fc.property(aDraft, fc.array(aChange, { minLength: 1, maxLength: 4 }), (start, changes) => {
      const made = makeStep(noHistory, start, changes, { label: 'all', atMs: 0 });
      const undone = undoStep(made.history, made.draft);
      expect(layOn(made.draft, undone?.changes ?? [])).toEqual(start);
    }),
  );
});

test.each([
  [
    'typed without a long break',
    [
      ['B', 0],
      ['By', 300],
      ['Byz', 600],
    ],
    1,
  ],
  [
    'typed after a break',
    [
      ['B', 0],
      ['By', TYPING_BREAK_MS + 1],
    ],
    2,
  ],
  [
    'typed slowly in one stay in a field',
    [
      ['B', 0, 'f'],
      ['By', 60_000, 'f'],
    ],
    1,
  ],
  [
    'typed in two stays',
    [
      ['B', 0, 'f'],
      ['By', 10, 'g'],
    ],
    2,
  ],
] as const)('a title %s is undone at once where it belongs together', (_, letters, steps) => {
  fc.assert(
    fc.property(aDraft, (draft) => {
      expect(typed(draft, letters).history.done).toHaveLength(steps);
    }),
    { numRuns: 5 },
  );
});

test('making a thing and then changing it are two steps', () => {
  fc.assert(
    fc.property(aDraft, (draft) => {
      const put: Change = { kind: 'put', list: 'chapters', item: { id: 'new', title: '' } };
      const made = makeStep(noHistory, draft, [put], { label: 'set chapter', atMs: 0 });
      const named = makeStep(made.history, made.draft, [put], { label: 'chapter title', atMs: 1 });
      expect(named.history.done.map((step) => step.label)).toEqual(['set chapter', 'chapter title']);
    }),
    { numRuns: 5 },
  );
});

test('steps that touch what others changed are forgotten, and no others', () => {
  fc.assert(
    fc.property(aDraft, fc.array(aChange, { maxLength: 8 }), aChange, (draft, mine, theirs) => {
      const made = mine.reduce<{ history: History; draft: Draft }>(
        (last, change, at) => makeStep(last.history, last.draft, [change], { label: `${at}`, atMs: 0 }),
        { history: noHistory, draft },
      );
      const touched = new Set(keysOf(theirs));
      const kept = forgetSteps(made.history, touched).done.map((step) => step.label);
      const expected = mine.flatMap((change, at) =>
        keysOf(change).some((key) => touched.has(key)) ? [] : [`${at}`],
      );
      expect(kept).toEqual(expected);
    }),
  );
});
