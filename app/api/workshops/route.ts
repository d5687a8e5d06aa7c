import { z } from 'zod';
import { readBody } from '#app/http/read-body.ts';
import { withCaller } from '#app/http/with-member.ts';
import { openBench } from '#lib/bench/bench.ts';
import { createWorkshop, workshopName } from '#lib/bench/create-workshop.ts';

export const POST = withCaller(async (request, caller) => {
  const read = await readBody(request, z.object({ name: workshopName }));
  if (!read.ok) return read.refusal;
  const slug = await createWorkshop(openBench(), { name: read.value.name, ownerId: caller.userId });
  return Response.json({ workshop: slug }, { status: 201 });
});
