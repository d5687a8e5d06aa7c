/** Uploads in the database: recordings whose bytes are still coming, and what becomes of them. */
import type { Queries } from './database.ts';
import type { RecordingState } from './generated/client.ts';

/** An upload, with whose it is: of a recording, or of a portable copy. */
export interface UploadRow {
  readonly of: 'recording' | 'copy';
  readonly id: string;
  readonly isReceiving: boolean;
  readonly sizeBytes: number;
  readonly workshopSlug: string;
  readonly createdAt: Date;
}

export const findUpload = async (db: Queries, id: string): Promise<UploadRow | null> =>
  (await findRecordingUpload(db, id)) ?? (await findCopyUpload(db, id));

async function findCopyUpload(db: Queries, id: string): Promise<UploadRow | null> {
  const row = await db.portableCopy.findUnique({
    where: { id },
    select: { state: true, sizeBytes: true, createdAt: true, workshop: { select: { slug: true } } },
  });
  return (
    row && {
      of: 'copy',
      id,
      isReceiving: row.state === 'receiving',
      sizeBytes: Number(row.sizeBytes),
      workshopSlug: row.workshop.slug,
      createdAt: row.createdAt,
    }
  );
}

async function findRecordingUpload(db: Queries, recordingId: string): Promise<UploadRow | null> {
  const row = await db.recording.findUnique({
    where: { id: recordingId },
    select: {
      state: true,
      sizeBytes: true,
      createdAt: true,
      lesson: { select: { workshop: { select: { slug: true } } } },
    },
  });
  return (
    row && {
      of: 'recording',
      id: recordingId,
      isReceiving: row.state === 'receiving',
      sizeBytes: Number(row.sizeBytes),
      workshopSlug: row.lesson.workshop.slug,
      createdAt: row.createdAt,
    }
  );
}

export async function addUpload(
  db: Queries,
  upload: { recordingId: string; lessonId: string; name: string; sizeBytes: number; createdAt: Date },
): Promise<void> {
  await db.recording.create({
    data: {
      id: upload.recordingId,
      lessonId: upload.lessonId,
      originalName: upload.name,
      sizeBytes: upload.sizeBytes,
      createdAt: upload.createdAt,
    },
  });
}

/** Forgets an upload whose bytes never all came; one that is complete stays. */
export async function dropUpload(db: Queries, recordingId: string): Promise<void> {
  await db.recording.deleteMany({ where: { id: recordingId, state: 'receiving' } });
}

/**
 * Moves a recording from one of some states to another.
 * @returns false where it is in none of them.
 */
export async function moveRecording(
  db: Queries,
  recordingId: string,
  from: readonly RecordingState[],
  to: RecordingState,
): Promise<boolean> {
  const moved = await db.recording.updateMany({
    where: { id: recordingId, state: { in: [...from] } },
    data: { state: to, step: null, percent: 0, attempt: null, failures: 0 },
  });
  return moved.count > 0;
}

/** Recordings in some states, oldest first. */
export async function recordingsInState(
  db: Queries,
  states: readonly RecordingState[],
): Promise<readonly { readonly id: string; readonly sizeBytes: number; readonly createdAt: Date }[]> {
  const rows = await db.recording.findMany({
    where: { state: { in: [...states] } },
    select: { id: true, sizeBytes: true, createdAt: true },
    orderBy: { createdAt: 'asc' },
  });
  return rows.map((row) => ({ ...row, sizeBytes: Number(row.sizeBytes) }));
}

/** Forgets a recording that was not taken in. @returns the original's key, if it has one; null where there is no such recording. */
export async function forgetRecording(
  db: Queries,
  lessonId: string,
  recordingId: string,
): Promise<{ readonly originalKey: string | null } | null> {
  const where = {
    id: recordingId,
    lessonId,
    state: { in: ['refused', 'cancelled'] satisfies RecordingState[] },
  };
  const row = await db.recording.findFirst({ where, select: { originalKey: true } });
  if (!row || (await db.recording.deleteMany({ where })).count === 0) return null;
  return row;
}
