/** A teacher's own sequence: its shape is asked for once, derived by the worker, and drawn from then on. */
import { expect, test } from 'vitest';
import { emptyContent } from '#lib/lesson/content.ts';
import { foretell } from '#lib/lesson/foretell.ts';
import { drawLesson, mayBePictured, shapeOfLesson } from '#lib/lesson/lesson-pictures.ts';
import { measuresOf } from '#lib/lesson/measures.ts';
import { ownSequences } from '#lib/lesson/own-sequences.ts';
import type { Pictured } from '#lib/lesson/pictured.ts';
import { proveLesson } from '#lib/lesson/prove-lesson.ts';
import { drawWhole } from '#lib/lesson/whole-picture.ts';
import { deriveOwnShape, withDerivedShapes } from '#lib/shapes/derive-own-shape.ts';
import { isWaiting, withOwnShapes } from '#lib/shapes/know-own-shapes.ts';
import { provePlaced } from '#lib/weave/space/prove-piece.ts';
import { findWeave } from '#lib/weave/weave-library.ts';
import { back, front, lay, ONE_KIND, open, weave } from '#lib/weave/weaves/weave.ts';
import { aRingKind } from '#tests/support/a-making.ts';
import { testDatabase } from '#tests/support/database.ts';

const FRONT = { roll: 0, side: 'front' as const };

/** Every ring through the last three: no stored weave is made like this. */
const { piece } = weave({
  id: 'through-three',
  name: 'through three',
  about: '',
  hasHand: true,
  roles: ONE_KIND,
  start: [lay(['ring', '', 1]), open('ring', '', front('', 1)), open('ring', '', front('', 2, 1))],
  repeat: [open('ring', '', [...back('', 3), ...front('', 2, 1)])],
});
const lessonOf = (made: typeof piece, innerMm = 8): Pictured => ({
  ...emptyContent('A lesson', 'en', 'EUR'),
  start: made.start,
  repeat: made.repeat,
  finishing: made.finishing,
  ringKinds: [
    aRingKind({
      id: 'ring',
      innerDiameter: { stated: `${innerMm} mm`, mm: innerMm },
      wire: { stated: '1.6 mm', mm: 1.6 },
    }),
  ],
});

const never = new AbortController().signal;

test('is asked for once, derived, and drawn', async () => {
  const { db } = await testDatabase();
  const sent: unknown[] = [];
  let now = new Date('2026-03-01T09:00:00Z');
  const asking = {
    db,
    queue: async () => ({ send: async (...job: unknown[]) => sent.push(job.slice(0, 2)) > 0 }),
    now: () => now,
  };
  const stored = lessonOf(findWeave('chain-1-1')?.piece ?? piece);
  expect(await withOwnShapes(asking, stored)).toBe(stored);

  const lesson = lessonOf(piece);
  const [key = ''] = ownSequences(lesson).keys();
  const before = await withOwnShapes(asking, lesson);
  expect(isWaiting(before)).toBe(true);
  expect(shapeOfLesson(before)).toMatchObject({ fault: { code: 'no-known-shape', why: 'waiting' } });
  expect(drawLesson(before, shapeOfLesson, { of: 'repeat-1', ...FRONT })?.svg).toContain(
    '<title>Scheme of this step</title>',
  );
  await withOwnShapes(asking, lesson);
  expect(sent).toEqual([['derive-shape', { key }]]);
  // A job that was lost is queued again.
  now = new Date('2026-03-01T09:11:00Z');
  await withOwnShapes(asking, lesson);
  expect(sent).toHaveLength(2);

  await deriveOwnShape({ db }, { key }, never);
  const known = await withOwnShapes(asking, lesson);
  expect(isWaiting(known)).toBe(false);
  const shape = shapeOfLesson(known);
  if (!shape.ok) throw new Error(shape.fault.code);
  expect(shape.value.known.weave.links).toHaveLength(3);
  expect(mayBePictured(known)).toBe(true);
  expect(drawLesson(known, shapeOfLesson, { of: 'piece', ...FRONT })?.svg).toContain('<svg');
  expect(drawLesson(known, shapeOfLesson, { of: 'repeat-1', ...FRONT })?.svg).toContain(
    '<title>This step</title>',
  );
  expect(drawWhole(known, shapeOfLesson, { repeats: 30, isMirrored: false })?.svg).toContain('<svg');
  // One link more than a chain of rings through the last two: told, in case it was a slip.
  expect(proveLesson(known, shape)).toMatchObject({ state: 'differs', isNamed: false });
  expect(provePlaced(known, shape.value, measuresOf(known))).toMatchObject({
    state: 'agrees',
    repeats: 4,
    links: 3 + 4 * 3,
  });
  // Pulled taut no link is longer than an inner diameter, and it spans three rings at the most: elementary geometry.
  const foretold = foretell(known);
  if (!foretold.ok || !foretold.value.oneRepeat) throw new Error('nothing foretold');
  expect(foretold.value.oneRepeat.tautMm).toBeLessThanOrEqual(8 / 3 + 1e-6);
  expect(foretold.value.oneRepeat.tautMm).toBeGreaterThan(1.6);

  const tight = lessonOf(piece, 5.6);
  expect(shapeOfLesson(await withOwnShapes(asking, tight))).toMatchObject({
    fault: { code: 'too-tight', has: expect.closeTo(3.5, 9), isOwn: true },
  });
  expect(sent).toHaveLength(2);
  // Work that can wait finds it there.
  expect((await withDerivedShapes({ db }, lesson, never)).own).toEqual(known.own);
});

test('work on it can be ended, and leaves it to be begun again', async () => {
  const { db } = await testDatabase();
  const lesson = lessonOf(piece);
  await expect(withDerivedShapes({ db }, lesson, AbortSignal.abort(new Error('ended')))).rejects.toThrow(
    'ended',
  );
  const [key = ''] = ownSequences(lesson).keys();
  expect(await db.ownShape.findUnique({ where: { key } })).toMatchObject({ doneAt: null, known: null });
});

test('where no shape is found that is kept too, and said', async () => {
  const { db } = await testDatabase();
  // Once from either side through one ring: two round rings cannot.
  const { piece: twice } = weave({
    id: 'twice',
    name: 'twice',
    about: '',
    hasHand: false,
    roles: ONE_KIND,
    start: [lay(['ring', '', 1])],
    repeat: [open('ring', '', [...front('', 1), ...back('', 1)])],
  });
  const known = await withDerivedShapes({ db }, lessonOf(twice), never);
  expect(shapeOfLesson(known)).toMatchObject({ fault: { code: 'no-known-shape', why: 'none' } });
});
