import { z } from 'zod';
import { readBody } from '#app/http/read-body.ts';
import { fault, withMember } from '#app/http/with-member.ts';
import { ROLES } from '#lib/access/caller.ts';
import { openBench } from '#lib/bench/bench.ts';
import { changeRole, type MemberFault, removeMember } from '#lib/bench/change-members.ts';
import type { Result } from '#lib/result.ts';

type Params = { workshop: string; member: string };

export const PATCH = withMember<Params>('owner', async (request, at, { member }) => {
  const read = await readBody(request, z.object({ role: z.enum(ROLES) }));
  if (!read.ok) return read.refusal;
  return answer(await changeRole(openBench(), at, { memberId: member, role: read.value.role }));
});

export const DELETE = withMember<Params>('owner', async (_request, at, { member }) =>
  answer(await removeMember(openBench(), at, member)),
);

function answer(done: Result<null, MemberFault>): Response {
  if (done.ok) return new Response(null, { status: 204 });
  return done.fault.code === 'not-found' ? fault(404, 'not-found') : fault(422, done.fault.code);
}
