/** The waveform: one byte per 50 ms, the window's largest amplitude from 0 to 255. */
import { serveStored } from '#app/http/serve-stored.ts';
import { fault } from '#app/http/with-member.ts';
import { withReadyRecording } from '#app/http/with-recording.ts';

const serve = withReadyRecording('viewer', async (request, { peaksKey }) =>
  peaksKey ? serveStored(request, peaksKey, 'application/octet-stream') : fault(404, 'no-sound'),
);

export { serve as GET, serve as HEAD };
