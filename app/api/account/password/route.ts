import { z } from 'zod';
import { answerWithCookies } from '#app/http/answer-with-cookies.ts';
import { readBody } from '#app/http/read-body.ts';
import { fault, withCaller } from '#app/http/with-member.ts';
import { typedPassword } from '#lib/access/person.ts';
import { changePassword } from '#lib/access/sign-in.ts';

export const POST = withCaller(async (request, caller) => {
  const read = await readBody(request, z.object({ current: typedPassword, next: typedPassword }));
  if (!read.ok) return read.refusal;
  const changed = await changePassword(caller, read.value, request.headers, new Date());
  if (changed.ok) return answerWithCookies(changed.value.cookies);
  const { code, ...facts } = changed.fault;
  return fault(code === 'too-many-tries' ? 429 : 422, code, facts);
});
