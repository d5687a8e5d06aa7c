/** Takes a cancelled recording, or one refused for a passing reason, up again. */
import { fault } from '#app/http/with-member.ts';
import { withRecording } from '#app/http/with-recording.ts';
import { openBench } from '#lib/bench/bench.ts';
import { retryRecording } from '#lib/bench/retry-recording.ts';
import { queue } from '#lib/jobs/queue.ts';

export const POST = withRecording('editor', async (_request, recording, params) => {
  const at = { lessonId: params.lesson, recordingId: recording.id };
  const done = await retryRecording(openBench(), await queue(), at);
  if (done.ok) return new Response(null, { status: 204 });
  return fault(done.fault.code === 'not-found' ? 404 : 409, done.fault.code);
});
