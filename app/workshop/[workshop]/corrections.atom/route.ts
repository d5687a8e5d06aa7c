/** What a workshop has corrected in its published lessons, as an Atom feed. */
import { answerText, FEED } from '#app/http/answer-text.ts';
import { correctionsOfWorkshop } from '#app/http/corrections-of.ts';
import { withPublic } from '#app/http/moved-or-ended.ts';
import { fault } from '#app/http/with-member.ts';
import { correctionsFeed } from '#lib/feeds/corrections-feed.ts';

export const GET = withPublic<{ workshop: string }>(async (request, { workshop }) => {
  const of = await correctionsOfWorkshop(workshop);
  return of ? answerText(request, correctionsFeed(of), FEED) : fault(404, 'not-found');
});
