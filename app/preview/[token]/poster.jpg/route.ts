/** The picture that stands for a draft's recording, under a secret address. */
import { serveStored } from '#app/http/serve-stored.ts';
import { fault } from '#app/http/with-member.ts';
import { NEVER_KEPT, withPreviewRecording } from '#app/http/with-preview.ts';

const serve = withPreviewRecording((request, { posterKey }) =>
  posterKey ? serveStored(request, posterKey, 'image/jpeg', { cache: NEVER_KEPT }) : fault(404, 'not-found'),
);

export { serve as GET, serve as HEAD };
