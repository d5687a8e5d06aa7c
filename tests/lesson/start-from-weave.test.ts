import { describe, expect, test } from 'vitest';
import { applyChange, type Change, checkContent } from '#lib/lesson/change.ts';
import { type Content, emptyContent } from '#lib/lesson/content.ts';
import { mirroredSentence, mirrorMaking } from '#lib/lesson/mirror-making.ts';
import { passesWords } from '#lib/lesson/passes-words.ts';
import { startFromWeave } from '#lib/lesson/start-from-weave.ts';
import { checkPiece } from '#lib/weave/check-piece.ts';
import { likelyNext, ringsNear } from '#lib/weave/near-rings.ts';
import { findWeave, WEAVES, type Weave } from '#lib/weave/weave-library.ts';
import { aPlacement, aRingKind, byzantineMaking } from '#tests/support/a-making.ts';

let ids = 0;
const newId = (): string => `id-${++ids}`;
const made = (content: Content, changes: readonly Change[]): Content =>
  changes.reduce(applyChange, { content, cues: [] }).content;
const weaveOf = (id: string): Weave => {
  const found = findWeave(id);
  if (!found) throw new Error(`no weave ${id}`);
  return found;
};
const blank: Content = {
  ...emptyContent('A chain', 'en', 'EUR'),
  ringKinds: [
    aRingKind({ id: 'big', name: 'large copper' }),
    aRingKind({ id: 'little', name: 'small blue' }),
  ],
};
const PERSIAN = weaveOf('half-persian-3-in-1-two-sizes');
const persian = made(blank, startFromWeave(blank, PERSIAN, { large: 'big', small: 'little' }, newId));

test.each(WEAVES.map((weave) => [weave.name, weave] as const))(
  'a lesson started from %s is whole',
  (_, weave) => {
    const cast = Object.fromEntries(weave.roles.map(({ id }, at) => [id, at === 0 ? 'big' : 'little']));
    const content = made(blank, startFromWeave(blank, weave, cast, newId));
    expect(checkContent(content)).toMatchObject({ ok: true });
    expect(checkPiece(content)).toEqual({ faults: [], untold: 0 });
    const placements = [...content.start, ...content.repeat, ...content.finishing];
    expect(placements.every(({ sentence }) => sentence.length > 10)).toBe(true);
    expect(new Set(placements.map(({ id }) => id)).size).toBe(placements.length);
    expect(content.weave).toBe(weave.name);
  },
);

test('what was there goes, and its name stays', () => {
  const before: Content = { ...blank, ...byzantineMaking(), weave: 'My chain', ringKinds: blank.ringKinds };
  const content = made(before, startFromWeave(before, PERSIAN, { large: 'big', small: 'little' }, newId));
  expect(content.weave).toBe('My chain');
  expect(content.repeat.map(({ opened }) => opened)).toEqual(['little', 'big']);
  // The piece ends after the first placement of a repeat, by its new id.
  expect(content.endsAfter).toBe(content.repeat[0]?.id);
  expect(content.ends?.last.map(({ ringKind }) => ringKind)).toEqual(['big', 'big']);
});

describe('the other hand', () => {
  const right: Content = { ...persian, leaning: 'right' };

  test('turns sides, sentences and leaning, and twice gives the lesson back', () => {
    const left = made(right, mirrorMaking(right));
    expect(left.leaning).toBe('left');
    expect(left.repeat[0]?.sentence).toBe(
      'Open one small blue ring, pick up one large copper ring from its back, closed beforehand, go through the last two rings of row A from the front and close it.',
    );
    expect(made(left, mirrorMaking(left))).toEqual(right);
  });

  test('leaves a piece without a hand alone', () => {
    expect(mirrorMaking(persian)).toEqual([]);
  });

  test('turns words of hand in the teacher’s own sentences, and no others', () => {
    expect(mirroredSentence('From the front, lean it to the left; the right ring, right away.')).toBe(
      'From the back, lean it to the right; the left ring, right away.',
    );
  });
});

describe('rings that are passed, in words', () => {
  const of = (row: string, ...nths: readonly number[]) =>
    nths.map((nth) => ({ from: 'back' as const, ring: { row, nth, from: 'newest' as const } }));

  test.each([
    [of('', 1), 'through the newest ring from the back'],
    [of('', 2, 1), 'through the last two rings from the back'],
    [of('A', 3, 2), 'through the two rings before the newest one of row A from the back'],
    [of('knot', 4, 1), 'through the fourth newest and newest rings of the knot row from the back'],
    [
      [...of('A', 2), { from: 'front' as const, ring: { row: 'A', nth: 1, from: 'newest' as const } }],
      'through the second newest ring of row A from the back and the newest ring of row A from the front',
    ],
    [
      [{ from: 'back' as const, ring: { row: 'A', nth: 1, from: 'first' as const } }],
      'through the first ring of row A from the back',
    ],
    [[{ from: 'back' as const }, { from: 'back' as const }], 'through two rings from the back'],
    [
      [...of('A', 1), { from: 'front' as const }],
      'through two rings, one from the front and one from the back',
    ],
    [[], ''],
  ])('%j', (passes, words) => {
    expect(passesWords(passes)).toBe(words);
  });
});

describe('rings that a placement can reach', () => {
  const [second] = persian.repeat.slice(1);
  const near = ringsNear(persian, second?.id ?? '', 'before');

  test('are those that are there when its turn comes, the row that grew last first', () => {
    // Before the large ring: the small one carried a large ring into A.
    expect(near[0]).toEqual({ ref: { row: 'A', nth: 1, from: 'newest' }, ringKind: 'big' });
    expect(near.find(({ ref }) => ref.row === 'B' && ref.nth === 1)?.ringKind).toBe('little');
    expect(near.some(({ ref }) => ref.from === 'first')).toBe(true);
    expect(ringsNear(persian, 'gone', 'before')).toEqual([]);
  });

  test('and the likeliest next one is of another row, then the one behind it', () => {
    const first = likelyNext(near, 'B', []);
    expect(first).toEqual({ row: 'A', nth: 1, from: 'newest' });
    expect(likelyNext(near, 'B', first ? [first] : [])).toEqual({ row: 'A', nth: 2, from: 'newest' });
    expect(likelyNext([], 'B', [])).toBeNull();
  });

  test('of another unit are found as if it were the repeat', () => {
    const motif = aPlacement({ id: 'motif', unit: 'motif', opened: 'big', passes: [] });
    expect(
      ringsNear({ ...persian, repeat: [...persian.repeat, motif] }, 'motif', 'before').length,
    ).toBeGreaterThan(0);
  });
});
