/**
 * Decides about a new recording that was compared with the lesson's own: takes
 * it and moves all of the draft with it, takes it and leaves all where it is,
 * or stays with the old one. Each in one transaction; the old recording and
 * the revisions that show it are never touched.
 */
import { z } from 'zod';
import { type Comparison, decideComparison, findComparison, keepMove } from '#lib/data/comparisons.ts';
import type { Queries } from '#lib/data/database.ts';
import { type LessonAddress, lockLesson, readDraft } from '#lib/data/lessons.ts';
import { failed, ok, type Result } from '#lib/result.ts';
import { carryOver } from '#lib/retiming/carry-over.ts';
import { editList } from '#lib/retiming/edit-list.ts';
import { moveOf } from '#lib/retiming/take-back.ts';
import { cue, MOST_CUES } from '#lib/transcript/cue.ts';
import type { Bench } from './bench.ts';
import { saveDraftIn } from './save-draft.ts';

/** What a browser sends. */
export const recordingDecision = z.discriminatedUnion('decision', [
  z.object({
    decision: z.literal('move'),
    /** Made by the browser once for each wish; the same sent again is done once. */
    saveId: z.uuid(),
    /** Version of the draft that was on the screen. */
    version: z.int().min(1),
    /** The edit list as the person left it. */
    list: editList,
    /** Cuts (by their place in the list) whose words stay with what was said again there. */
    wordsStay: z.array(z.int().min(0)).max(20_000).readonly(),
    /** Cues of a transcript of the new recording, for what is new or was said again in it. */
    heard: z.array(cue).max(MOST_CUES).readonly().default([]),
  }),
  z.object({ decision: z.literal('leave') }),
  /** The transcript of another lesson was placed: the browser put its cues into the draft. */
  z.object({ decision: z.literal('placed') }),
  z.object({ decision: z.literal('refuse') }),
]);
export type RecordingDecision = z.infer<typeof recordingDecision>;

export interface DecideRecordingInput extends LessonAddress {
  readonly comparisonId: string;
  readonly userId: string;
  readonly decision: RecordingDecision;
}

export type DecideRecordingFault =
  | { readonly code: 'not-found' }
  /** Somebody decided before, or a newer recording came. */
  | { readonly code: 'decided-before' }
  /** The list is of other recordings than these, or they are not compared yet. */
  | { readonly code: 'list-not-valid' }
  | { readonly code: 'draft-is-newer'; readonly version: number };

type Answer = Result<{ readonly version: number }, DecideRecordingFault>;

/** @returns the draft's version afterwards. */
export const decideRecording = (bench: Bench, input: DecideRecordingInput): Promise<Answer> =>
  bench.db.$transaction(async (tx) => {
    // From here on every other save, publication and decision of this lesson waits.
    const lesson = await lockLesson(tx, input);
    const comparison = lesson && (await findComparison(tx, input.lessonId, input.comparisonId));
    if (!lesson || !comparison) return failed({ code: 'not-found' });
    const { decision } = input;
    const isDecided = comparison.state === 'accepted' || comparison.state === 'refused';
    if (isDecided) return answerAgain(decision, comparison.state, lesson.version);
    const isPlacing = comparison.fromLessonId !== null;
    if (decision.decision !== 'refuse' && isPlacing !== (decision.decision === 'placed'))
      return failed({ code: 'list-not-valid' });
    const moved =
      decision.decision === 'move'
        ? await moveDraft(tx, bench, input, { comparison, decision, version: lesson.version })
        : ok({ version: lesson.version });
    if (!moved.ok) return moved;
    await decideComparison(tx, comparison.id, decision.decision === 'refuse' ? 'refused' : 'accepted');
    if (decision.decision !== 'refuse' && !isPlacing) {
      const data = { recordingId: comparison.newRecordingId };
      await tx.lesson.update({ where: { id: input.lessonId }, data });
    }
    return moved;
  });

/** The same decision, whose answer was lost, is answered as before; another one comes too late. */
const answerAgain = ({ decision }: RecordingDecision, state: Comparison['state'], version: number): Answer =>
  (decision === 'refuse') === (state === 'refused') ? ok({ version }) : failed({ code: 'decided-before' });

interface Move {
  readonly comparison: Comparison;
  readonly decision: RecordingDecision & { readonly decision: 'move' };
  readonly version: number;
}

async function moveDraft(
  tx: Queries,
  bench: Bench,
  input: DecideRecordingInput,
  { comparison, decision, version }: Move,
): Promise<Answer> {
  const { list } = comparison;
  if (!list || list.oldMs !== decision.list.oldMs || list.newMs !== decision.list.newMs) {
    return failed({ code: 'list-not-valid' });
  }
  if (decision.version !== version) return failed({ code: 'draft-is-newer', version });
  const draft = await readDraft(tx, input);
  if (!draft) return failed({ code: 'not-found' });
  const { heard, wordsStay } = decision;
  const { changes } = carryOver(draft, decision.list, { wordsStay: new Set(wordsStay), heard });
  if (changes.length === 0) return ok({ version });
  await keepMove(tx, comparison.id, moveOf(draft, decision.list, changes));
  const saved = await saveDraftIn(tx, bench.now(), {
    workshopId: input.workshopId,
    lessonId: input.lessonId,
    userId: input.userId,
    saveId: decision.saveId,
    baseVersion: version,
    changes: [...changes],
  });
  return saved.ok ? saved : failed({ code: 'list-not-valid' });
}
