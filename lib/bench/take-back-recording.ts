/**
 * Takes an accepted recording back: the lesson has its former one again, all
 * of the draft stands where it stood, and the comparison waits for another
 * decision. Revisions that were published meanwhile stay as they are.
 */
import { acceptedComparison, findMove, openComparison, reopenComparison } from '#lib/data/comparisons.ts';
import { failed, ok, type Result } from '#lib/result.ts';
import { takeBack } from '#lib/retiming/take-back.ts';
import type { Bench } from './bench.ts';
import { type PutBackFault, type PutBackInput, putDraftBack } from './put-draft-back.ts';

export interface TakeBackInput extends PutBackInput {
  readonly comparisonId: string;
}

export type TakeBackFault =
  | PutBackFault
  /** It is not the recording that the lesson has, or a newer one waits. */
  | { readonly code: 'not-the-latest' };

/** @returns the draft's version afterwards. */
export const takeBackRecording = (
  bench: Bench,
  input: TakeBackInput,
): Promise<Result<{ readonly version: number }, TakeBackFault>> =>
  putDraftBack<TakeBackFault>(bench, input, async (tx, draft) => {
    const accepted = await acceptedComparison(tx, input.lessonId);
    const waiting = await openComparison(tx, input.lessonId);
    // Taken back before, and the answer was lost.
    if (waiting?.id === input.comparisonId) return ok(null);
    if (accepted?.id !== input.comparisonId || waiting) return failed({ code: 'not-the-latest' });
    const move = await findMove(tx, accepted.id);
    return ok({
      changes: move ? takeBack(draft, move).changes : [],
      recordingId: accepted.oldRecordingId,
      also: () => reopenComparison(tx, accepted),
    });
  });
