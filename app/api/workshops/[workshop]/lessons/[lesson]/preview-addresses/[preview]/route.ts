/** Withdraws a secret address of a draft. */
import { fault } from '#app/http/with-member.ts';
import { type LessonParams, withLesson } from '#app/http/with-recording.ts';
import { withdrawPreviewAddress } from '#lib/access/preview-address.ts';
import { openBench } from '#lib/bench/bench.ts';

export const DELETE = withLesson<LessonParams & { preview: string }>(
  'editor',
  async (_request, lesson, { preview }) =>
    (await withdrawPreviewAddress(openBench().db, lesson.id, preview))
      ? new Response(null, { status: 204 })
      : fault(404, 'not-found'),
);
