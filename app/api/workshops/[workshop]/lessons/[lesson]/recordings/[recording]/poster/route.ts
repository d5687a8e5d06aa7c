/** The picture that stands for the recording; choosing another moment for it. */
import { z } from 'zod';
import { readBody } from '#app/http/read-body.ts';
import { serveStored } from '#app/http/serve-stored.ts';
import { fault } from '#app/http/with-member.ts';
import { withReadyRecording } from '#app/http/with-recording.ts';
import { openBench } from '#lib/bench/bench.ts';
import { choosePoster } from '#lib/bench/choose-poster.ts';
import { queue } from '#lib/jobs/queue.ts';
import { momentMs } from '#lib/time/time.ts';

const serve = withReadyRecording('viewer', async (request, { posterKey }) =>
  posterKey ? serveStored(request, posterKey, 'image/jpeg') : fault(404, 'no-picture'),
);

export { serve as GET, serve as HEAD };

const chosen = z.object({ atMs: momentMs });

export const PUT = withReadyRecording('editor', async (request, recording) => {
  const body = await readBody(request, chosen, 1_000);
  if (!body.ok) return body.refusal;
  if (!recording.hasVideo || body.value.atMs > recording.durationMs) return fault(422, 'no-picture-there');
  const poster = { recordingId: recording.id, atMs: body.value.atMs };
  const done = await choosePoster(openBench(), await queue(), poster, request.signal);
  return done.ok ? new Response(null, { status: 204 }) : fault(503, done.fault.code);
});
