import { fault, withMember } from '#app/http/with-member.ts';
import { openBench } from '#lib/bench/bench.ts';
import { removeOwnTerm } from '#lib/data/glossary.ts';

export const DELETE = withMember<{ workshop: string; term: string }>(
  'editor',
  async (_request, at, { term }) =>
    (await removeOwnTerm(openBench().db, at.workshop.id, term))
      ? new Response(null, { status: 204 })
      : fault(404, 'not-found'),
);
