/** The saved draft on paper, as its sheet would be published; without codes, since they would lead nowhere yet. */
import { fault, withMember } from '#app/http/with-member.ts';
import type { LessonParams } from '#app/http/with-recording.ts';
import { answerSheet } from '#app/paper/answer-sheet.ts';
import { readPreview } from '#lib/bench/read-preview.ts';
import { database } from '#lib/data/database.ts';

export const GET = withMember<LessonParams>('viewer', async (request, { workshop }, { lesson }) => {
  const revision = await readPreview(database(), { workshop, lessonId: lesson, number: 1 });
  if (!revision) return fault(404, 'not-found');
  return answerSheet(request, revision, null, { address: null, playsAt: null, cache: 'no-store' });
});
