/** Removes a recording that was refused or cancelled, with its file. */
import { forgetRecording as forgetRow } from '#lib/data/uploads.ts';
import { removeArrived } from '#lib/recording/arriving.ts';
import type { Storage } from '#lib/storage/storage.ts';
import type { Bench } from './bench.ts';

/** @returns false where the lesson has no such recording, or it was taken in. */
export async function forgetRecording(
  { db }: Pick<Bench, 'db'>,
  files: { readonly storage: Storage; readonly filesFolder: string },
  { lessonId, recordingId }: { readonly lessonId: string; readonly recordingId: string },
): Promise<boolean> {
  const gone = await forgetRow(db, lessonId, recordingId);
  if (!gone) return false;
  if (gone.originalKey) await files.storage.remove(gone.originalKey);
  await removeArrived(files.filesFolder, recordingId);
  return true;
}
