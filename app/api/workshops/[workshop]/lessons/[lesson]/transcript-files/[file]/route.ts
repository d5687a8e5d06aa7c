/** One transcript file: as it was brought in, or read again in an encoding that was chosen. */
import { z } from 'zod';
import { attachment } from '#app/http/attachment.ts';
import { presentBroughtIn, refuseTranscript } from '#app/http/present-transcript.ts';
import { readBody } from '#app/http/read-body.ts';
import { fault } from '#app/http/with-member.ts';
import { type LessonParams, withLesson } from '#app/http/with-recording.ts';
import { openBench } from '#lib/bench/bench.ts';
import { readTranscriptAgain } from '#lib/bench/bring-in-transcript.ts';
import { findTranscriptFile } from '#lib/data/transcript-files.ts';
import { isEncoding } from '#lib/transcript/encoding.ts';

type Params = LessonParams & { file: string };

const readAgain = z.object({ encoding: z.string().refine(isEncoding).optional() });

export const GET = withLesson<Params>('viewer', async (_request, lesson, params) => {
  const file = await findTranscriptFile(openBench().db, lesson.id, params.file);
  if (!file) return fault(404, 'not-found');
  return new Response(Buffer.from(file.bytes), {
    headers: {
      // Whatever someone uploaded: it is saved, never shown as a page of ours.
      'content-type': 'application/octet-stream',
      'content-disposition': attachment(file.name),
      'x-content-type-options': 'nosniff',
      'cache-control': 'private, no-store',
    },
  });
});

export const POST = withLesson<Params>('editor', async (request, lesson, params) => {
  const body = await readBody(request, readAgain);
  if (!body.ok) return body.refusal;
  const { encoding } = body.value;
  const read = await readTranscriptAgain(openBench(), { lessonId: lesson.id, fileId: params.file, encoding });
  return read.ok ? presentBroughtIn(read.value) : refuseTranscript(read.fault);
});
