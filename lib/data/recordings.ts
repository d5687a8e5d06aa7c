/** Recordings in the database: what is known of each, and the states it goes through. */
import { z } from 'zod';
import { type RecordingFacts, recordingFacts } from '#lib/recording/facts.ts';
import { type RecordingFault, recordingFault } from '#lib/recording/fault.ts';
import { momentMs, type Span } from '#lib/time/time.ts';
import type { Queries } from './database.ts';
import type { RecordingState, Recording as Row } from './generated/client.ts';

export type { RecordingState };

/** A recording as the bench shows it. */
export interface Recording {
  readonly id: string;
  readonly state: RecordingState;
  readonly name: string;
  readonly sizeBytes: number;
  /** The ingest step at work, and how far it is, 0 to 100. */
  readonly step: string | null;
  readonly percent: number;
  readonly fault: RecordingFault | null;
  readonly facts: RecordingFacts | null;
  readonly posterAtMs: number | null;
  readonly loudnessLufs: number | null;
  readonly createdAt: Date;
}

const pauseList = z.array(z.tuple([momentMs, momentMs]));

const COLUMNS = {
  id: true,
  state: true,
  originalName: true,
  sizeBytes: true,
  step: true,
  percent: true,
  fault: true,
  facts: true,
  posterAtMs: true,
  loudnessLufs: true,
  createdAt: true,
} as const;

const toRecording = (row: Pick<Row, keyof typeof COLUMNS>): Recording => ({
  id: row.id,
  state: row.state,
  name: row.originalName,
  sizeBytes: Number(row.sizeBytes),
  step: row.step,
  percent: row.percent,
  fault: row.fault === null ? null : recordingFault.parse(row.fault),
  facts: row.facts === null ? null : recordingFacts.parse(row.facts),
  posterAtMs: row.posterAtMs,
  loudnessLufs: row.loudnessLufs,
  createdAt: row.createdAt,
});

/** A lesson's recordings, newest first. */
export async function listRecordings(db: Queries, lessonId: string): Promise<readonly Recording[]> {
  const rows = await db.recording.findMany({
    where: { lessonId },
    select: COLUMNS,
    orderBy: [{ createdAt: 'desc' }, { id: 'asc' }],
    take: 100,
  });
  return rows.map(toRecording);
}

/** Which of a lesson's recordings pupils see, by its id; null where there is none, or no such lesson. */
export async function currentRecordingId(db: Queries, lessonId: string): Promise<string | null> {
  const lesson = await db.lesson.findUnique({ where: { id: lessonId }, select: { recordingId: true } });
  return lesson?.recordingId ?? null;
}

/** One recording of a lesson; null where the lesson has none with this id. */
export async function findRecording(
  db: Queries,
  lessonId: string,
  recordingId: string,
): Promise<Recording | null> {
  const row = await db.recording.findFirst({ where: { id: recordingId, lessonId }, select: COLUMNS });
  return row && toRecording(row);
}

/** The recording that a lesson's pupils see. */
export interface CurrentRecording {
  readonly id: string;
  readonly durationMs: number;
  readonly hasVideo: boolean;
  /** Size of the picture that is played, as it is seen; null without one. */
  readonly width: number | null;
  readonly height: number | null;
  /** Media type of what is played. */
  readonly type: RecordingFacts['playable']['type'];
  readonly pauses: readonly Span[];
  readonly posterAtMs: number | null;
  readonly loudnessLufs: number | null;
  /** Storage keys; null for what was not made. */
  readonly playableKey: string;
  readonly posterKey: string | null;
  readonly peaksKey: string | null;
}

/** A lesson's ready recording, or null where it has none yet. */
export async function currentRecording(db: Queries, lessonId: string): Promise<CurrentRecording | null> {
  const lesson = await db.lesson.findUnique({ where: { id: lessonId }, select: { recordingId: true } });
  if (!lesson?.recordingId) return null;
  return readyRecording(db, lessonId, lesson.recordingId);
}

/** A recording of a lesson that was taken in, be it the current one or a former; else null. */
export async function readyRecording(
  db: Queries,
  lessonId: string,
  recordingId: string,
): Promise<CurrentRecording | null> {
  const row = await db.recording.findFirst({ where: { id: recordingId, lessonId, state: 'ready' } });
  if (!row || row.facts === null || row.playableKey === null) return null;
  const facts = recordingFacts.parse(row.facts);
  return {
    id: row.id,
    durationMs: facts.durationMs,
    hasVideo: facts.video !== null,
    width: facts.playable.width,
    height: facts.playable.height,
    type: facts.playable.type,
    pauses: pauseList.parse(row.pauses ?? []).map(([startMs, endMs]) => ({ startMs, endMs })),
    posterAtMs: row.posterAtMs,
    loudnessLufs: row.loudnessLufs,
    playableKey: row.playableKey,
    posterKey: row.posterKey,
    peaksKey: row.peaksKey,
  };
}

/** Makes a stored still the picture that stands for a recording. */
export async function setPoster(
  db: Queries,
  recordingId: string,
  poster: { readonly key: string; readonly atMs: number },
): Promise<void> {
  await db.recording.updateMany({
    where: { id: recordingId, state: 'ready' },
    data: { posterKey: poster.key, posterAtMs: poster.atMs },
  });
}

/** Storage key of a recording's file as it was brought in; null where it is not there any more. */
export async function originalOf(db: Queries, recordingId: string): Promise<string | null> {
  const row = await db.recording.findUnique({ where: { id: recordingId }, select: { originalKey: true } });
  return row?.originalKey ?? null;
}
