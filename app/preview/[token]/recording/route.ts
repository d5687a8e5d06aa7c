/** The recording of a draft under a secret address, whole or in part. */
import { serveStored } from '#app/http/serve-stored.ts';
import { NEVER_KEPT, withPreviewRecording } from '#app/http/with-preview.ts';

const serve = withPreviewRecording((request, { mediaKey, mediaType }) =>
  serveStored(request, mediaKey, mediaType, { cache: NEVER_KEPT }),
);

export { serve as GET, serve as HEAD };
