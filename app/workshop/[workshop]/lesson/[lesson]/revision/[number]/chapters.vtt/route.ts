/** A revision's chapters, as WebVTT. */
import { answerText, FROZEN, VTT_TYPE } from '#app/http/answer-text.ts';
import { withRevision } from '#app/http/with-revision.ts';
import { chaptersFile } from '#lib/lesson/timed-files.ts';

export const GET = withRevision((request, { content, recording }) =>
  answerText(request, chaptersFile(content.chapters, recording?.durationMs ?? null), {
    type: VTT_TYPE,
    cache: FROZEN,
  }),
);
