/** The lesson's recording as a revision keeps it. */
import type { Queries } from '#lib/data/database.ts';
import { currentRecording } from '#lib/data/recordings.ts';
import type { FrozenRecording } from '#lib/lesson/revision.ts';

/** Null where the lesson has no ready recording. */
export async function frozenRecordingOf(db: Queries, lessonId: string): Promise<FrozenRecording | null> {
  const recording = await currentRecording(db, lessonId);
  return (
    recording && {
      id: recording.id,
      durationMs: recording.durationMs,
      hasVideo: recording.hasVideo,
      // Peaks are made of every sound there is.
      hasAudio: recording.peaksKey !== null,
      width: recording.width,
      height: recording.height,
      mediaType: recording.type,
      mediaKey: recording.playableKey,
      posterKey: recording.posterKey,
    }
  );
}
