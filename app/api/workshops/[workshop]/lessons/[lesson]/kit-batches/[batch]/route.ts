/** Forgets a batch that was recorded. */
import { type LessonParams, withLesson } from '#app/http/with-recording.ts';
import { database } from '#lib/data/database.ts';
import { removeKitBatch } from '#lib/data/kit-batches.ts';

export const DELETE = withLesson<LessonParams & { batch: string }>(
  'editor',
  async (_request, lesson, { batch }) => {
    await removeKitBatch(database(), lesson.id, batch);
    return new Response(null, { status: 204 });
  },
);
