/** The pictures of a making as it stands on a screen, saved or not. Changes nothing. */
import { z } from 'zod';
import { readBody } from '#app/http/read-body.ts';
import { fault, withMember } from '#app/http/with-member.ts';
import { oneOfMaking, picturesOf } from '#app/pictures/answer-picture.ts';
import { toBePictured } from '#app/pictures/own-shapes.ts';
import { openLesson } from '#lib/bench/open-lesson.ts';
import { pictured } from '#lib/lesson/pictured.ts';
import { isWaiting } from '#lib/shapes/know-own-shapes.ts';

const MOST_BYTES = 1024 * 1024;
const AGAIN_SECONDS = 2;
const asked = z.object({
  making: pictured,
  roll: z.int().multipleOf(15).min(0).max(345),
  side: z.enum(['front', 'back']),
  /** One thing alone: a picture, or what is to be turned by hand; absent: all pictures. */
  one: z
    .object({
      of: z.string().max(100),
      as: z.enum(['picture', 'scene']),
      repeats: z.int().min(1).max(1_000).default(24),
    })
    .optional(),
});

export const POST = withMember<{ workshop: string; lesson: string }>(
  'viewer',
  async (request, at, params) => {
    if (!(await openLesson(at, params.lesson))) return fault(404, 'not-found');
    const body = await readBody(request, asked, MOST_BYTES);
    if (!body.ok) return body.refusal;
    const { one } = body.value;
    const making = await toBePictured(body.value.making);
    // What has no picture is answered with null: nothing went wrong.
    const answer = one ? oneOfMaking(making, one) : picturesOf(making, body.value);
    // The worker still derives a shape: ask again then.
    const again: HeadersInit = isWaiting(making) ? { 'retry-after': `${AGAIN_SECONDS}` } : {};
    return Response.json(answer, { headers: { 'cache-control': 'no-store', ...again } });
  },
);
