/** Makes a secret address for a draft. The one answer that holds it; it cannot be asked for again. */
import { z } from 'zod';
import { readBody } from '#app/http/read-body.ts';
import { fault } from '#app/http/with-member.ts';
import { withLesson } from '#app/http/with-recording.ts';
import { issuePreviewAddress } from '#lib/access/preview-address.ts';
import { openBench } from '#lib/bench/bench.ts';
import { environment } from '#lib/config/environment.ts';

const body = z.object({ note: z.string().trim().max(200) });

export const POST = withLesson('editor', async (request, lesson) => {
  const read = await readBody(request, body);
  if (!read.ok) return read.refusal;
  const { db, newId, now } = openBench();
  const path = await db.$transaction((tx) =>
    issuePreviewAddress(tx, { id: newId(), lessonId: lesson.id, note: read.value.note, now: now() }),
  );
  if (path === null) return fault(409, 'too-many-preview-addresses');
  return Response.json(
    { address: `${environment().BENCHLEAF_ADDRESS}${path}` },
    { status: 201, headers: { 'cache-control': 'no-store' } },
  );
});
