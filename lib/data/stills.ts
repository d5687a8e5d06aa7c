/** Which stills of a recording exist. */
import type { Queries } from './database.ts';

/** The storage key of a still, or null where it was never taken. */
export async function findStill(db: Queries, recordingId: string, atMs: number): Promise<string | null> {
  const still = await db.still.findUnique({
    where: { recordingId_atMs: { recordingId, atMs } },
    select: { storageKey: true },
  });
  return still?.storageKey ?? null;
}

/** Notes a stored still; noting it twice changes nothing. */
export async function keepStill(
  db: Queries,
  recordingId: string,
  atMs: number,
  storageKey: string,
): Promise<void> {
  await db.still.createMany({ data: [{ recordingId, atMs, storageKey }], skipDuplicates: true });
}

/** The lesson that a recording belongs to, or null where there is no such recording. */
export async function lessonOfRecording(db: Queries, recordingId: string): Promise<string | null> {
  const row = await db.recording.findUnique({ where: { id: recordingId }, select: { lessonId: true } });
  return row?.lessonId ?? null;
}
