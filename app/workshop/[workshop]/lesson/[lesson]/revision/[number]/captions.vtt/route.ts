/** What is said in a revision's recording, as WebVTT. */
import { answerText, FROZEN, VTT_TYPE } from '#app/http/answer-text.ts';
import { withRevision } from '#app/http/with-revision.ts';
import { writeWebVtt } from '#lib/transcript/webvtt-write.ts';

export const GET = withRevision((request, { cues }) =>
  answerText(request, writeWebVtt(cues), { type: VTT_TYPE, cache: FROZEN }),
);
