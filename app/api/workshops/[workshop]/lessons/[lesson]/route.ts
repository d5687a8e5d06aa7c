import { fault, withMember } from '#app/http/with-member.ts';
import { openBench } from '#lib/bench/bench.ts';
import { deleteLesson } from '#lib/bench/delete-lesson.ts';
import { openStorage } from '#lib/storage/open-storage.ts';

export const DELETE = withMember<{ workshop: string; lesson: string }>(
  'editor',
  async (_request, at, { lesson }) => {
    const deleted = await deleteLesson(openBench(), at, lesson, (key) => openStorage().remove(key));
    if (deleted.ok) return new Response(null, { status: 204 });
    return fault(deleted.fault.code === 'not-found' ? 404 : 403, deleted.fault.code);
  },
);
