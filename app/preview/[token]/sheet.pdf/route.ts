/** A draft on paper, under a secret address; without codes, which would print that address. */
import { NEVER_KEPT, withPreview } from '#app/http/with-preview.ts';
import { answerSheet } from '#app/paper/answer-sheet.ts';

export const GET = withPreview((request, revision) =>
  answerSheet(request, revision, null, { address: null, playsAt: null, cache: NEVER_KEPT }),
);
