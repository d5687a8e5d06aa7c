/** Files whose bytes are still coming: one per upload, named by its recording's id. */
import { open, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { uploadsFolder } from './recording-work.ts';

export const arrivingPath = (filesFolder: string, recordingId: string): string =>
  join(uploadsFolder(filesFolder), recordingId);

/** What has come so far; null where there is no file. */
export async function arrived(
  filesFolder: string,
  recordingId: string,
): Promise<{ readonly bytes: number; readonly lastAt: Date } | null> {
  try {
    const { size, mtime } = await stat(arrivingPath(filesFolder, recordingId));
    return { bytes: size, lastAt: mtime };
  } catch {
    return null;
  }
}

/** Makes sure that what came lies on the disk and not only in the machine's memory. */
export async function settleArrived(filesFolder: string, recordingId: string): Promise<void> {
  const file = await open(arrivingPath(filesFolder, recordingId), 'r');
  try {
    await file.sync();
  } finally {
    await file.close();
  }
}

export const removeArrived = (filesFolder: string, recordingId: string): Promise<void> =>
  rm(arrivingPath(filesFolder, recordingId), { force: true });
