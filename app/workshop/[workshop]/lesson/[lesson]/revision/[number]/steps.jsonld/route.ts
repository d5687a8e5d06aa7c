/** A revision's steps as annotations of its recording, in JSON-LD. */
import { answerText, FROZEN } from '#app/http/answer-text.ts';
import { type RevisionParams, withRevision } from '#app/http/with-revision.ts';
import { publicAddresses } from '#app/lesson-page/page-addresses.ts';
import { environment } from '#lib/config/environment.ts';
import { ANNOTATION_TYPE, writeStepAnnotations } from '#lib/lesson/step-annotations.ts';

export const GET = withRevision<RevisionParams>((request, revision, { workshop, lesson }) => {
  const site = environment().BENCHLEAF_ADDRESS;
  const addresses = publicAddresses(workshop, lesson, revision.number, 'revision');
  const text = writeStepAnnotations(revision, {
    file: `${site}${addresses.annotations}`,
    page: `${site}${addresses.page}`,
    recording: `${site}${addresses.recording}`,
    still: (of) => `${site}${addresses.still(of, 0)}`,
  });
  return answerText(request, text, { type: ANNOTATION_TYPE, cache: FROZEN });
});
