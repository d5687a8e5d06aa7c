/** Stops the taking in of a recording. The file stays, so that it can be taken up again. */
import { findRecording } from '#lib/data/recordings.ts';
import { moveRecording } from '#lib/data/uploads.ts';
import { failed, ok, type Result } from '#lib/result.ts';
import type { Bench } from './bench.ts';

/** The worker at it notices within a second. */
export async function cancelRecording(
  { db }: Pick<Bench, 'db'>,
  { lessonId, recordingId }: { readonly lessonId: string; readonly recordingId: string },
): Promise<Result<null, { readonly code: 'not-found' | 'cannot-cancel' }>> {
  if (!(await findRecording(db, lessonId, recordingId))) return failed({ code: 'not-found' });
  const moved = await moveRecording(db, recordingId, ['waiting', 'ingesting'], 'cancelled');
  return moved ? ok(null) : failed({ code: 'cannot-cancel' });
}
