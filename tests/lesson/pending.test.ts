import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyChange, type Change, type Draft, keysOf } from '#lib/lesson/change.ts';
import type { ScalarField } from '#lib/lesson/content.ts';
import {
  acknowledge,
  addPending,
  collisionsOf,
  condense,
  isSettled,
  layOn,
  nothingPending,
  sendAgain,
  startSending,
  unacknowledged,
  withoutKeys,
} from '#lib/lesson/pending.ts';
import { aChange, aDraft } from './a-draft.ts';

const aCue = (id: string, text: string) => ({ id, startMs: 0, endMs: 10, text, settings: '' });
const cues = (put: readonly string[], text = ''): Change => ({
  kind: 'cues',
  put: put.map((id) => aCue(id, text)),
  remove: [],
});

function valueAt({ content, cues }: Draft, key: string): unknown {
  const [list = '', id] = key.split('/');
  if (id === undefined) return content[list as ScalarField];
  return (list === 'cue' ? cues : content.chapters).find((one) => one.id === id);
}

test('condensed changes come to the same draft', () => {
  fc.assert(
    fc.property(aDraft, fc.array(aChange, { maxLength: 12 }), (draft, changes) => {
      expect(layOn(draft, condense(changes))).toEqual(layOn(draft, changes));
    }),
  );
});

test('condensing never parts what hung together', () => {
  fc.assert(
    fc.property(fc.array(aChange, { maxLength: 12 }), fc.array(aChange, { maxLength: 4 }), (mine, theirs) => {
      const touched = new Set(theirs.flatMap((made) => keysOf(made)));
      const keysIn = (changes: readonly Change[]) =>
        collisionsOf(changes, touched)
          .map((group) => [...group.keys].sort().join())
          .sort();
      expect(keysIn(condense(mine))).toEqual(keysIn(mine));
    }),
  );
});

test('a sentence typed letter by letter is one change', () => {
  const letters = [...'Open the ring'].map((_, at, all) => cues(['a'], all.slice(0, at + 1).join('')));
  expect(condense(letters)).toEqual([cues(['a'], 'Open the ring')]);
});

describe('two windows', () => {
  const orderless = (draft: ReturnType<typeof layOn>) => ({
    ...draft,
    content: {
      ...draft.content,
      chapters: [...draft.content.chapters].sort((a, b) => (a.id < b.id ? -1 : 1)),
    },
  });

  test('changes that share no key come to the same, whoever saves first', () => {
    fc.assert(
      fc.property(
        aDraft,
        fc.array(aChange, { maxLength: 6 }),
        fc.array(aChange, { maxLength: 6 }),
        (draft, mine, theirs) => {
          const touched = new Set(theirs.flatMap((made) => keysOf(made)));
          fc.pre(collisionsOf(mine, touched).length === 0);
          // Where a new item lies among the others may depend on who came first; nothing else does.
          expect(orderless(layOn(layOn(draft, theirs), mine))).toEqual(
            orderless(layOn(layOn(draft, mine), theirs)),
          );
        },
      ),
    );
  });

  test('taking theirs leaves every key that they touched as they have it', () => {
    fc.assert(
      fc.property(
        aDraft,
        fc.array(aChange, { maxLength: 6 }),
        fc.array(aChange, { maxLength: 6 }),
        (draft, mine, theirs) => {
          const touched = new Set(theirs.flatMap((made) => keysOf(made)));
          const dropped = new Set(collisionsOf(mine, touched).flatMap((group) => group.keys));
          const newer = layOn(draft, theirs);
          const after = layOn(newer, withoutKeys(mine, dropped));
          for (const key of touched) expect(valueAt(after, key)).toEqual(valueAt(newer, key));
        },
      ),
    );
  });

  test('both halves of a split collide together', () => {
    const mine = [cues(['first', 'second']), cues(['second'], 'mended'), cues(['elsewhere'])];
    expect(collisionsOf(mine, new Set(['cue/first']))).toEqual([
      { keys: ['cue/first', 'cue/second'], met: ['cue/first'] },
    ]);
  });

  test('where it is not known what others touched, everything collides', () => {
    expect(collisionsOf([cues(['a']), cues(['b'])], 'everything')).toHaveLength(2);
  });
});

describe('the queue', () => {
  test('holds what is on its way apart from what waits', () => {
    const sent = startSending(addPending(nothingPending(3), [cues(['a'], 'one')]), 'save-1');
    const more = addPending(sent, [cues(['a'], 'two')]);
    expect(more.sending).toEqual({ saveId: 'save-1', changes: [cues(['a'], 'one')] });
    expect(more.waiting).toEqual([cues(['a'], 'two')]);
    expect(startSending(more, 'save-2')).toBe(more);
    const next = acknowledge(more, 4);
    expect(next).toEqual({ version: 4, sending: null, waiting: [cues(['a'], 'two')] });
    expect(isSettled(next)).toBe(false);
  });

  test('what was refused waits again, oldest first, on the version named', () => {
    const sent = startSending(addPending(nothingPending(3), [cues(['a'])]), 'save-1');
    const again = sendAgain(addPending(sent, [cues(['b'])]), 9);
    expect(again).toEqual({ version: 9, sending: null, waiting: [cues(['a']), cues(['b'])] });
  });

  test('what is shown is always the acknowledged draft with the queue on it', () => {
    fc.assert(
      fc.property(aDraft, fc.array(aChange, { maxLength: 10 }), fc.nat(10), (draft, changes, at) => {
        const before = addPending(nothingPending(1), changes.slice(0, at));
        const pending = addPending(startSending(before, 'x'), changes.slice(at));
        expect(layOn(draft, unacknowledged(pending))).toEqual(changes.reduce(applyChange, draft));
      }),
    );
  });
});
