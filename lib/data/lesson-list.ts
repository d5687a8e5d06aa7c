/** The lessons of a workshop as its members see them in a list. */
import { z } from 'zod';
import type { Queries } from './database.ts';

export interface ListedLesson {
  readonly id: string;
  readonly slug: string;
  readonly title: string;
  readonly changedAt: Date;
  /** Latest revision, or null where nothing is published. */
  readonly published: { readonly number: number; readonly at: Date } | null;
  /** Whether the draft was changed after that revision. */
  readonly changedSince: boolean;
  /** What deleting the lesson would lose. */
  readonly holds: {
    readonly cues: number;
    readonly chapters: number;
    readonly recordings: number;
    readonly revisions: number;
    readonly corrections: number;
    /** Batches of kits that were recorded, and how many kits they are. */
    readonly batches: number;
    readonly kits: number;
    /** What pupils reported, and how much of it waits for an answer. */
    readonly reports: number;
    readonly reportsOpen: number;
  };
}

const row = z.object({
  id: z.string(),
  slug: z.string(),
  title: z.string(),
  changedAt: z.date(),
  number: z.number().nullable(),
  publishedAt: z.date().nullable(),
  changedSince: z.boolean(),
  cues: z.number(),
  chapters: z.number(),
  recordings: z.number(),
  revisions: z.number(),
  corrections: z.number(),
  batches: z.number(),
  kits: z.number(),
  reports: z.number(),
  reportsOpen: z.number(),
});

/**
 * All lessons of a workshop, the last changed first. The save by which a
 * publication numbers its corrections bears the revision's own id, and is no
 * change since.
 */
export async function findLessons(db: Queries, workshopId: string): Promise<readonly ListedLesson[]> {
  const rows: unknown[] = await db.$queryRaw`
    SELECT l."id", l."slug", COALESCE(l."content"->>'title', '') AS "title", l."updatedAt" AS "changedAt",
      latest."number", latest."publishedAt",
      COALESCE(latest."document"->'recording'->>'id' IS DISTINCT FROM l."recordingId"
        OR EXISTS (SELECT 1 FROM "draft_save" s WHERE s."lessonId" = l."id"
          AND s."createdAt" > latest."publishedAt" AND s."id" <> latest."id"), false) AS "changedSince",
      (SELECT count(*)::int FROM "cue" WHERE "lessonId" = l."id") AS "cues",
      jsonb_array_length(COALESCE(l."content"->'chapters', '[]')) AS "chapters",
      (SELECT count(*)::int FROM "recording" WHERE "lessonId" = l."id" AND "state" <> 'cancelled') AS "recordings",
      (SELECT count(*)::int FROM "revision" WHERE "lessonId" = l."id") AS "revisions",
      jsonb_array_length(COALESCE(l."content"->'corrections', '[]')) AS "corrections",
      (SELECT count(*)::int FROM "kit_batch" WHERE "lessonId" = l."id") AS "batches",
      (SELECT COALESCE(sum((kit->>'times')::int), 0)::int FROM "kit_batch" b, jsonb_array_elements(b."kits") kit
        WHERE b."lessonId" = l."id") AS "kits",
      (SELECT count(*)::int FROM "report" WHERE "lessonId" = l."id") AS "reports",
      (SELECT count(*)::int FROM "report" WHERE "lessonId" = l."id" AND "settledAt" IS NULL) AS "reportsOpen"
    FROM "lesson" l
    LEFT JOIN LATERAL (
      SELECT "id", "number", "publishedAt", "document" FROM "revision" WHERE "lessonId" = l."id" ORDER BY "number" DESC LIMIT 1
    ) latest ON true
    WHERE l."workshopId" = ${workshopId}
    ORDER BY l."updatedAt" DESC, l."id"`;
  return z.array(row).parse(rows).map(toListed);
}

function toListed(found: z.infer<typeof row>): ListedLesson {
  const { id, slug, title, changedAt, number, publishedAt, changedSince, ...holds } = found;
  const published = number === null || publishedAt === null ? null : { number, at: publishedAt };
  return {
    id,
    slug,
    title,
    changedAt,
    published,
    changedSince: published !== null && changedSince,
    holds,
  };
}
