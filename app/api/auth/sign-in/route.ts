import { z } from 'zod';
import { answerWithCookies } from '#app/http/answer-with-cookies.ts';
import { placeOf } from '#app/http/place-of.ts';
import { readBody } from '#app/http/read-body.ts';
import { fault, withAnyone } from '#app/http/with-member.ts';
import { typedPassword } from '#lib/access/person.ts';
import { signIn } from '#lib/access/sign-in.ts';

const body = z.object({
  email: z.string().trim().min(1).max(254),
  password: typedPassword,
});

export const POST = withAnyone(async (request) => {
  const read = await readBody(request, body);
  if (!read.ok) return read.refusal;
  const signed = await signIn({ ...read.value, place: placeOf(request) }, new Date());
  if (signed.ok) return answerWithCookies(signed.value.cookies);
  const { code, ...facts } = signed.fault;
  return fault(code === 'too-many-tries' ? 429 : 401, code, facts);
});
