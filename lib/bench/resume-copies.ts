/** What a worker does about portable copies when it starts, so that none stays lying after a kill. */
import { copiesInState, dropCopy } from '#lib/data/portable-copies.ts';
import type { Queue } from '#lib/jobs/queue.ts';
import { arrived, removeArrived } from '#lib/recording/arriving.ts';
import type { RecordingWork } from '#lib/recording/recording-work.ts';
import { finishCopyUpload } from './finish-copy.ts';
import { ABANDONED_MS } from './resume-recordings.ts';

export async function resumeCopies(
  work: Pick<RecordingWork, 'db' | 'filesFolder'>,
  queue: Pick<Queue, 'send'>,
  now: Date,
): Promise<void> {
  for (const { id, sizeBytes, createdAt } of await copiesInState(work.db, ['receiving'])) {
    const file = await arrived(work.filesFolder, id);
    if (file?.bytes === sizeBytes) {
      await finishCopyUpload(work, queue, work.filesFolder, id);
    } else if (now.getTime() - (file?.lastAt ?? createdAt).getTime() > ABANDONED_MS) {
      await dropCopy(work.db, id);
      await removeArrived(work.filesFolder, id);
    }
  }
  // A job that is there already is not queued twice; a needless one finds nothing to do.
  for (const { id } of await copiesInState(work.db, ['waiting', 'reading'])) {
    await queue.send('bring-in-copy', { copyId: id });
  }
}
