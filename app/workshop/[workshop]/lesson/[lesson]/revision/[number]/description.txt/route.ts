/** The text of a revision that goes beside its recording wherever it is hosted. */
import { answerText, FROZEN, PLAIN_TYPE } from '#app/http/answer-text.ts';
import { type RevisionParams, withRevision } from '#app/http/with-revision.ts';
import { lessonPath } from '#app/lesson-page/page-addresses.ts';
import { environment } from '#lib/config/environment.ts';
import { descriptionText } from '#lib/lesson/description-text.ts';

export const GET = withRevision<RevisionParams>((request, { content }, { workshop, lesson }) =>
  answerText(
    request,
    descriptionText(content, `${environment().BENCHLEAF_ADDRESS}${lessonPath(workshop, lesson)}`),
    { type: PLAIN_TYPE, cache: FROZEN },
  ),
);
