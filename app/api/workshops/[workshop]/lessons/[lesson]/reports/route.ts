/** Takes out every report of a lesson that was answered, or that a correction was made of. */
import { withLesson } from '#app/http/with-recording.ts';
import { database } from '#lib/data/database.ts';
import { removeSettledReports } from '#lib/data/reports.ts';

export const DELETE = withLesson('editor', async (_request, lesson) => {
  await removeSettledReports(database(), lesson.id);
  return new Response(null, { status: 204 });
});
