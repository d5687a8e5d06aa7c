/** A workshop's glossary: read it, or keep a term. */
import { readBody } from '#app/http/read-body.ts';
import { fault, withMember } from '#app/http/with-member.ts';
import { openBench } from '#lib/bench/bench.ts';
import { keepTerm, ownTermTyped, readGlossary } from '#lib/bench/change-glossary.ts';

export const GET = withMember('viewer', async (_request, at) =>
  Response.json(await readGlossary(openBench(), at), { headers: { 'cache-control': 'no-store' } }),
);

export const POST = withMember('editor', async (request, at) => {
  const read = await readBody(request, ownTermTyped);
  if (!read.ok) return read.refusal;
  const kept = await keepTerm(openBench(), at, read.value);
  return kept.ok ? new Response(null, { status: 204 }) : fault(422, kept.fault.code);
});
