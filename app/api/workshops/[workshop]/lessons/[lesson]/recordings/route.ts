/** A lesson's recordings, newest first, and which of them pupils see. */
import { presentRecording } from '#app/http/present-recording.ts';
import { withLesson } from '#app/http/with-recording.ts';
import { database } from '#lib/data/database.ts';
import { currentRecordingId, listRecordings } from '#lib/data/recordings.ts';

export const GET = withLesson('viewer', async (_request, lesson) => {
  const recordings = await listRecordings(database(), lesson.id);
  // Asked after the list: whoever sees that nothing is under way any more also sees the recording that came of it.
  const current = await currentRecordingId(database(), lesson.id);
  return Response.json(
    { current, recordings: await Promise.all(recordings.map(presentRecording)) },
    { headers: { 'cache-control': 'no-store' } },
  );
});
