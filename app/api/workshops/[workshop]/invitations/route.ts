import { z } from 'zod';
import { readBody } from '#app/http/read-body.ts';
import { withMember } from '#app/http/with-member.ts';
import { ROLES } from '#lib/access/caller.ts';
import { openBench } from '#lib/bench/bench.ts';
import { inviteMember } from '#lib/bench/change-members.ts';
import { environment } from '#lib/config/environment.ts';

const body = z.object({ role: z.enum(ROLES), note: z.string().trim().max(200) });

/** The one answer that holds the address; it cannot be asked for again. */
export const POST = withMember('owner', async (request, at) => {
  const read = await readBody(request, body);
  if (!read.ok) return read.refusal;
  const { path, expiresAt } = await inviteMember(openBench(), at, read.value);
  const address = `${environment().BENCHLEAF_ADDRESS}${path}`;
  return Response.json({ address, expiresAt }, { status: 201, headers: { 'cache-control': 'no-store' } });
});
