/** Takes a recording up again that was cancelled, or refused for a reason that may have passed. */
import { findRecording } from '#lib/data/recordings.ts';
import { moveRecording } from '#lib/data/uploads.ts';
import type { Queue } from '#lib/jobs/queue.ts';
import { mayTryAgain } from '#lib/recording/fault.ts';
import { failed, ok, type Result } from '#lib/result.ts';
import type { Bench } from './bench.ts';

export async function retryRecording(
  { db }: Pick<Bench, 'db'>,
  queue: Pick<Queue, 'send'>,
  { lessonId, recordingId }: { readonly lessonId: string; readonly recordingId: string },
): Promise<Result<null, { readonly code: 'not-found' | 'cannot-retry' }>> {
  const recording = await findRecording(db, lessonId, recordingId);
  if (!recording) return failed({ code: 'not-found' });
  if (recording.fault && !mayTryAgain(recording.fault)) return failed({ code: 'cannot-retry' });
  const moved = await db.$transaction(async (within) => {
    if (!(await moveRecording(within, recordingId, ['refused', 'cancelled'], 'waiting'))) return false;
    await queue.send('ingest-recording', { recordingId }, within);
    return true;
  });
  return moved ? ok(null) : failed({ code: 'cannot-retry' });
}
