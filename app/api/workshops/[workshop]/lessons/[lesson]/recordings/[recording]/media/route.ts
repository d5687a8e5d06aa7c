/** The recording as it is played, whole or in part. */
import { serveStored } from '#app/http/serve-stored.ts';
import { withReadyRecording } from '#app/http/with-recording.ts';

const serve = withReadyRecording('viewer', async (request, recording) =>
  serveStored(request, recording.playableKey, recording.type),
);

export { serve as GET, serve as HEAD };
