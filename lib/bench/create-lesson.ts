/** Begins a lesson: a title, and nothing said yet. */
import { z } from 'zod';
import type { Membership } from '#lib/access/caller.ts';
import { takenLessonSlugs } from '#lib/data/ended-lessons.ts';
import { emptyContent } from '#lib/lesson/content.ts';
import { freeSlug, slugOf } from '#lib/lesson/slug.ts';
import type { Bench } from './bench.ts';
import { retryOnTakenSlug } from './create-workshop.ts';

export const lessonTitle = z.string().trim().min(1).max(300);

/** The new lesson's id. Language and currency are the workshop's. */
export async function createLesson(
  { db, now, newId }: Bench,
  { workshop }: Membership,
  { title }: { readonly title: string },
): Promise<string> {
  const id = newId();
  const wanted = slugOf(title, 'lesson');
  const content = emptyContent(title, workshop.language, workshop.currency);
  await retryOnTakenSlug(async () => {
    const slug = freeSlug(wanted, await takenLessonSlugs(db, workshop.id, wanted));
    const at = now();
    await db.lesson.create({
      data: { id, workshopId: workshop.id, slug, content, createdAt: at, updatedAt: at },
    });
  });
  return id;
}
