/** Stops taking a recording in; its file stays. */
import { fault } from '#app/http/with-member.ts';
import { withRecording } from '#app/http/with-recording.ts';
import { openBench } from '#lib/bench/bench.ts';
import { cancelRecording } from '#lib/bench/cancel-recording.ts';

export const POST = withRecording('editor', async (_request, recording, params) => {
  const at = { lessonId: params.lesson, recordingId: recording.id };
  const done = await cancelRecording(openBench(), at);
  if (done.ok) return new Response(null, { status: 204 });
  return fault(done.fault.code === 'not-found' ? 404 : 409, done.fault.code);
});
