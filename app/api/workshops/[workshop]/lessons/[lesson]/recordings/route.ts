/** A lesson's recordings, newest first, and which of them pupils see. */
import { presentRecording } from '#app/http/present-recording.ts';
import { withLesson } from '#app/http/with-recording.ts';
import { database } from '#lib/data/database.ts';
import { listRecordings } from '#lib/data/recordings.ts';

export const GET = withLesson('viewer', async (_request, lesson) => {
  const recordings = await listRecordings(database(), lesson.id);
  return Response.json(
    { current: lesson.recordingId, recordings: await Promise.all(recordings.map(presentRecording)) },
    { headers: { 'cache-control': 'no-store' } },
  );
});
