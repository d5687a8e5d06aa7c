/** The picture that stands for a revision's recording. */
import { FROZEN } from '#app/http/answer-text.ts';
import { serveStored } from '#app/http/serve-stored.ts';
import { fault } from '#app/http/with-member.ts';
import { withRevision } from '#app/http/with-revision.ts';

const serve = withRevision((request, { recording }) =>
  recording?.posterKey
    ? serveStored(request, recording.posterKey, 'image/jpeg', { cache: FROZEN })
    : fault(404, 'not-found'),
);

export { serve as GET, serve as HEAD };
