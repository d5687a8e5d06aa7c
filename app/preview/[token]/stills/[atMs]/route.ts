/** The picture of a step of a draft under a secret address; no other moment's is taken for its holder. */
import { serveStored } from '#app/http/serve-stored.ts';
import { fault } from '#app/http/with-member.ts';
import { NEVER_KEPT, type PreviewParams, withPreview } from '#app/http/with-preview.ts';
import { openBench } from '#lib/bench/bench.ts';
import { findOrTakeStill } from '#lib/bench/find-still.ts';
import { queue } from '#lib/jobs/queue.ts';

const serve = withPreview<PreviewParams & { atMs: string }>(async (request, revision, params) => {
  const { recording, stills } = revision;
  const still = stills.find(({ atMs }) => String(atMs) === params.atMs);
  if (!recording || !still) return fault(404, 'not-found');
  const asked = { recordingId: recording.id, atMs: still.atMs };
  const key = await findOrTakeStill(openBench(), await queue(), asked, request.signal);
  if (key) return serveStored(request, key, 'image/jpeg', { cache: NEVER_KEPT });
  const busy = fault(503, 'no-picture-yet');
  busy.headers.set('retry-after', '5');
  return busy;
});

export { serve as GET, serve as HEAD };
