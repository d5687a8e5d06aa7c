/** Queries of lessons and their drafts: rows in, core types out. */
import { z } from 'zod';
import { type Change, type Draft, keysOf } from '#lib/lesson/change.ts';
import { type Content, content } from '#lib/lesson/content.ts';
import { CUE_TIMINGS, type Cue, compareCues } from '#lib/transcript/cue.ts';
import type { Database, Queries } from './database.ts';

/** Where a lesson stands: its id alone says nothing about whose it is. */
export interface LessonAddress {
  readonly workshopId: string;
  readonly lessonId: string;
}

/** A draft with the version that a save of it must name. */
export interface VersionedDraft extends Draft {
  readonly version: number;
}

/** One acknowledged save, as told to whoever comes after it. */
export interface PastSave {
  readonly version: number;
  readonly keys: readonly string[];
  readonly userId: string;
  readonly userName: string;
  readonly at: Date;
}

const cueFields = { id: true, startMs: true, endMs: true, text: true, settings: true, timing: true } as const;
const cueTiming = z.enum(CUE_TIMINGS);

/** The content, cues and version of a lesson as they stood together at one moment; null where there is no such lesson. */
export async function findDraft(db: Database, at: LessonAddress): Promise<VersionedDraft | null> {
  return db.$transaction((tx) => readDraft(tx, at), { isolationLevel: 'RepeatableRead' });
}

/** As `findDraft`, inside a transaction that the caller holds. */
export async function readDraft(tx: Queries, at: LessonAddress): Promise<VersionedDraft | null> {
  const lesson = await tx.lesson.findFirst({
    where: { id: at.lessonId, workshopId: at.workshopId },
    select: { content: true, version: true },
  });
  if (!lesson) return null;
  const rows = await tx.cue.findMany({
    where: { lessonId: at.lessonId },
    select: cueFields,
    orderBy: { startMs: 'asc' },
  });
  const cues = rows.map(
    ({ timing, ...rest }): Cue => (timing === null ? rest : { ...rest, timing: cueTiming.parse(timing) }),
  );
  // Sorted again by the core's rule: a database may compare ids by its own locale.
  return { version: lesson.version, content: content.parse(lesson.content), cues: cues.sort(compareCues) };
}

/**
 * Takes the lesson's row for the rest of the transaction: whoever else wants
 * to save waits here. Null where there is no such lesson in the workshop.
 */
export async function lockLesson(
  tx: Queries,
  at: LessonAddress,
): Promise<{ readonly version: number; readonly content: Content } | null> {
  const rows = await tx.$queryRaw<{ version: number; content: unknown }[]>`
    SELECT "version", "content" FROM "lesson"
    WHERE "id" = ${at.lessonId} AND "workshopId" = ${at.workshopId}
    FOR UPDATE`;
  const row = rows[0];
  return row ? { version: row.version, content: content.parse(row.content) } : null;
}

/** An earlier save with this id, whatever lesson it was of. */
export const findSave = (
  tx: Queries,
  saveId: string,
): Promise<{ readonly lessonId: string; readonly version: number } | null> =>
  tx.draftSave.findUnique({ where: { id: saveId }, select: { lessonId: true, version: true } });

/** Saves after a version, oldest first. */
export async function savesSince(
  tx: Queries,
  lessonId: string,
  version: number,
): Promise<readonly PastSave[]> {
  const saves = await tx.draftSave.findMany({
    where: { lessonId, version: { gt: version } },
    orderBy: { version: 'asc' },
  });
  const users = await tx.user.findMany({
    where: { id: { in: [...new Set(saves.map((save) => save.userId))] } },
    select: { id: true, name: true },
  });
  const names = new Map(users.map((user) => [user.id, user.name]));
  return saves.map((save) => ({
    version: save.version,
    keys: Array.isArray(save.keys) ? save.keys.map(String) : [],
    userId: save.userId,
    userName: names.get(save.userId) ?? '',
    at: save.createdAt,
  }));
}

/** What a save writes. */
export interface DraftWrite {
  readonly lessonId: string;
  /** The new version. */
  readonly version: number;
  readonly content: Content;
  /** Cues that the save adds or replaces, one per id. */
  readonly put: readonly Cue[];
  /** Ids of cues that it takes away. */
  readonly remove: readonly string[];
  readonly changes: readonly Change[];
  readonly saveId: string;
  readonly userId: string;
  readonly at: Date;
}

/** Writes a save whole: content, cues in two statements whatever their number, and its record. */
export async function writeDraft(tx: Queries, write: DraftWrite): Promise<void> {
  await tx.lesson.update({
    where: { id: write.lessonId },
    data: { content: write.content, version: write.version, updatedAt: write.at },
  });
  if (write.remove.length > 0) {
    await tx.$executeRaw`
      DELETE FROM "cue" WHERE "lessonId" = ${write.lessonId} AND "id" = ANY(${[...write.remove]}::text[])`;
  }
  if (write.put.length > 0) {
    await tx.$executeRaw`
      INSERT INTO "cue" ("lessonId", "id", "startMs", "endMs", "text", "settings", "timing")
      SELECT ${write.lessonId}, * FROM unnest(
        ${write.put.map((c) => c.id)}::text[],
        ${write.put.map((c) => c.startMs)}::int[],
        ${write.put.map((c) => c.endMs)}::int[],
        ${write.put.map((c) => c.text)}::text[],
        ${write.put.map((c) => c.settings)}::text[],
        ${write.put.map((c) => c.timing ?? null)}::text[])
      ON CONFLICT ("lessonId", "id") DO UPDATE SET
        "startMs" = EXCLUDED."startMs", "endMs" = EXCLUDED."endMs",
        "text" = EXCLUDED."text", "settings" = EXCLUDED."settings", "timing" = EXCLUDED."timing"`;
  }
  await tx.draftSave.create({
    data: {
      id: write.saveId,
      lessonId: write.lessonId,
      version: write.version,
      userId: write.userId,
      keys: [...new Set(write.changes.flatMap((made) => keysOf(made)))],
      createdAt: write.at,
    },
  });
}

/** How many cues a lesson has besides those named. */
export async function countOtherCues(tx: Queries, lessonId: string, ids: readonly string[]): Promise<number> {
  const rows = await tx.$queryRaw<{ count: number }[]>`
    SELECT count(*)::int AS "count" FROM "cue"
    WHERE "lessonId" = ${lessonId} AND "id" <> ALL(${[...ids]}::text[])`;
  return rows[0]?.count ?? 0;
}
