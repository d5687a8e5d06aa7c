/**
 * Corrections that meet: several teachers at once, a program that dies between
 * any two of its steps, a correction of a correction. Nothing may be lost, and
 * there is one order. All of it is invented.
 */
import { randomUUID } from 'node:crypto';
import { expect, test } from 'vitest';
import type { Bench } from '#lib/bench/bench.ts';
import { type PublishInput, publishLesson, type Recordings } from '#lib/bench/publish-lesson.ts';
import { saveDraft } from '#lib/bench/save-draft.ts';
import type { Database } from '#lib/data/database.ts';
import { findDraft, type VersionedDraft } from '#lib/data/lessons.ts';
import { getRevision, listRevisions } from '#lib/data/revisions.ts';
import type { Change } from '#lib/lesson/change.ts';
import type { Correction } from '#lib/lesson/content.ts';
import { proposeEffects, takeEffect } from '#lib/lesson/correction-effects.ts';
import { correctionsNewestFirst, emptyCorrection } from '#lib/lesson/corrections.ts';
import type { Revision } from '#lib/lesson/revision.ts';
import { aContent, aTranscript } from '#tests/support/a-content.ts';
import { aLesson, type LessonRows } from '#tests/support/a-lesson.ts';
import { testDatabase } from '#tests/support/database.ts';
import { dyingBefore } from '#tests/support/dying-database.ts';

const { db } = await testDatabase();
const benchOn = (on: Database): Bench => ({
  db: on,
  now: () => new Date('2026-05-01T08:00:00Z'),
  newId: randomUUID,
});
const bench = benchOn(db);
const none: Recordings = {
  current: async () => null,
  takeStill: async () => null,
  makeLater: async () => {},
};

const correction = (id: string, over: Partial<Correction> = {}): Correction => ({
  ...emptyCorrection(id),
  ...{ wrong: `wrong ${id}`, right: `right ${id}`, affects: 'everyone' },
  ...over,
});
const put = (item: Correction): Change => ({ kind: 'put', list: 'corrections', item });

async function draftOf(rows: LessonRows): Promise<VersionedDraft> {
  const draft = await findDraft(db, rows);
  if (!draft) throw new Error('there is a draft');
  return draft;
}

/** Saves on whatever is newest, as a window does whose changes meet nobody else's. */
async function save(
  rows: LessonRows,
  changesOn: (draft: VersionedDraft) => readonly Change[],
): Promise<void> {
  for (;;) {
    const draft = await draftOf(rows);
    const wish = {
      ...rows,
      saveId: randomUUID(),
      baseVersion: draft.version,
      changes: [...changesOn(draft)],
    };
    const saved = await saveDraft(bench, wish);
    if (saved.ok) return;
    expect(saved.fault.code).toBe('draft-is-newer');
  }
}

const request = (rows: LessonRows, version: number, requestId: string = randomUUID()): PublishInput => ({
  ...rows,
  requestId,
  version,
  workshop: { name: 'Kettle Row Rings', slug: 'kettle-row' },
});

/** Publishes what is newest. */
async function publish(rows: LessonRows): Promise<void> {
  for (;;) {
    const published = await publishLesson(bench, none, request(rows, (await draftOf(rows)).version));
    if (published.ok) return;
    expect(published.fault.code).toBe('draft-is-newer');
  }
}

const revisionsOf = async ({ lessonId }: LessonRows): Promise<readonly Revision[]> =>
  Promise.all((await listRevisions(db, lessonId)).toReversed().map(({ id }) => getRevision(db, id)));

async function aPublishedLesson(): Promise<LessonRows> {
  const rows = await aLesson(db, { content: aContent() });
  await save(rows, () => [{ kind: 'cues', put: [...aTranscript], remove: [] }]);
  await publish(rows);
  return rows;
}

test('three teachers correct and publish at once: every correction is there once, in one order', async () => {
  const rows = await aPublishedLesson();
  const teach = async (name: string): Promise<void> => {
    for (const k of [1, 2, 3]) {
      await save(rows, () => [put(correction(`${name}-${k}`))]);
      await publish(rows);
    }
  };
  await Promise.all(['ilo', 'bry', 'tam'].map(teach));

  const revisions = await revisionsOf(rows);
  expect(revisions.map(({ number }) => number)).toEqual(revisions.map((_, k) => k + 1));
  let before: Revision['content']['corrections'] = [];
  for (const { number, content } of revisions) {
    // What was published stands word for word, and new ones come behind it.
    expect(content.corrections.slice(0, before.length)).toEqual(before);
    expect(content.corrections.slice(before.length).every(({ revision }) => revision === number)).toBe(true);
    before = content.corrections;
  }
  const ids = ['ilo', 'bry', 'tam'].flatMap((name) => [1, 2, 3].map((k) => `${name}-${k}`));
  expect(before.map(({ id }) => id).toSorted()).toEqual(ids.toSorted());
  const { content } = await draftOf(rows);
  expect(new Map(content.corrections.map((one) => [one.id, one.revision]))).toEqual(
    new Map(before.map((one) => [one.id, one.revision])),
  );
});

test('a program that dies between any two steps of publishing leaves nothing half done', async () => {
  const steps: number[] = [];
  for (let nth = 1; ; nth += 1) {
    const rows = await aPublishedLesson();
    await save(rows, () => [put(correction('co-1')), { kind: 'set', field: 'title', value: 'Box chain' }]);
    const before = await draftOf(rows);
    const wish = request(rows, before.version);
    const { client, died } = dyingBefore(db, nth);
    const answer = await publishLesson(benchOn(client), none, wish).catch(() => 'died' as const);
    if (!died()) {
      expect(answer).toMatchObject({ ok: true, value: { number: 2 } });
      break;
    }
    steps.push(nth);
    expect(answer).toBe('died');
    expect(await draftOf(rows)).toEqual(before);
    expect((await revisionsOf(rows)).map(({ content }) => content.title)).toEqual(['Byzantine bracelet']);
    const lines = { where: { lessonId: rows.lessonId, text: { contains: 'Box chain' } } };
    expect(await db.publishedLine.count(lines)).toBe(0);

    // The same wish again does all of it, once.
    for (const _ of [1, 2])
      expect(await publishLesson(bench, none, wish)).toMatchObject({ ok: true, value: { number: 2 } });
    const [, second, ...more] = await revisionsOf(rows);
    expect(more).toEqual([]);
    expect(second?.content.corrections).toEqual([{ ...correction('co-1'), revision: 2 }]);
    expect((await draftOf(rows)).content.corrections).toEqual([{ ...correction('co-1'), revision: 2 }]);
  }
  // Draft, lock, last revision, the new one, its lines, the draft's numbers: fewer would mean that nothing was tried.
  expect(steps.length).toBeGreaterThan(8);
});

test('a correction of a correction: both stand, and the lesson says what the second one does', async () => {
  const rows = await aPublishedLesson();
  const correct = async (item: Correction): Promise<void> => {
    await save(rows, () => [put(item)]);
    await save(rows, (draft) =>
      proposeEffects(draft, item)
        .filter(({ kind }) => kind === 'cue text')
        .flatMap((effect) => takeEffect(draft, item, effect) ?? []),
    );
    await publish(rows);
  };
  const span = { startMs: 31_000, endMs: 36_000 };
  await correct(correction('first', { ...span, wrong: 'eighteen gauge', right: '16 SWG' }));
  await correct(correction('second', { ...span, wrong: '16 SWG', right: '18 SWG' }));

  const revisions = await revisionsOf(rows);
  expect(revisions.map(({ cues }) => cues[1]?.text)).toEqual([
    'Take an eighteen gauge ring.',
    'Take an 16 SWG ring.',
    'Take an 18 SWG ring.',
  ]);
  const [, second, third] = revisions;
  expect(third?.content.corrections[0]).toEqual(second?.content.corrections[0]);
  expect(
    correctionsNewestFirst(third?.content.corrections ?? []).map(({ id, revision }) => [id, revision]),
  ).toEqual([
    ['second', 3],
    ['first', 2],
  ]);
  expect(third?.content.corrections[1]?.effects).toEqual([
    {
      kind: 'cue text',
      of: 'c2',
      field: 'text',
      before: 'Take an 16 SWG ring.',
      after: 'Take an 18 SWG ring.',
    },
  ]);
});
