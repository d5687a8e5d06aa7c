/** A lesson as its workshop's members reach it; lessons of other workshops are not found. */
import type { Membership } from '#lib/access/caller.ts';
import { type Database, database } from '#lib/data/database.ts';

export interface OpenLesson {
  readonly id: string;
  readonly slug: string;
  readonly title: string;
  /** The draft's version. */
  readonly version: number;
  /** The recording that pupils see, or null. */
  readonly recordingId: string | null;
  /** Number of the latest revision, or null where nothing is published. */
  readonly published: number | null;
}

/** The lesson with this id if it belongs to the membership's workshop, else null. */
export async function openLesson(
  { workshop }: Membership,
  lessonId: string,
  db: Database = database(),
): Promise<OpenLesson | null> {
  const rows = await db.$queryRaw<OpenLesson[]>`
    SELECT "id", "slug", "version", "recordingId",
      COALESCE("content"->>'title', '') AS "title",
      (SELECT max("number") FROM "revision" WHERE "lessonId" = "lesson"."id") AS "published"
    FROM "lesson" WHERE "id" = ${lessonId} AND "workshopId" = ${workshop.id}`;
  return rows[0] ?? null;
}
