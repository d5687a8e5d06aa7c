/** Records kits that were made up together. */
import { readBody } from '#app/http/read-body.ts';
import { fault } from '#app/http/with-member.ts';
import { withLesson } from '#app/http/with-recording.ts';
import { recordBatch } from '#lib/bench/record-batch.ts';
import { database } from '#lib/data/database.ts';
import { recordedBatch } from '#lib/kit/recorded-batch.ts';

export const POST = withLesson('editor', async (request, lesson) => {
  const read = await readBody(request, recordedBatch);
  if (!read.ok) return read.refusal;
  const recorded = await recordBatch(database(), lesson.id, read.value);
  if (recorded.ok) return new Response(null, { status: 204 });
  const { code, ...facts } = recorded.fault;
  return fault(422, code, facts);
});
