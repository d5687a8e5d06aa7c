import { fault, withMember } from '#app/http/with-member.ts';
import { openBench } from '#lib/bench/bench.ts';
import { withdrawInvitation } from '#lib/bench/change-members.ts';

export const DELETE = withMember<{ workshop: string; invitation: string }>(
  'owner',
  async (_request, at, { invitation }) =>
    (await withdrawInvitation(openBench(), at, invitation))
      ? new Response(null, { status: 204 })
      : fault(404, 'not-found'),
);
