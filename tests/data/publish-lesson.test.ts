import { randomUUID } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import type { Bench } from '#lib/bench/bench.ts';
import { type PublishInput, publishLesson, type Recordings } from '#lib/bench/publish-lesson.ts';
import { readLessonPage } from '#lib/bench/read-lesson-page.ts';
import { saveDraft } from '#lib/bench/save-draft.ts';
import { emptyCorrection } from '#lib/lesson/corrections.ts';
import { aContent } from '#tests/support/a-content.ts';
import { aLesson } from '#tests/support/a-lesson.ts';
import { testDatabase } from '#tests/support/database.ts';

const { db } = await testDatabase();
const bench: Bench = { db, now: () => new Date('2026-05-01T08:00:00Z'), newId: randomUUID };
const none: Recordings = {
  current: async () => null,
  takeStill: async () => null,
  makeLater: async () => {},
};

async function setUp(content = aContent()): Promise<PublishInput & { lessonSlug: string }> {
  const rows = await aLesson(db, { content });
  return {
    ...rows,
    requestId: randomUUID(),
    version: 1,
    workshop: { name: 'Kettle Row Rings', slug: `w-${rows.workshopId}` },
    lessonSlug: `l-${rows.lessonId}`,
  };
}

const numbersOf = (lessonId: string) =>
  db.revision.findMany({ where: { lessonId }, select: { number: true }, orderBy: { number: 'asc' } });

describe('publishing', () => {
  test('the same request twice, even at once, publishes once', async () => {
    const input = await setUp();
    const answers = await Promise.all([publishLesson(bench, none, input), publishLesson(bench, none, input)]);
    answers.push(await publishLesson(bench, none, input));
    expect(answers.map((answer) => answer.ok && answer.value.number)).toEqual([1, 1, 1]);
    expect(await numbersOf(input.lessonId)).toEqual([{ number: 1 }]);
  });

  test('two wishes at once give two revisions in one order', async () => {
    const input = await setUp();
    const answers = await Promise.all(
      [1, 2, 3].map(() => publishLesson(bench, none, { ...input, requestId: randomUUID() })),
    );
    expect(answers.map((answer) => answer.ok && answer.value.number).toSorted()).toEqual([1, 2, 3]);
  });

  test('a draft that was changed since it was seen is not published', async () => {
    const input = await setUp();
    await saveDraft(bench, {
      ...input,
      saveId: randomUUID(),
      baseVersion: 1,
      changes: [{ kind: 'set', field: 'title', value: 'Another title' }],
    });
    expect(await publishLesson(bench, none, input)).toEqual({
      ok: false,
      fault: { code: 'draft-is-newer', version: 2 },
    });
    expect(await numbersOf(input.lessonId)).toEqual([]);
  });

  test('what blocks is told, and nothing is written', async () => {
    const input = await setUp(aContent({ title: '' }));
    const answer = await publishLesson(bench, none, input);
    expect(answer.ok ? [] : answer.fault.code === 'something-missing' && answer.fault.blocks[0]?.code).toBe(
      'title-missing',
    );
    expect(await numbersOf(input.lessonId)).toEqual([]);
  });

  test('another workshop’s lesson is not found, and a used request id publishes nothing else', async () => {
    const mine = await setUp();
    const theirs = await setUp();
    const stray = await publishLesson(bench, none, { ...mine, lessonId: theirs.lessonId });
    expect(stray.ok ? null : stray.fault.code).toBe('not-found');
    await publishLesson(bench, none, mine);
    const again = await publishLesson(bench, none, { ...theirs, requestId: mine.requestId });
    expect(again.ok ? null : again.fault.code).toBe('request-id-taken');
  });

  test('a revision is never changed, not even by the database’s own words', async () => {
    const input = await setUp();
    await publishLesson(bench, none, input);
    await expect(
      db.$executeRaw`UPDATE "revision" SET "number" = 7 WHERE "id" = ${input.requestId}`,
    ).rejects.toThrow(/never changed/);
  });

  test('a recording that was replaced meanwhile stops it', async () => {
    const input = await setUp();
    const replaced: Recordings = {
      ...none,
      current: async () => ({
        id: 'gone',
        durationMs: 90_000,
        hasVideo: false,
        hasAudio: false,
        width: null,
        height: null,
        mediaType: 'audio/mp4',
        mediaKey: 'recordings/gone/playable.mp4',
        posterKey: null,
      }),
    };
    const answer = await publishLesson(bench, replaced, input);
    expect(answer.ok ? null : answer.fault.code).toBe('recording-changed');
  });
});

describe('correcting', () => {
  test('the next revision carries it, the draft locks it, the old one stays as it was', async () => {
    const input = await setUp();
    await publishLesson(bench, none, input);
    const correction = {
      ...emptyCorrection('co-1'),
      wrong: 'a square chain',
      right: 'a round chain',
      affects: 'everyone',
    };
    await saveDraft(bench, {
      ...input,
      saveId: randomUUID(),
      baseVersion: 1,
      changes: [
        { kind: 'put', list: 'corrections', item: correction },
        { kind: 'set', field: 'summary', value: 'A round chain.' },
      ],
    });
    const second = await publishLesson(bench, none, { ...input, requestId: randomUUID(), version: 2 });
    expect(second).toEqual({ ok: true, value: { number: 2, version: 3 } });

    const at = { workshop: input.workshop.slug, lesson: input.lessonSlug, held: 1 };
    const latest = await readLessonPage(db, { ...at, number: null });
    expect(latest?.revision.content.corrections).toEqual([{ ...correction, revision: 2 }]);
    expect(latest?.held?.number).toBe(1);
    expect(latest?.history[0]?.changes?.map(({ part }) => part)).toEqual(['corrections', 'summary']);
    const first = await readLessonPage(db, { ...at, number: 1 });
    expect([first?.latest, first?.revision.number, first?.revision.content.corrections]).toEqual([2, 1, []]);
    expect(await readLessonPage(db, { ...at, number: 3 })).toBeNull();

    const draft = await db.lesson.findUniqueOrThrow({ where: { id: input.lessonId } });
    expect(draft.version).toBe(3);
    expect(draft.content).toMatchObject({ corrections: [{ id: 'co-1', revision: 2 }] });
  });

  test('a lesson that was never published is public nowhere', async () => {
    const input = await setUp();
    expect(
      await readLessonPage(db, {
        workshop: input.workshop.slug,
        lesson: input.lessonSlug,
        number: null,
        held: null,
      }),
    ).toBeNull();
  });
});
