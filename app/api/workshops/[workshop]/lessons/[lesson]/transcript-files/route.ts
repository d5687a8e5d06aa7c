/** A lesson's transcript files: bring one in, or list those that were. */
import { presentBroughtIn, refuseTranscript } from '#app/http/present-transcript.ts';
import { readFileBody } from '#app/http/read-file-body.ts';
import { withLesson } from '#app/http/with-recording.ts';
import { openBench } from '#lib/bench/bench.ts';
import { bringInTranscript } from '#lib/bench/bring-in-transcript.ts';
import { listTranscriptFiles } from '#lib/data/transcript-files.ts';
import { LARGEST_TRANSCRIPT_BYTES } from '#lib/transcript/read-transcript.ts';

export const GET = withLesson('viewer', async (_request, lesson) => {
  const files = await listTranscriptFiles(openBench().db, lesson.id);
  return Response.json({ files }, { headers: { 'cache-control': 'no-store' } });
});

export const POST = withLesson('editor', async (request, lesson) => {
  const body = await readFileBody(request, LARGEST_TRANSCRIPT_BYTES);
  if (!body.ok) return body.refusal;
  const brought = await bringInTranscript(openBench(), {
    lessonId: lesson.id,
    name: body.name,
    bytes: body.bytes,
  });
  return brought.ok ? presentBroughtIn(brought.value) : refuseTranscript(brought.fault);
});
