/** The text of a revision that goes beside its recording wherever it is hosted, worded as the workshop words it now. */
import { answerText, PLAIN_TYPE } from '#app/http/answer-text.ts';
import { type RevisionParams, withRevision } from '#app/http/with-revision.ts';
import { lessonPath } from '#app/lesson-page/page-addresses.ts';
import { environment } from '#lib/config/environment.ts';
import { database } from '#lib/data/database.ts';
import { findDescriptionSetup } from '#lib/data/description-texts.ts';
import { composeDescription } from '#lib/description/description-text.ts';

export const GET = withRevision<RevisionParams>(
  async (request, { content, recording }, { workshop, lesson }) => {
    const { text } = composeDescription({
      content,
      setup: await findDescriptionSetup(database(), workshop),
      lessonAddress: `${environment().BENCHLEAF_ADDRESS}${lessonPath(workshop, lesson)}`,
      durationMs: recording?.durationMs ?? null,
      format: 'text',
    });
    return answerText(request, text, { type: PLAIN_TYPE, cache: 'no-cache' });
  },
);
