/** A computed picture of a draft under a secret address: `…/pictures/ID.svg` of a placement, or `piece.svg`. */
import { NEVER_KEPT, type PreviewParams, withPreview } from '#app/http/with-preview.ts';
import { answerPicture } from '#app/pictures/answer-picture.ts';

export const GET = withPreview<PreviewParams & { picture: string }>((request, { content }, { picture }) =>
  answerPicture(request, { content, file: picture, kept: NEVER_KEPT }),
);
