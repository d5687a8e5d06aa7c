/** The recording of a revision, whole or in part. */
import { FROZEN } from '#app/http/answer-text.ts';
import { serveStored } from '#app/http/serve-stored.ts';
import { fault } from '#app/http/with-member.ts';
import { withRevision } from '#app/http/with-revision.ts';

const serve = withRevision((request, { recording }) =>
  recording
    ? serveStored(request, recording.mediaKey, recording.mediaType, { cache: FROZEN })
    : fault(404, 'not-found'),
);

export { serve as GET, serve as HEAD };
