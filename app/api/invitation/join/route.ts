import { z } from 'zod';
import { answerJoined } from '#app/http/answer-joined.ts';
import { readBody } from '#app/http/read-body.ts';
import { fault, withAnyone } from '#app/http/with-member.ts';
import { invitationToken } from '#lib/access/invitation.ts';
import { newPerson } from '#lib/access/person.ts';
import { findCaller } from '#lib/access/session.ts';
import { openBench } from '#lib/bench/bench.ts';
import { joinAsCaller, joinAsNewPerson } from '#lib/bench/use-invitation.ts';

const body = z.discriminatedUnion('as', [
  z.object({ as: z.literal('new person'), token: invitationToken, ...newPerson.shape }),
  z.object({ as: z.literal('caller'), token: invitationToken }),
]);

/** Open to all: the address itself is the right to join. */
export const POST = withAnyone(async (request) => {
  const read = await readBody(request, body);
  if (!read.ok) return read.refusal;
  if (read.value.as === 'caller') {
    const caller = await findCaller(request.headers);
    if (!caller) return fault(401, 'not-signed-in');
    const { token } = read.value;
    return answerJoined(request, await joinAsCaller(openBench(), { token, caller }), null);
  }
  const { as: _, token, ...person } = read.value;
  return answerJoined(request, await joinAsNewPerson(openBench(), { token, person }), person);
});
