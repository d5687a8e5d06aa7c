/** The lesson on paper, for everybody's sizes or, with `?measure=`, for the pupil's own. */
import { withRevision } from '#app/http/with-revision.ts';
import { lessonPath, momentLink, revisionPath } from '#app/lesson-page/page-addresses.ts';
import { answerSheet } from '#app/paper/answer-sheet.ts';
import { environment } from '#lib/config/environment.ts';

export const GET = withRevision((request, revision, { workshop, lesson }, _id, latest) => {
  const site = environment().BENCHLEAF_ADDRESS;
  // A code plays the recording that its moment was taken from, whatever is published later; that page leads on to the latest.
  const player = `${site}${revisionPath(workshop, lesson, revision.number)}`;
  return answerSheet(request, revision, revision.number, {
    address: `${site}${lessonPath(workshop, lesson)}`,
    latest,
    playsAt: (atMs) => momentLink(player, atMs),
    // A revision never changes, but how a sheet is set may.
    cache: 'public, max-age=3600',
  });
});
