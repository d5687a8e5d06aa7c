/**
 * What an attempt at ingesting writes. Every write names the attempt: one that
 * was cancelled, or whose job was given to another worker, changes nothing.
 */
import { type Content, content } from '#lib/lesson/content.ts';
import type { RecordingFacts } from '#lib/recording/facts.ts';
import type { RecordingFault } from '#lib/recording/fault.ts';
import type { Span } from '#lib/time/time.ts';
import { addComparison } from './comparisons.ts';
import type { Database, Queries } from './database.ts';
import { Prisma } from './generated/client.ts';

/** An attempt that owns a recording's row. */
export interface Claim {
  readonly recordingId: string;
  readonly attempt: string;
}

/** Takes a recording for this attempt; null where there is nothing to ingest (any more). */
export async function claimRecording(
  db: Database,
  { recordingId, attempt }: Claim,
): Promise<{ sizeBytes: number; originalKey: string | null; failures: number } | null> {
  const [row] = await db.recording.updateManyAndReturn({
    where: { id: recordingId, state: { in: ['waiting', 'ingesting'] } },
    data: { state: 'ingesting', attempt, step: null, percent: 0, fault: Prisma.DbNull },
    select: { sizeBytes: true, originalKey: true, failures: true },
  });
  return row ? { ...row, sizeBytes: Number(row.sizeBytes) } : null;
}

const own = ({ recordingId, attempt }: Claim) => ({ id: recordingId, attempt, state: 'ingesting' }) as const;

/** @returns false where the attempt no longer owns the recording. */
export async function noteProgress(
  db: Database,
  claim: Claim,
  progress: { step: string; percent: number },
): Promise<boolean> {
  return (await db.recording.updateMany({ where: own(claim), data: progress })).count > 0;
}

/** Notes where the original lies, once it does. */
export async function noteOriginal(db: Database, claim: Claim, originalKey: string): Promise<void> {
  await db.recording.updateMany({ where: own(claim), data: { originalKey } });
}

/** Ends an attempt with the reason why the recording is not taken. */
export async function refuseRecording(db: Database, claim: Claim, fault: RecordingFault): Promise<void> {
  await db.recording.updateMany({ where: own(claim), data: { state: 'refused', step: null, fault } });
}

/** Hands a recording back to the queue's next attempt; one that failed by itself is counted. */
export async function releaseRecording(db: Database, claim: Claim, failedByItself: boolean): Promise<void> {
  await db.recording.updateMany({
    where: own(claim),
    data: {
      state: 'waiting',
      attempt: null,
      step: null,
      percent: 0,
      ...(failedByItself ? { failures: { increment: 1 } } : {}),
    },
  });
}

/** What was made of a recording; all of it is stored already. */
export interface Ingested {
  readonly facts: RecordingFacts;
  readonly sha256: string;
  readonly playableKey: string;
  readonly poster: { readonly key: string; readonly atMs: number } | null;
  readonly peaksKey: string | null;
  readonly pauses: readonly Span[];
  readonly loudnessLufs: number | null;
}

/**
 * Ends an attempt with success, and makes the recording its lesson's own
 * unless a younger one already is. Where the lesson has words at times of the
 * recording that it has, the two are to be compared first.
 * @returns false where the attempt no longer owns the recording.
 */
export async function finishRecording(db: Database, claim: Claim, made: Ingested): Promise<boolean> {
  return db.$transaction(async (within) => {
    const [row] = await within.recording.updateManyAndReturn({
      where: own(claim),
      data: {
        state: 'ready',
        step: null,
        percent: 100,
        facts: made.facts,
        sha256: made.sha256,
        playableKey: made.playableKey,
        posterKey: made.poster?.key ?? null,
        posterAtMs: made.poster?.atMs ?? null,
        peaksKey: made.peaksKey,
        pauses: made.pauses.map(({ startMs, endMs }) => [startMs, endMs]),
        loudnessLufs: made.loudnessLufs,
      },
      select: { lessonId: true, createdAt: true },
    });
    if (!row) return false;
    if (made.poster) {
      const still = { recordingId: claim.recordingId, atMs: made.poster.atMs, storageKey: made.poster.key };
      await within.still.createMany({ data: [still], skipDuplicates: true });
    }
    const lesson = await within.lesson.findUnique({
      where: { id: row.lessonId },
      select: { recordingId: true },
    });
    const younger = lesson?.recordingId
      ? await within.recording.count({ where: { id: lesson.recordingId, createdAt: { gt: row.createdAt } } })
      : 0;
    if (younger > 0) return true;
    if (lesson?.recordingId && (await isToCompare(within, row.lessonId, lesson.recordingId, made))) {
      // What was written stands at times of the old recording: a person decides, with the sounds compared.
      await addComparison(within, {
        id: claim.attempt,
        lessonId: row.lessonId,
        oldRecordingId: lesson.recordingId,
        newRecordingId: claim.recordingId,
      });
      return true;
    }
    await within.lesson.update({ where: { id: row.lessonId }, data: { recordingId: claim.recordingId } });
    return true;
  });
}

/** Whether anything of the lesson stands at a time of its recording, and both have sound to compare. */
async function isToCompare(
  db: Queries,
  lessonId: string,
  oldRecordingId: string,
  made: Ingested,
): Promise<boolean> {
  const old = await db.recording.findUnique({ where: { id: oldRecordingId }, select: { peaksKey: true } });
  if (!old?.peaksKey || !made.peaksKey) return false;
  if ((await db.cue.count({ where: { lessonId } })) > 0) return true;
  const lesson = await db.lesson.findUnique({ where: { id: lessonId }, select: { content: true } });
  return lesson !== null && hasMoments(content.parse(lesson.content));
}

const hasMoments = ({ chapters, start, repeat, finishing, steps, corrections }: Content): boolean =>
  chapters.length > 0 ||
  [...start, ...repeat, ...finishing, ...steps].some(({ atMs }) => atMs !== null) ||
  corrections.some(({ startMs }) => startMs !== null);
