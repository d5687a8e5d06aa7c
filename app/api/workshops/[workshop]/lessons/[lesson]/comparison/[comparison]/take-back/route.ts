/** Takes an accepted recording back. */
import { readBody } from '#app/http/read-body.ts';
import { fault, withMember } from '#app/http/with-member.ts';
import { openBench } from '#lib/bench/bench.ts';
import { putBackRequest } from '#lib/bench/put-draft-back.ts';
import { type TakeBackFault, takeBackRecording } from '#lib/bench/take-back-recording.ts';

type Params = { workshop: string; lesson: string; comparison: string };

export const POST = withMember<Params>('editor', async (request, at, params) => {
  const body = await readBody(request, putBackRequest);
  if (!body.ok) return body.refusal;
  const taken = await takeBackRecording(openBench(), {
    workshopId: at.workshop.id,
    lessonId: params.lesson,
    comparisonId: params.comparison,
    userId: at.caller.userId,
    ...body.value,
  });
  return taken.ok
    ? Response.json(taken.value, { headers: { 'cache-control': 'no-store' } })
    : refuse(taken.fault);
});

function refuse(why: TakeBackFault): Response {
  const { code, ...facts } = why;
  switch (code) {
    case 'not-found':
      return fault(404, code);
    case 'not-the-latest':
    case 'recording-gone':
    case 'draft-is-newer':
      return fault(409, code, facts);
  }
}
