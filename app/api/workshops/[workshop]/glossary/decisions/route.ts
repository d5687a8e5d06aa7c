/** What a workshop decides about misheard words. */
import { readBody } from '#app/http/read-body.ts';
import { fault, withMember } from '#app/http/with-member.ts';
import { openBench } from '#lib/bench/bench.ts';
import { decideHeard, decisionTyped } from '#lib/bench/change-glossary.ts';

export const POST = withMember('editor', async (request, at) => {
  const read = await readBody(request, decisionTyped);
  if (!read.ok) return read.refusal;
  const decided = await decideHeard(openBench(), at, read.value);
  return decided.ok ? new Response(null, { status: 204 }) : fault(422, decided.fault.code);
});
