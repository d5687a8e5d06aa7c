import { readBody } from '#app/http/read-body.ts';
import { fault, withMember } from '#app/http/with-member.ts';
import { openBench } from '#lib/bench/bench.ts';
import { changedSettings, changeWorkshop } from '#lib/bench/change-workshop.ts';

export const PATCH = withMember('owner', async (request, at) => {
  const read = await readBody(request, changedSettings);
  if (!read.ok) return read.refusal;
  const changed = await changeWorkshop(openBench(), at, read.value);
  return changed.ok
    ? Response.json({ workshop: read.value.slug ?? at.workshop.slug })
    : fault(422, changed.fault.code);
});
