/** The pictures of a making as it stands on a screen, saved or not. Changes nothing. */
import { z } from 'zod';
import { readBody } from '#app/http/read-body.ts';
import { fault, withMember } from '#app/http/with-member.ts';
import { picturesOf } from '#app/pictures/answer-picture.ts';
import { openLesson } from '#lib/bench/open-lesson.ts';
import { pictured } from '#lib/lesson/pictured.ts';

const MOST_BYTES = 1024 * 1024;
const asked = z.object({
  making: pictured,
  roll: z.int().multipleOf(15).min(0).max(345),
  side: z.enum(['front', 'back']),
});

export const POST = withMember<{ workshop: string; lesson: string }>(
  'viewer',
  async (request, at, params) => {
    if (!(await openLesson(at, params.lesson))) return fault(404, 'not-found');
    const body = await readBody(request, asked, MOST_BYTES);
    return body.ok
      ? Response.json(picturesOf(body.value.making, body.value), { headers: { 'cache-control': 'no-store' } })
      : body.refusal;
  },
);
