/** A lesson's recordings, newest first, and which of them pupils see. */
import { presentRecordings } from '#app/http/present-recording.ts';
import { withLesson } from '#app/http/with-recording.ts';

export const GET = withLesson('viewer', async (_request, lesson) =>
  Response.json(await presentRecordings(lesson.id), { headers: { 'cache-control': 'no-store' } }),
);
