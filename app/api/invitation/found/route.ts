import { z } from 'zod';
import { answerJoined } from '#app/http/answer-joined.ts';
import { readBody } from '#app/http/read-body.ts';
import { withAnyone } from '#app/http/with-member.ts';
import { invitationToken } from '#lib/access/invitation.ts';
import { newPerson } from '#lib/access/person.ts';
import { openBench } from '#lib/bench/bench.ts';
import { workshopName } from '#lib/bench/create-workshop.ts';
import { foundWorkshop } from '#lib/bench/use-invitation.ts';

const body = z.object({ token: invitationToken, workshopName, ...newPerson.shape });

export const POST = withAnyone(async (request) => {
  const read = await readBody(request, body);
  if (!read.ok) return read.refusal;
  const { token, workshopName, ...person } = read.value;
  return answerJoined(request, await foundWorkshop(openBench(), { token, workshopName, person }), person);
});
