/** A computed picture of the draft: `…/pictures/ID.svg` of a placement, or `piece.svg`. */
import { fault, withMember } from '#app/http/with-member.ts';
import { answerPicture } from '#app/pictures/answer-picture.ts';
import { openBench } from '#lib/bench/bench.ts';
import { findDraft } from '#lib/data/lessons.ts';

type Params = { workshop: string; lesson: string; picture: string };

export const GET = withMember<Params>('viewer', async (request, at, params) => {
  const draft = await findDraft(openBench().db, { workshopId: at.workshop.id, lessonId: params.lesson });
  return draft
    ? answerPicture(request, { content: draft.content, file: params.picture, kept: 'private, no-cache' })
    : fault(404, 'not-found');
});
