import { z } from 'zod';
import { readBody } from '#app/http/read-body.ts';
import { withCaller } from '#app/http/with-member.ts';
import { personName } from '#lib/access/person.ts';
import { changeName } from '#lib/access/sign-in.ts';

export const PATCH = withCaller(async (request, caller) => {
  const read = await readBody(request, z.object({ name: personName }));
  if (!read.ok) return read.refusal;
  await changeName(caller, read.value.name);
  return new Response(null, { status: 204 });
});
