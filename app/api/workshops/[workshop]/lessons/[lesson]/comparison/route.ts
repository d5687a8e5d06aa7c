/** The lesson's comparison of two recordings that nobody has decided yet, if there is one. */
import { withLesson } from '#app/http/with-recording.ts';
import { openComparison } from '#lib/data/comparisons.ts';
import { database } from '#lib/data/database.ts';

export const GET = withLesson('viewer', async (_request, lesson) =>
  Response.json(
    { comparison: await openComparison(database(), lesson.id) },
    { headers: { 'cache-control': 'no-store' } },
  ),
);
