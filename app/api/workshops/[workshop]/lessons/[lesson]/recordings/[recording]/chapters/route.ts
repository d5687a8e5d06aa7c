/** The chapters that stand inside the recording's file, as it was brought in. */
import { withReadyRecording } from '#app/http/with-recording.ts';
import { openBench } from '#lib/bench/bench.ts';
import { readChaptersInside } from '#lib/recording/chapters-inside.ts';
import { openRecordingWork } from '#lib/recording/recording-work.ts';

export const GET = withReadyRecording('viewer', async (request, recording) => {
  const found = await readChaptersInside(await openRecordingWork(), recording.id, {
    newId: openBench().newId,
    signal: request.signal,
  });
  return Response.json(found, { headers: { 'cache-control': 'no-store' } });
});
