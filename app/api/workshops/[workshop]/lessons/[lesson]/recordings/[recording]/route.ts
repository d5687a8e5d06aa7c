/** One recording's state; removing one that was not taken in. */
import { presentRecording } from '#app/http/present-recording.ts';
import { fault } from '#app/http/with-member.ts';
import { withRecording } from '#app/http/with-recording.ts';
import { openBench } from '#lib/bench/bench.ts';
import { forgetRecording } from '#lib/bench/forget-recording.ts';
import { environment } from '#lib/config/environment.ts';
import { openStorage } from '#lib/storage/open-storage.ts';

export const GET = withRecording('viewer', async (_request, recording) =>
  Response.json(await presentRecording(recording), { headers: { 'cache-control': 'no-store' } }),
);

export const DELETE = withRecording('editor', async (_request, recording, params) => {
  const files = { storage: openStorage(), filesFolder: environment().BENCHLEAF_FILES };
  const at = { lessonId: params.lesson, recordingId: recording.id };
  return (await forgetRecording(openBench(), files, at))
    ? new Response(null, { status: 204 })
    : fault(409, 'cannot-remove');
});
