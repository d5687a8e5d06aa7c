/** Still pictures of a recording, each taken once and then kept. */
import { readyRecording } from '#lib/data/recordings.ts';
import { findStill, keepStill, lessonOfRecording } from '#lib/data/stills.ts';
import { recordingKey } from '#lib/storage/storage-key.ts';
import { type RecordingWork, withFolder } from './recording-work.ts';
import { takePicture } from './take-picture.ts';

/**
 * The storage key of the still at a moment, taking it where it is not there
 * yet. Null where the recording is not ready or has no picture; a moment
 * behind its end gives its last picture.
 * @throws where ffmpeg is missing
 */
export async function takeStill(
  work: RecordingWork,
  { recordingId, atMs }: { readonly recordingId: string; readonly atMs: number },
  signal: AbortSignal = AbortSignal.timeout(240_000),
): Promise<string | null> {
  const known = await findStill(work.db, recordingId, atMs);
  if (known) return known;
  const lessonId = await lessonOfRecording(work.db, recordingId);
  const recording = lessonId === null ? null : await readyRecording(work.db, lessonId, recordingId);
  if (!recording?.hasVideo) return null;
  const { ffmpeg } = work;
  if (!ffmpeg) throw new Error('ffmpeg is missing: stills cannot be taken');
  return withFolder(work, async (folder) => {
    const path = await work.storage.lend(recording.playableKey, folder, 'input');
    const bytes = await takePicture(ffmpeg, {
      path,
      atMs: Math.min(atMs, recording.durationMs),
      folder,
      signal,
    });
    if (!bytes) return null;
    const key = recordingKey(recordingId, `still-${atMs}.jpg`);
    await work.storage.put(key, bytes);
    await keepStill(work.db, recordingId, atMs, key);
    return key;
  });
}
