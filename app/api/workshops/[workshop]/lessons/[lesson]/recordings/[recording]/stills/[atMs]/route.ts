/** The picture of a moment: taken by the worker when it is first asked for, then kept. */
import { serveStored } from '#app/http/serve-stored.ts';
import { fault } from '#app/http/with-member.ts';
import { type RecordingParams, withReadyRecording } from '#app/http/with-recording.ts';
import { openBench } from '#lib/bench/bench.ts';
import { findOrTakeStill } from '#lib/bench/find-still.ts';
import { queue } from '#lib/jobs/queue.ts';

type Params = RecordingParams & { atMs: string };

const serve = withReadyRecording<Params>('viewer', async (request, recording, params) => {
  const atMs = /^\d{1,9}$/.test(params.atMs) ? Number(params.atMs) : Number.POSITIVE_INFINITY;
  if (!recording.hasVideo || atMs > recording.durationMs) return fault(404, 'no-picture-there');
  const still = { recordingId: recording.id, atMs };
  const key = await findOrTakeStill(openBench(), await queue(), still, request.signal);
  if (key) return serveStored(request, key, 'image/jpeg', { cache: 'private, max-age=86400' });
  const busy = fault(503, 'no-picture-yet');
  busy.headers.set('retry-after', '5');
  return busy;
});

export { serve as GET, serve as HEAD };
