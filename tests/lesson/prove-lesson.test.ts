/** Sequences held against shapes: sound ones agree, and faults put in by hand are told where they start. */
import { expect, test } from 'vitest';
import { emptyContent } from '#lib/lesson/content.ts';
import { shapeOfLesson } from '#lib/lesson/lesson-pictures.ts';
import type { Pictured } from '#lib/lesson/pictured.ts';
import { proveLesson } from '#lib/lesson/prove-lesson.ts';
import { weavesNamed } from '#lib/weave/named-weave.ts';
import type { Placement } from '#lib/weave/placement.ts';
import { findWeave, WEAVES } from '#lib/weave/weave-library.ts';
import { aRingKind } from '#tests/support/a-making.ts';

const SIZES: Readonly<Record<string, { inner: number; wire: number }>> = {
  large: { inner: 6.35, wire: 1.2 },
  small: { inner: 4.7625, wire: 0.9 },
  connector: { inner: 4, wire: 1 },
};

function lessonOf(id: string): Pictured {
  const weave = findWeave(id);
  if (!weave) throw new Error(id);
  const { start, repeat, finishing, endsAfter } = weave.piece;
  const ringKinds = weave.roles.map((role) => {
    const { inner, wire } = SIZES[role.id] ?? { inner: 6.4, wire: 1.1 };
    return aRingKind({
      id: role.id,
      innerDiameter: { stated: `${inner} mm`, mm: inner },
      wire: { stated: `${wire} mm`, mm: wire },
    });
  });
  return {
    ...emptyContent('A lesson', 'en', 'EUR'),
    weave: weave.name,
    start,
    repeat,
    finishing,
    endsAfter,
    ringKinds,
  };
}

const prove = (lesson: Pictured) => proveLesson(lesson, shapeOfLesson(lesson));

/** The lesson with one placement made otherwise. */
const otherwise = (
  lesson: Pictured,
  id: string,
  over: (placement: Placement) => Partial<Placement>,
): Pictured => {
  const changed = (placements: Pictured['start']) =>
    placements.map((each) => (each.id === id ? { ...each, ...over(each) } : each));
  return {
    ...lesson,
    start: changed(lesson.start),
    repeat: changed(lesson.repeat),
    finishing: changed(lesson.finishing),
  };
};

const turned = (from: 'front' | 'back') => (from === 'front' ? ('back' as const) : ('front' as const));
const turnPass = (at: number) => (placement: Placement) => ({
  passes: placement.passes.map((pass, index) => (index === at ? { ...pass, from: turned(pass.from) } : pass)),
});

test.each(WEAVES.filter(({ id }) => shapeOfLesson(lessonOf(id)).ok).map(({ id }) => id))(
  '%s: agrees with its shape, ends included',
  (id) => {
    const proof = prove(lessonOf(id));
    expect(proof).toMatchObject({ state: 'agrees' });
    if (proof?.state === 'agrees') {
      expect(proof.nearest).toBeGreaterThanOrEqual(0.9999);
      expect(proof.rings).toBeGreaterThan(4);
    }
  },
);

test.each([
  [
    'a pass left out',
    'half-persian-3-in-1',
    'repeat-1',
    (p: Placement) => ({ passes: p.passes.slice(0, 1) }),
  ],
  ['a side turned', 'half-persian-3-in-1', 'repeat-1', turnPass(0)],
  ['a side turned that makes another weave', 'jens-pind-3', 'repeat-1', turnPass(0)],
  ['a side turned in the start', 'half-persian-3-in-1-two-sizes', 'start-2', turnPass(0)],
  ['a side turned in the finishing', 'half-persian-4-in-1', 'finishing-1', turnPass(2)],
  [
    'a carried ring entered from the other side',
    'half-persian-4-in-1',
    'repeat-1',
    (p: Placement) => ({ carries: p.carries.map((each) => ({ ...each, from: 'back' as const })) }),
  ],
  ['a fold not told', 'byzantine', 'repeat-2', () => ({ lie: 'as it falls' as const, lays: [] })],
  [
    'a link too many',
    'half-persian-3-in-1',
    'repeat-1',
    (p: Placement) => ({
      passes: [...p.passes, { from: 'back' as const, ring: { row: 'B', nth: 1, from: 'newest' as const } }],
    }),
  ],
  [
    'another ring passed in the finishing',
    'half-persian-3-in-1',
    'finishing-1',
    (p: Placement) => ({
      passes: p.passes.map((pass, at) =>
        at === 0 ? { ...pass, ring: { row: 'A', nth: 3, from: 'newest' as const } } : pass,
      ),
    }),
  ],
] as const)('%s in %s is told at %s', (_, weave, id, over) => {
  const lesson = otherwise(lessonOf(weave), id, over);
  const proof = prove(lesson);
  if (proof?.state !== 'differs') throw new Error(JSON.stringify(proof));
  expect(proof.weave).toBe(findWeave(weave) && weave.replace('-two-sizes', ''));
  expect(proof.isNamed).toBe(true);
  expect(proof.contradictions[0]?.placementId).toBe(id);
});

test('a repeat that leans the other way contradicts both ends', () => {
  const proof = prove(otherwise(lessonOf('half-persian-3-in-1'), 'repeat-1', turnPass(1)));
  expect(proof).toMatchObject({
    state: 'differs',
    contradictions: [
      { placementId: 'start-2', code: 'side-otherwise' },
      { placementId: 'finishing-1', code: 'side-otherwise' },
    ],
  });
});

test('a whole other weave than the lesson says', () => {
  const lesson = { ...lessonOf('chain-2-2'), weave: 'Half Persian 3-in-1' };
  expect(prove(lesson)).toEqual({
    state: 'another weave',
    weave: 'chain-2-2',
    named: 'half-persian-3-in-1',
  });
});

test('a weave of her own is not called wrong', () => {
  expect(prove({ ...lessonOf('shaggy-loops'), weave: 'my own fringe' })).toBeNull();
  expect(prove(lessonOf('shaggy-loops'))).toBeNull();
});

test('names as people write them', () => {
  expect(weavesNamed('Byzantine bracelet')).toEqual(['byzantine']);
  expect(weavesNamed('half persian 3 in 1')).toEqual([
    'half-persian-3-in-1',
    'half-persian-3-in-1-two-sizes',
  ]);
  expect(weavesNamed('European 4-in-1')).toEqual(['european-4-in-1-three-rows', 'european-4-in-1-five-rows']);
  expect(weavesNamed('something else')).toEqual([]);
});
