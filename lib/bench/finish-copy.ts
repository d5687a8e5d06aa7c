/** All bytes of a portable copy are there: hands it to the worker. */
import { copyArrived } from '#lib/data/portable-copies.ts';
import type { Queue } from '#lib/jobs/queue.ts';
import { settleArrived } from '#lib/recording/arriving.ts';
import type { Bench } from './bench.ts';

/** The copy waits exactly if its job is queued. Doing it again changes nothing. */
export async function finishCopyUpload(
  { db }: Pick<Bench, 'db'>,
  queue: Pick<Queue, 'send'>,
  filesFolder: string,
  copyId: string,
): Promise<void> {
  await settleArrived(filesFolder, copyId);
  await db.$transaction(async (within) => {
    if (await copyArrived(within, copyId)) await queue.send('bring-in-copy', { copyId }, within);
  });
}
