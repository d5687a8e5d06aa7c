/**
 * Takes an accepted recording back: the lesson has its former one again, all
 * of the draft stands where it stood, and the comparison waits for another
 * decision. Revisions that were published meanwhile stay as they are.
 */
import { z } from 'zod';
import { acceptedComparison, findMove, openComparison, reopenComparison } from '#lib/data/comparisons.ts';
import { findSave, type LessonAddress, lockLesson, readDraft } from '#lib/data/lessons.ts';
import { readyRecording } from '#lib/data/recordings.ts';
import { failed, invariant, ok, type Result } from '#lib/result.ts';
import { takeBack } from '#lib/retiming/take-back.ts';
import type { Bench } from './bench.ts';
import { saveDraftIn } from './save-draft.ts';

/** What a browser sends. */
export const takeBackRequest = z.object({
  /** Made by the browser once for each wish; the same sent again is done once. */
  saveId: z.uuid(),
  /** Version of the draft that was on the screen. */
  version: z.int().min(1),
});

export interface TakeBackInput extends LessonAddress, z.infer<typeof takeBackRequest> {
  readonly comparisonId: string;
  readonly userId: string;
}

export type TakeBackFault =
  | { readonly code: 'not-found' }
  /** It is not the recording that the lesson has, or a newer one waits. */
  | { readonly code: 'not-the-latest' }
  | { readonly code: 'recording-gone' }
  | { readonly code: 'draft-is-newer'; readonly version: number };

/** @returns the draft's version afterwards. */
export const takeBackRecording = (
  bench: Bench,
  input: TakeBackInput,
): Promise<Result<{ readonly version: number }, TakeBackFault>> =>
  bench.db.$transaction(
    async (tx) => {
      // From here on every other save, publication and decision of this lesson waits.
      const lesson = await lockLesson(tx, input);
      const draft = lesson && (await readDraft(tx, input));
      if (!lesson || !draft) return failed({ code: 'not-found' });
      const earlier = await findSave(tx, input.saveId);
      if (earlier) return ok({ version: earlier.version });
      const accepted = await acceptedComparison(tx, input.lessonId);
      const waiting = await openComparison(tx, input.lessonId);
      // Taken back before, and the answer was lost.
      if (waiting?.id === input.comparisonId) return ok({ version: lesson.version });
      if (accepted?.id !== input.comparisonId || waiting) return failed({ code: 'not-the-latest' });
      if (input.version !== lesson.version)
        return failed({ code: 'draft-is-newer', version: lesson.version });
      const { oldRecordingId } = accepted;
      if (!(await readyRecording(tx, input.lessonId, oldRecordingId)))
        return failed({ code: 'recording-gone' });
      const move = await findMove(tx, accepted.id);
      const changes = move ? takeBack(draft, move).changes : [];
      let { version } = lesson;
      if (changes.length > 0) {
        const saved = await saveDraftIn(tx, bench.now(), {
          ...input,
          baseVersion: version,
          changes: [...changes],
        });
        invariant(saved.ok, 'what stood before can be saved');
        version = saved.value.version;
      }
      await tx.lesson.update({ where: { id: input.lessonId }, data: { recordingId: oldRecordingId } });
      await reopenComparison(tx, accepted);
      return ok({ version });
    },
    { maxWait: 10_000, timeout: 30_000 },
  );
