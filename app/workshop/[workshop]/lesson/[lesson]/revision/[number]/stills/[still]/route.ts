/** The picture of one step: `…/stills/ID.jpg`. */
import { FROZEN } from '#app/http/answer-text.ts';
import { serveStored } from '#app/http/serve-stored.ts';
import { fault } from '#app/http/with-member.ts';
import { type RevisionParams, withRevision } from '#app/http/with-revision.ts';

const serve = withRevision<RevisionParams & { still: string }>((request, { stills }, params) => {
  const still = stills.find(({ of }) => `${of}.jpg` === params.still);
  return still ? serveStored(request, still.key, 'image/jpeg', { cache: FROZEN }) : fault(404, 'not-found');
});

export { serve as GET, serve as HEAD };
