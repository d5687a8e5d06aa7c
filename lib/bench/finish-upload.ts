/** All bytes of a recording are there: hands it to the worker. */
import { moveRecording } from '#lib/data/uploads.ts';
import type { Queue } from '#lib/jobs/queue.ts';
import { settleArrived } from '#lib/recording/arriving.ts';
import type { Bench } from './bench.ts';

/** The recording waits exactly if its job is queued. Doing it again changes nothing. */
export async function finishUpload(
  { db }: Pick<Bench, 'db'>,
  queue: Pick<Queue, 'send'>,
  filesFolder: string,
  recordingId: string,
): Promise<void> {
  await settleArrived(filesFolder, recordingId);
  await db.$transaction(async (within) => {
    if (await moveRecording(within, recordingId, ['receiving'], 'waiting')) {
      await queue.send('ingest-recording', { recordingId }, within);
    }
  });
}
