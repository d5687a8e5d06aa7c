/**
 * Puts a lesson's draft back to what it was, and its recording with it: one
 * transaction in which nobody else saves, published or not. What was published
 * meanwhile stays as it is.
 */
import { z } from 'zod';
import type { Queries } from '#lib/data/database.ts';
import { findSave, type LessonAddress, lockLesson, readDraft } from '#lib/data/lessons.ts';
import { readyRecording } from '#lib/data/recordings.ts';
import type { Change, Draft } from '#lib/lesson/change.ts';
import { failed, invariant, ok, type Result } from '#lib/result.ts';
import type { Bench } from './bench.ts';
import { saveDraftIn } from './save-draft.ts';

/** What a browser sends. */
export const putBackRequest = z.object({
  /** Made by the browser once for each wish; the same sent again is done once. */
  saveId: z.uuid(),
  /** Version of the draft that was on the screen. */
  version: z.int().min(1),
});

export interface PutBackInput extends LessonAddress, z.infer<typeof putBackRequest> {
  readonly userId: string;
}

export interface PutBack {
  /** Made on the draft, in order, they put it back. */
  readonly changes: readonly Change[];
  /** The recording whose times they are at; null where there was none: then the lesson keeps its own. */
  readonly recordingId: string | null;
  /** What is to be written with it. */
  readonly also?: () => Promise<void>;
}

export type PutBackFault =
  | { readonly code: 'not-found' }
  | { readonly code: 'draft-is-newer'; readonly version: number }
  | { readonly code: 'recording-gone' };

/**
 * @param plan what to put back, read in the transaction that holds the lesson; null where it stands there already
 * @returns the draft's version afterwards
 */
export const putDraftBack = <F>(
  bench: Bench,
  input: PutBackInput,
  plan: (tx: Queries, draft: Draft) => Promise<Result<PutBack | null, F>>,
): Promise<Result<{ readonly version: number }, F | PutBackFault>> =>
  bench.db.$transaction(async (tx): Promise<Result<{ readonly version: number }, F | PutBackFault>> => {
    // From here on every other save, publication and decision of this lesson waits.
    const lesson = await lockLesson(tx, input);
    const draft = lesson && (await readDraft(tx, input));
    if (!lesson || !draft) return failed({ code: 'not-found' });
    const earlier = await findSave(tx, input.saveId);
    if (earlier) return ok({ version: earlier.version });
    const planned = await plan(tx, draft);
    if (!planned.ok) return planned;
    let { version } = lesson;
    if (planned.value === null) return ok({ version });
    if (input.version !== version) return failed({ code: 'draft-is-newer', version });
    const { changes, recordingId, also } = planned.value;
    if (recordingId && !(await readyRecording(tx, input.lessonId, recordingId)))
      return failed({ code: 'recording-gone' });
    if (changes.length > 0) {
      const saved = await saveDraftIn(tx, bench.now(), {
        ...input,
        baseVersion: version,
        changes: [...changes],
      });
      invariant(saved.ok, 'what stood before can be saved');
      version = saved.value.version;
    }
    if (recordingId) await tx.lesson.update({ where: { id: input.lessonId }, data: { recordingId } });
    await also?.();
    return ok({ version });
  });
