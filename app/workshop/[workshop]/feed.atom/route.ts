/** A workshop's published lessons as an Atom feed. */
import { answerText, FEED } from '#app/http/answer-text.ts';
import { feedOf } from '#app/http/feed-of.ts';
import { withPublic } from '#app/http/moved-or-ended.ts';
import { fault } from '#app/http/with-member.ts';
import { feedPath } from '#app/lesson-page/page-addresses.ts';
import { atomFeed } from '#lib/feeds/atom-feed.ts';

export const GET = withPublic<{ workshop: string }>(async (request, { workshop }) => {
  const of = await feedOf(workshop, feedPath(workshop));
  return of ? answerText(request, atomFeed(of), FEED) : fault(404, 'not-found');
});
