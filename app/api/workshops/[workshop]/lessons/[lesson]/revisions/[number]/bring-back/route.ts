/** Makes the draft what an earlier revision was. */
import { readBody } from '#app/http/read-body.ts';
import { fault, withMember } from '#app/http/with-member.ts';
import { openBench } from '#lib/bench/bench.ts';
import { bringBackRevision } from '#lib/bench/bring-back-revision.ts';
import { putBackRequest } from '#lib/bench/put-draft-back.ts';

type Params = { workshop: string; lesson: string; number: string };

export const POST = withMember<Params>('editor', async (request, at, params) => {
  const body = await readBody(request, putBackRequest);
  if (!body.ok) return body.refusal;
  const number = /^[1-9]\d{0,8}$/.test(params.number) ? Number(params.number) : null;
  if (number === null) return fault(404, 'not-found');
  const brought = await bringBackRevision(openBench(), {
    ...body.value,
    workshopId: at.workshop.id,
    lessonId: params.lesson,
    userId: at.caller.userId,
    number,
  });
  if (brought.ok) return Response.json(brought.value, { headers: { 'cache-control': 'no-store' } });
  const { code, ...facts } = brought.fault;
  return fault(code === 'not-found' ? 404 : 409, code, facts);
});
