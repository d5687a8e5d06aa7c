/** Portable copies that were sent to a workshop: how far each is, and what came of it. */
import { withMember } from '#app/http/with-member.ts';
import { database } from '#lib/data/database.ts';
import { listCopies } from '#lib/data/portable-copies.ts';

export const GET = withMember<{ workshop: string }>('editor', async (_request, { workshop }) =>
  Response.json(
    { copies: await listCopies(database(), workshop.id) },
    { headers: { 'cache-control': 'no-store' } },
  ),
);
