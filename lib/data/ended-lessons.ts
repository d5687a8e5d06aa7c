/** Published lessons that were deleted: what their addresses answer, and that nothing else gets them. */
import type { Queries } from './database.ts';

export interface EndedLesson {
  readonly title: string;
  readonly endedAt: Date;
  readonly workshop: { readonly name: string; readonly slug: string };
}

/** Null where no published lesson ever had this address, or one has it now. */
export const findEndedLesson = (
  db: Queries,
  workshopSlug: string,
  slug: string,
): Promise<EndedLesson | null> =>
  db.endedLesson.findFirst({
    where: { slug, workshop: { slug: workshopSlug } },
    select: { title: true, endedAt: true, workshop: { select: { name: true, slug: true } } },
  });

export async function noteEndedLesson(
  db: Queries,
  ended: {
    readonly workshopId: string;
    readonly slug: string;
    readonly title: string;
    readonly endedAt: Date;
  },
): Promise<void> {
  const { workshopId, slug, ...rest } = ended;
  await db.endedLesson.upsert({
    where: { workshopId_slug: { workshopId, slug } },
    create: ended,
    update: rest,
  });
}

/** Gives the address back to a lesson that returns from a copy, known by its title. */
export async function reviveEndedLesson(
  db: Queries,
  of: { readonly workshopId: string; readonly slug: string; readonly title: string },
): Promise<void> {
  await db.endedLesson.deleteMany({ where: of });
}

/** Slugs that begin like this and are not free: of lessons that are there, and of published ones that were. */
export async function takenLessonSlugs(
  db: Queries,
  workshopId: string,
  startsWith: string,
): Promise<readonly string[]> {
  const where = { workshopId, slug: { startsWith } };
  // In this order: a lesson that is deleted between the two is found by the second.
  const there = await db.lesson.findMany({ where, select: { slug: true } });
  const ended = await db.endedLesson.findMany({ where, select: { slug: true } });
  return [...there, ...ended].map(({ slug }) => slug);
}
