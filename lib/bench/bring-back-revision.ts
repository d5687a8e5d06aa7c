/**
 * Makes the draft what an earlier revision was, so that it can be looked over
 * and published anew: nothing that was published is undone by it. Corrections
 * stay, since they were stated in public; the recording of that revision
 * becomes the lesson's again, since its times are that recording's.
 */
import { z } from 'zod';
import { type LessonAddress, lockLesson, readDraft } from '#lib/data/lessons.ts';
import { readyRecording } from '#lib/data/recordings.ts';
import { getRevision } from '#lib/data/revisions.ts';
import type { Draft } from '#lib/lesson/change.ts';
import { draftChangesBetween } from '#lib/lesson/changes-between.ts';
import { failed, invariant, ok, type Result } from '#lib/result.ts';
import type { Bench } from './bench.ts';
import { saveDraftIn } from './save-draft.ts';

/** What a browser sends. */
export const bringBackRequest = z.object({
  /** Made by the browser once for each wish. */
  saveId: z.uuid(),
  /** Version of the draft that was on the screen. */
  version: z.int().min(1),
});

export interface BringBackInput extends LessonAddress, z.infer<typeof bringBackRequest> {
  readonly number: number;
  readonly userId: string;
}

export type BringBackFault =
  | { readonly code: 'not-found' }
  | { readonly code: 'draft-is-newer'; readonly version: number }
  | { readonly code: 'recording-gone' };

/** @returns the draft's version afterwards. */
export const bringBackRevision = (
  bench: Bench,
  input: BringBackInput,
): Promise<Result<{ readonly version: number }, BringBackFault>> =>
  bench.db.$transaction(
    async (tx) => {
      const lesson = await lockLesson(tx, input);
      const draft = lesson && (await readDraft(tx, input));
      const row = await tx.revision.findUnique({
        where: { lessonId_number: { lessonId: input.lessonId, number: input.number } },
        select: { id: true },
      });
      if (!lesson || !draft || !row) return failed({ code: 'not-found' });
      const repeated = await tx.draftSave.findUnique({
        where: { id: input.saveId },
        select: { version: true },
      });
      if (repeated) return ok({ version: repeated.version });
      if (input.version !== lesson.version)
        return failed({ code: 'draft-is-newer', version: lesson.version });
      const revision = await getRevision(tx, row.id);
      const recordingId = revision.recording?.id ?? null;
      if (recordingId && !(await readyRecording(tx, input.lessonId, recordingId))) {
        return failed({ code: 'recording-gone' });
      }
      const { corrections, dismissed } = draft.content;
      const earlier: Draft = {
        content: { ...revision.content, corrections, dismissed },
        cues: revision.cues,
      };
      const changes = draftChangesBetween(draft, earlier);
      let { version } = lesson;
      if (changes.length > 0) {
        const saved = await saveDraftIn(tx, bench.now(), {
          ...input,
          baseVersion: version,
          changes: [...changes],
        });
        invariant(saved.ok, 'what was published can be saved');
        version = saved.value.version;
      }
      if (recordingId) await tx.lesson.update({ where: { id: input.lessonId }, data: { recordingId } });
      return ok({ version });
    },
    { maxWait: 10_000, timeout: 30_000 },
  );
