/** Takes a copy off the list once it is read or refused; lessons that came of it stay. */
import { fault, withMember } from '#app/http/with-member.ts';
import { database } from '#lib/data/database.ts';
import { forgetCopy } from '#lib/data/portable-copies.ts';

export const DELETE = withMember<{ workshop: string; copy: string }>(
  'editor',
  async (_request, { workshop }, { copy }) =>
    (await forgetCopy(database(), workshop.id, copy))
      ? Response.json({}, { headers: { 'cache-control': 'no-store' } })
      : fault(404, 'not-found'),
);
