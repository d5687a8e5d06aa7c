/**
 * Places the transcript of another lesson on a lesson's recording: both
 * recordings are compared by their sound, as a re-edited one is, and a person
 * looks at the pairing before anything is taken. The other lesson stays as it is.
 */
import { z } from 'zod';
import type { Membership } from '#lib/access/caller.ts';
import { addComparison, findComparison, openComparison } from '#lib/data/comparisons.ts';
import { findDraft, lockLesson } from '#lib/data/lessons.ts';
import { currentRecording } from '#lib/data/recordings.ts';
import type { Queue } from '#lib/jobs/queue.ts';
import type { Chapter } from '#lib/lesson/content.ts';
import { failed, ok, type Result } from '#lib/result.ts';
import type { Cue } from '#lib/transcript/cue.ts';
import type { Bench } from './bench.ts';
import { openLesson } from './open-lesson.ts';

/** What a browser sends: the id of the other lesson. */
export const placingRequest = z.object({ from: z.string().min(1).max(100) });

export type PlacingFault =
  | { readonly code: 'not-found' }
  /** One of the two has no recording that can be heard. */
  | { readonly code: 'no-sound' }
  /** A new recording of the lesson waits for a decision. */
  | { readonly code: 'decide-first' };

/** @returns the comparison's id. One that waits to be placed gives way to it. */
export async function beginPlacing(
  { db, newId }: Bench,
  queue: Pick<Queue, 'send'>,
  at: Membership,
  { lessonId, from }: { readonly lessonId: string; readonly from: string },
): Promise<Result<string, PlacingFault>> {
  const other = lessonId === from ? null : await openLesson(at, from, db);
  if (!other) return failed({ code: 'not-found' });
  return db.$transaction(async (tx): Promise<Result<string, PlacingFault>> => {
    if (!(await lockLesson(tx, { workshopId: at.workshop.id, lessonId })))
      return failed({ code: 'not-found' });
    const old = await currentRecording(tx, other.id);
    const own = await currentRecording(tx, lessonId);
    if (!old?.peaksKey || !own?.peaksKey) return failed({ code: 'no-sound' });
    const waiting = await openComparison(tx, lessonId);
    if (waiting && waiting.fromLessonId === null) return failed({ code: 'decide-first' });
    const id = newId();
    await addComparison(tx, { id, lessonId, oldRecordingId: old.id, newRecordingId: own.id });
    await queue.send('compare-recordings', { comparisonId: id }, tx);
    return ok(id);
  });
}

export interface OtherTranscript {
  readonly title: string;
  readonly cues: readonly Cue[];
  readonly chapters: readonly Chapter[];
}

/** What may be placed by a comparison, as the other lesson has it now; a fault where one of the recordings is another one by now. */
export async function readOtherTranscript(
  { db }: Pick<Bench, 'db'>,
  at: Membership,
  { lessonId, comparisonId }: { readonly lessonId: string; readonly comparisonId: string },
): Promise<Result<OtherTranscript, { readonly code: 'not-found' | 'list-not-valid' }>> {
  const own = await openLesson(at, lessonId, db);
  const comparison = own && (await findComparison(db, own.id, comparisonId));
  const other = comparison?.fromLessonId ? await openLesson(at, comparison.fromLessonId, db) : null;
  const draft = other && (await findDraft(db, { workshopId: at.workshop.id, lessonId: other.id }));
  if (!own || !comparison || !other || !draft) return failed({ code: 'not-found' });
  if (other.recordingId !== comparison.oldRecordingId || own.recordingId !== comparison.newRecordingId)
    return failed({ code: 'list-not-valid' });
  return ok({ title: other.title, cues: draft.cues, chapters: draft.content.chapters });
}
