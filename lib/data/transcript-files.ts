/** Transcript files as they were brought in: kept whole, with what was made of them. */
import { z } from 'zod';
import { type Loss, loss } from '#lib/transcript/loss.ts';
import type { Queries } from './database.ts';

export interface TranscriptFile {
  readonly id: string;
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** A file as a list shows it. */
export interface ListedTranscriptFile {
  readonly id: string;
  readonly name: string;
  readonly sizeBytes: number;
  /** Empty where it could not be read, or not yet. */
  readonly format: string;
  readonly encoding: string;
  readonly losses: readonly Loss[];
  readonly createdAt: Date;
}

/** Keeps a file before anything is known of it. */
export async function addTranscriptFile(
  db: Queries,
  file: TranscriptFile & { readonly lessonId: string; readonly at: Date },
): Promise<void> {
  await db.transcriptFile.create({
    data: {
      id: file.id,
      lessonId: file.lessonId,
      name: file.name,
      bytes: Uint8Array.from(file.bytes),
      format: '',
      encoding: '',
      losses: [],
      createdAt: file.at,
    },
  });
}

/** Writes down as what a file was read. */
export async function noteTranscriptReading(
  db: Queries,
  id: string,
  reading: { readonly format: string; readonly encoding: string; readonly losses: readonly Loss[] },
): Promise<void> {
  await db.transcriptFile.update({ where: { id }, data: { ...reading, losses: [...reading.losses] } });
}

/** A file of a lesson with its bytes; null where the lesson has none with that id. */
export const findTranscriptFile = (
  db: Queries,
  lessonId: string,
  id: string,
): Promise<TranscriptFile | null> =>
  db.transcriptFile.findFirst({ where: { id, lessonId }, select: { id: true, name: true, bytes: true } });

/** A lesson's files, newest first, without their bytes. */
export async function listTranscriptFiles(
  db: Queries,
  lessonId: string,
): Promise<readonly ListedTranscriptFile[]> {
  const rows = await db.$queryRaw<(Omit<ListedTranscriptFile, 'losses'> & { losses: unknown })[]>`
    SELECT "id", "name", length("bytes") AS "sizeBytes", "format", "encoding", "losses", "createdAt"
    FROM "transcript_file" WHERE "lessonId" = ${lessonId} ORDER BY "createdAt" DESC, "id"`;
  return rows.map((row) => ({ ...row, losses: z.array(loss).parse(row.losses) }));
}
