/** Remembers a description text that was taken along, so that later changes to it can be shown. */
import { z } from 'zod';
import { readBody } from '#app/http/read-body.ts';
import { withLesson } from '#app/http/with-recording.ts';
import { openBench } from '#lib/bench/bench.ts';
import { saveCopiedText } from '#lib/data/description-texts.ts';
import { DESCRIPTION_FORMATS } from '#lib/description/write-description.ts';

const LARGEST_TEXT_BYTES = 1024 * 1024;
const copied = z.object({ format: z.enum(DESCRIPTION_FORMATS), text: z.string().max(LARGEST_TEXT_BYTES) });

export const PUT = withLesson('editor', async (request, lesson) => {
  const read = await readBody(request, copied, LARGEST_TEXT_BYTES);
  if (!read.ok) return read.refusal;
  const { db, now } = openBench();
  await saveCopiedText(db, { lessonId: lesson.id, ...read.value, copiedAt: now() });
  return new Response(null, { status: 204 });
});
