/** A computed picture: `…/pictures/ID.svg` of a placement, or `piece.svg`; `?roll=` and `?side=` turn it. */
import { type RevisionParams, withRevision } from '#app/http/with-revision.ts';
import { answerPicture } from '#app/pictures/answer-picture.ts';

// A later version of the program may draw better: kept for a day, not for ever.
export const GET = withRevision<RevisionParams & { picture: string }>((request, { content }, params) =>
  answerPicture(request, { content, file: params.picture, kept: 'public, max-age=86400' }),
);
