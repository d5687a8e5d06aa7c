import { z } from 'zod';
import { answerWithCookies } from '#app/http/answer-with-cookies.ts';
import { placeOf } from '#app/http/place-of.ts';
import { readBody } from '#app/http/read-body.ts';
import { fault, withAnyone } from '#app/http/with-member.ts';
import { invitationToken } from '#lib/access/invitation.ts';
import { takeNewPassword } from '#lib/access/new-password.ts';
import { typedPassword } from '#lib/access/person.ts';
import { signIn } from '#lib/access/sign-in.ts';
import { openBench } from '#lib/bench/bench.ts';

const body = z.object({ token: invitationToken, password: typedPassword });

/** Open to all: the address itself is the right to choose a password. */
export const POST = withAnyone(async (request) => {
  const read = await readBody(request, body);
  if (!read.ok) return read.refusal;
  const { db, now } = openBench();
  const taken = await takeNewPassword(db, read.value, now());
  if (!taken.ok) return fault(taken.fault.code === 'invitation-not-open' ? 410 : 422, taken.fault.code);
  // Where this fails (too many tries from this place), the password is the new one and the sign-in screen follows.
  const { email } = taken.value;
  const signed = await signIn({ email, password: read.value.password, place: placeOf(request) }, now());
  return answerWithCookies(signed.ok ? signed.value.cookies : []);
});
