/** What was corrected in a lesson since it was published, as an Atom feed. */
import { answerText, FEED } from '#app/http/answer-text.ts';
import { correctionsOfLesson } from '#app/http/corrections-of.ts';
import { withPublic } from '#app/http/moved-or-ended.ts';
import { fault } from '#app/http/with-member.ts';
import { correctionsFeed } from '#lib/feeds/corrections-feed.ts';

export const GET = withPublic<{ workshop: string; lesson: string }>(async (request, { workshop, lesson }) => {
  const of = await correctionsOfLesson(workshop, lesson);
  return of ? answerText(request, correctionsFeed(of), FEED) : fault(404, 'not-found');
});
