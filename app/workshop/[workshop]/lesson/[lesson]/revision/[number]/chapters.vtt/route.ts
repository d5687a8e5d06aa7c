/** A revision's chapters, as WebVTT. */
import { answerText, FROZEN, VTT_TYPE } from '#app/http/answer-text.ts';
import { withRevision } from '#app/http/with-revision.ts';
import { writeChaptersWebVtt } from '#lib/chapters/chapters-webvtt.ts';

export const GET = withRevision((request, { content, recording }) =>
  answerText(request, writeChaptersWebVtt(content.chapters, recording?.durationMs ?? 0), {
    type: VTT_TYPE,
    cache: FROZEN,
  }),
);
