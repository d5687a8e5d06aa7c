/** How the workshop words its description texts: change it, or go back to how everybody begins. */
import { readBody } from '#app/http/read-body.ts';
import { withMember } from '#app/http/with-member.ts';
import { openBench } from '#lib/bench/bench.ts';
import { saveDescriptionSetup } from '#lib/data/description-texts.ts';
import { descriptionSetup } from '#lib/description/description-setup.ts';

export const PUT = withMember('owner', async (request, at) => {
  const read = await readBody(request, descriptionSetup);
  if (!read.ok) return read.refusal;
  await saveDescriptionSetup(openBench().db, at.workshop.id, read.value);
  return new Response(null, { status: 204 });
});

export const DELETE = withMember('owner', async (_request, at) => {
  await saveDescriptionSetup(openBench().db, at.workshop.id, null);
  return new Response(null, { status: 204 });
});
