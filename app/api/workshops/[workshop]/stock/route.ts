/** What the workshop has at hand: all of it, and one thing counted anew. */
import { readBody } from '#app/http/read-body.ts';
import { withMember } from '#app/http/with-member.ts';
import { database } from '#lib/data/database.ts';
import { findStock, putStock } from '#lib/data/stock.ts';
import { stockItem } from '#lib/kit/stock.ts';

export const GET = withMember('viewer', async (_request, { workshop }) =>
  Response.json(await findStock(database(), workshop.id), { headers: { 'cache-control': 'no-store' } }),
);

export const PUT = withMember('editor', async (request, { workshop }) => {
  const read = await readBody(request, stockItem);
  if (!read.ok) return read.refusal;
  await putStock(database(), workshop.id, read.value);
  return new Response(null, { status: 204 });
});
