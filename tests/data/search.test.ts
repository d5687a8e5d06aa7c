import { randomUUID } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import type { Bench } from '#lib/bench/bench.ts';
import { publishLesson, type Recordings } from '#lib/bench/publish-lesson.ts';
import { saveDraft } from '#lib/bench/save-draft.ts';
import { type Findings, searchDrafts, searchPublished } from '#lib/bench/search-lessons.ts';
import { habitsOf } from '#lib/chapters/habits.ts';
import { findChapterBeginnings } from '#lib/data/chapter-beginnings.ts';
import type { Change } from '#lib/lesson/change.ts';
import { emptyContent } from '#lib/lesson/content.ts';
import type { Cue } from '#lib/transcript/cue.ts';
import { aContent } from '#tests/support/a-content.ts';
import { aLesson, type LessonRows } from '#tests/support/a-lesson.ts';
import { testDatabase } from '#tests/support/database.ts';

const { db } = await testDatabase();
const bench: Bench = { db, now: () => new Date('2026-05-01T08:00:00Z'), newId: randomUUID };
const none: Recordings = {
  current: async () => null,
  takeStill: async () => null,
  makeLater: async () => {},
};

const said = (...texts: string[]): Cue[] =>
  texts.map((text, at) => ({
    id: `cue-${at}`,
    startMs: at * 3_000,
    endMs: at * 3_000 + 2_500,
    text,
    settings: '',
  }));

async function aToldLesson(cues: Cue[]): Promise<LessonRows & { slug: string }> {
  const rows = await aLesson(db, { content: aContent() });
  await save(rows, 1, [{ kind: 'cues', put: cues, remove: [] }]);
  return { ...rows, slug: `w-${rows.workshopId}` };
}

async function save(rows: LessonRows, baseVersion: number, changes: Change[]): Promise<void> {
  const saved = await saveDraft(bench, { ...rows, saveId: randomUUID(), baseVersion, changes });
  if (!saved.ok) throw new Error(saved.fault.code);
}

async function publish(rows: LessonRows & { slug: string }, version: number): Promise<void> {
  const workshop = { name: 'Kettle Row Rings', slug: rows.slug };
  const answer = await publishLesson(bench, none, { ...rows, requestId: randomUUID(), version, workshop });
  if (!answer.ok) throw new Error(answer.fault.code);
}

const placesIn = ({ lessons }: Findings) =>
  lessons.flatMap(({ passages }) => passages.map(({ kind, startMs, text }) => [kind, startMs, text]));

describe('search of drafts', () => {
  test('leads to the second, by any form of a word, over the edge of a cue', async () => {
    const lesson = await aToldLesson(said('Open the small', 'rings sideways.', 'Now close them.'));
    expect(placesIn(await searchDrafts(db, lesson.workshopId, 'small ring'))).toEqual([
      ['cue', 0, 'Open the small rings sideways.'],
    ]);
    expect(placesIn(await searchDrafts(db, lesson.workshopId, 'CLOSING'))).toEqual([
      ['cue', 6_000, 'Now close them.'],
    ]);
    expect(placesIn(await searchDrafts(db, lesson.workshopId, 'clasp'))).toEqual([]);
  });

  test('finds titles of chapters, and stays within the workshop', async () => {
    const lesson = await aToldLesson(said('Fold the pair.'));
    const other = await aToldLesson(said('Fold the pair.'));
    await save(lesson, 2, [
      {
        kind: 'put',
        list: 'chapters',
        item: { id: 'c', kind: 'repeat unit', title: 'Folding back', startMs: 0 },
      },
    ]);
    const found = await searchDrafts(db, lesson.workshopId, 'fold');
    expect(placesIn(found)).toEqual([
      ['chapter', 0, 'Folding back'],
      ['cue', 0, 'Fold the pair.'],
    ]);
    expect(found.lessons.map(({ id }) => id)).toEqual([lesson.lessonId]);
    expect((await searchDrafts(db, other.workshopId, 'fold')).lessons.map(({ id }) => id)).toEqual([
      other.lessonId,
    ]);
  });

  test.each(["'", '\\', "a' | 'b", '!!! & (', ':*', 'the', '', '%', '\u0000', '💍', 'x'.repeat(5_000)])(
    'whatever is typed is answered: %j',
    async (typed) => {
      const lesson = await aToldLesson(said('Open the ring.'));
      expect((await searchDrafts(db, lesson.workshopId, typed)).lessons).toEqual([]);
      expect((await searchPublished(db, lesson.slug, typed)).lessons).toEqual([]);
    },
  );

  test('a word that stands in every sentence asks for nothing beside one that names something', async () => {
    const lesson = await aToldLesson(said('Four in one.'));
    expect((await searchDrafts(db, lesson.workshopId, 'the')).findable).toBe(false);
    expect(placesIn(await searchDrafts(db, lesson.workshopId, 'four in one'))).toHaveLength(1);
  });
});

describe('search of what is published', () => {
  test('never sees a draft, nor what a revision said before the latest', async () => {
    const lesson = await aToldLesson(said('Use the brass clasp.'));
    expect(placesIn(await searchPublished(db, lesson.slug, 'brass'))).toEqual([]);
    await publish(lesson, 2);
    expect(placesIn(await searchPublished(db, lesson.slug, 'brass'))).toEqual([
      ['cue', 0, 'Use the brass clasp.'],
    ]);

    await save(lesson, 2, [{ kind: 'cues', put: said('Use the copper hook.'), remove: [] }]);
    expect(placesIn(await searchPublished(db, lesson.slug, 'copper'))).toEqual([]);
    expect(placesIn(await searchPublished(db, lesson.slug, 'brass'))).toHaveLength(1);

    await publish(lesson, 3);
    expect(placesIn(await searchPublished(db, lesson.slug, 'copper'))).toHaveLength(1);
    expect(placesIn(await searchPublished(db, lesson.slug, 'brass'))).toEqual([]);
  });

  test('a deleted lesson is found no more', async () => {
    const lesson = await aToldLesson(said('Use the brass clasp.'));
    await publish(lesson, 2);
    await db.lesson.delete({ where: { id: lesson.lessonId } });
    expect(placesIn(await searchPublished(db, lesson.slug, 'brass'))).toEqual([]);
  });
});

test('habits are learned from the other lessons of the workshop alone', async () => {
  const chapters = [0, 3_000, 6_000].map((startMs, at) => ({
    id: `c${at}`,
    kind: 'setup' as const,
    title: '',
    startMs,
  }));
  const lesson = await aLesson(db, { content: aContent({ chapters }) });
  const cues = said('Hello.', 'Hands up, close it.', 'Hands up, open it.');
  await save(lesson, 1, [{ kind: 'cues', put: cues, remove: [] }]);
  const fresh = randomUUID();
  await db.lesson.create({
    data: {
      id: fresh,
      workshopId: lesson.workshopId,
      slug: fresh,
      content: emptyContent('New', 'en', 'EUR'),
    },
  });
  const habits = habitsOf(
    await findChapterBeginnings(db, { workshopId: lesson.workshopId, lessonId: fresh }),
  );
  expect(habits.chapters).toBe(2);
  expect(habits.openings.get('hands up')).toBe(2);
  expect(habits.openings.has('hello')).toBe(false);
  expect(await findChapterBeginnings(db, lesson)).toEqual([]);
});
