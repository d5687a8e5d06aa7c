/**
 * What a worker does when it starts, so that nothing stays lying after a
 * kill: uploads whose last step was missed are finished, recordings on their
 * way have a job again, and what nobody will come back for is removed.
 */
import { readdir, rm } from 'node:fs/promises';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { dropUpload, recordingsInState } from '#lib/data/uploads.ts';
import type { Queue } from '#lib/jobs/queue.ts';
import { arrived, removeArrived } from '#lib/recording/arriving.ts';
import { type RecordingWork, readAttemptFolder, workFolder } from '#lib/recording/recording-work.ts';
import { finishUpload } from './finish-upload.ts';

/** An upload that nobody went on with for so long is given up, ms. */
export const ABANDONED_MS = 7 * 24 * 3_600_000;

export async function resumeRecordings(
  work: Pick<RecordingWork, 'db' | 'filesFolder'>,
  queue: Pick<Queue, 'send'>,
  now: Date,
): Promise<void> {
  await sweepAttempts(work.filesFolder);
  for (const { id, sizeBytes, createdAt } of await recordingsInState(work.db, ['receiving'])) {
    const file = await arrived(work.filesFolder, id);
    if (file?.bytes === sizeBytes) {
      await finishUpload(work, queue, work.filesFolder, id);
    } else if (now.getTime() - (file?.lastAt ?? createdAt).getTime() > ABANDONED_MS) {
      await dropUpload(work.db, id);
      await removeArrived(work.filesFolder, id);
    }
  }
  // A job that is there already is not queued twice; a needless one finds nothing to do.
  for (const { id } of await recordingsInState(work.db, ['waiting', 'ingesting'])) {
    await queue.send('ingest-recording', { recordingId: id });
  }
}

/** Removes folders of attempts whose process on this machine is gone. */
async function sweepAttempts(filesFolder: string): Promise<void> {
  const folder = workFolder(filesFolder);
  const names = await readdir(folder).catch(() => []);
  for (const name of names) {
    const owner = readAttemptFolder(name);
    if (owner?.host === hostname() && !isAlive(owner.pid)) {
      await rm(join(folder, name), { recursive: true, force: true });
    }
  }
}

function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch {
    return false;
  }
}
