/** The lesson's comparison of two recordings that nobody has decided yet, and the one that gave it the recording it has. */
import { withLesson } from '#app/http/with-recording.ts';
import { acceptedComparison, openComparison } from '#lib/data/comparisons.ts';
import { database } from '#lib/data/database.ts';

export const GET = withLesson('viewer', async (_request, lesson) => {
  const [comparison, accepted] = await Promise.all([
    openComparison(database(), lesson.id),
    acceptedComparison(database(), lesson.id),
  ]);
  return Response.json({ comparison, accepted }, { headers: { 'cache-control': 'no-store' } });
});
