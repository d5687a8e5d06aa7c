/**
 * Makes the draft what an earlier revision was, so that it can be looked over
 * and published anew: nothing that was published is undone by it. Corrections
 * stay, since they were stated in public; the recording of that revision
 * becomes the lesson's again, since its times are that recording's.
 */
import { getRevision } from '#lib/data/revisions.ts';
import type { Draft } from '#lib/lesson/change.ts';
import { draftChangesBetween } from '#lib/lesson/changes-between.ts';
import { failed, ok, type Result } from '#lib/result.ts';
import type { Bench } from './bench.ts';
import { type PutBackFault, type PutBackInput, putDraftBack } from './put-draft-back.ts';

export interface BringBackInput extends PutBackInput {
  readonly number: number;
}

/** @returns the draft's version afterwards. */
export const bringBackRevision = (
  bench: Bench,
  input: BringBackInput,
): Promise<Result<{ readonly version: number }, PutBackFault>> =>
  putDraftBack<PutBackFault>(bench, input, async (tx, draft) => {
    const row = await tx.revision.findUnique({
      where: { lessonId_number: { lessonId: input.lessonId, number: input.number } },
      select: { id: true },
    });
    if (!row) return failed({ code: 'not-found' });
    const revision = await getRevision(tx, row.id);
    const { corrections, dismissed } = draft.content;
    const earlier: Draft = {
      content: { ...revision.content, corrections, dismissed },
      cues: revision.cues,
    };
    return ok({
      changes: draftChangesBetween(draft, earlier),
      recordingId: revision.recording?.id ?? null,
    });
  });
