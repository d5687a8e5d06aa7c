/** Rows that most tests of a lesson need; every name is invented. */
import { randomUUID } from 'node:crypto';
import type { Database } from '#lib/data/database.ts';
import { type Content, emptyContent } from '#lib/lesson/content.ts';
import type { Cue } from '#lib/transcript/cue.ts';

export interface LessonRows {
  readonly workshopId: string;
  readonly lessonId: string;
  readonly userId: string;
}

/** A workshop with one owner and one lesson, whose draft is at version 1. */
export async function aLesson(
  db: Database,
  { name = 'Ilo Verrand', content = {} }: { name?: string; content?: Partial<Content> } = {},
): Promise<LessonRows> {
  const workshopId = randomUUID();
  const lessonId = randomUUID();
  const userId = await aUser(db, name);
  await db.workshop.create({ data: { id: workshopId, slug: `w-${workshopId}`, name: 'Kettle Row Rings' } });
  await db.member.create({ data: { id: randomUUID(), workshopId, userId, role: 'owner' } });
  await db.lesson.create({
    data: {
      id: lessonId,
      workshopId,
      slug: `l-${lessonId}`,
      content: { ...emptyContent('Box chain in two colours', 'en', 'EUR'), ...content },
    },
  });
  return { workshopId, lessonId, userId };
}

export async function aUser(db: Database, name: string): Promise<string> {
  const id = randomUUID();
  await db.user.create({ data: { id, name, email: `${id}@example.org` } });
  return id;
}

/** Cues of two seconds each, a tenth of a second apart. */
export const someCues = (count: number, text = (at: number) => `Sentence ${at + 1}.`): Cue[] =>
  Array.from({ length: count }, (_, at) => ({
    id: `cue-${String(at).padStart(5, '0')}`,
    startMs: at * 2_100,
    endMs: at * 2_100 + 2_000,
    text: text(at),
    settings: '',
  }));
