/** A workshop's recordings as a podcast. */
import { answerText } from '#app/http/answer-text.ts';
import { feedOf } from '#app/http/feed-of.ts';
import { withPublic } from '#app/http/moved-or-ended.ts';
import { fault } from '#app/http/with-member.ts';
import { podcastPath } from '#app/lesson-page/page-addresses.ts';
import { podcastFeed } from '#lib/feeds/podcast-feed.ts';

export const GET = withPublic<{ workshop: string }>(async (request, { workshop }) => {
  const of = await feedOf(workshop, podcastPath(workshop));
  return of
    ? answerText(request, podcastFeed(of), {
        type: 'application/rss+xml; charset=utf-8',
        cache: 'public, max-age=300',
      })
    : fault(404, 'not-found');
});
