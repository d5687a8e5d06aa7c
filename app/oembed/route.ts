/** oEmbed: `/oembed?url=…` tells other sites how to show a lesson (oembed.com, version 1.0). */
import { answerText } from '#app/http/answer-text.ts';
import { movedTo } from '#app/http/moved-or-ended.ts';
import { fault, withAnyone } from '#app/http/with-member.ts';
import { embedPath, publicAddresses, shelfPath } from '#app/lesson-page/page-addresses.ts';
import { environment } from '#lib/config/environment.ts';
import { database } from '#lib/data/database.ts';
import { findLatestRevision } from '#lib/data/revisions.ts';
import { fragmentOfQuery } from '#lib/lesson/asked-measure.ts';
import { oEmbed, roomOf } from '#lib/lesson/oembed.ts';
import { writeFragment } from '#lib/time/media-fragment.ts';

const LESSON = /^\/workshop\/([a-z0-9-]+)\/lesson\/([a-z0-9-]+)\/?$/;

export const GET = withAnyone(async (request) => {
  const asked = new URL(request.url).searchParams;
  // Of the two forms that the specification knows, one is enough; the other is answered as it says (section 2.3.2).
  if ((asked.get('format') ?? 'json') !== 'json') return fault(501, 'format-not-offered');
  const site = environment().BENCHLEAF_ADDRESS;
  const wanted = URL.parse(asked.get('url') ?? '');
  const isOurs = wanted?.origin === new URL(site).origin;
  const place = isOurs ? ((await movedTo(wanted.pathname, '')) ?? wanted.pathname) : '';
  const [, workshop, lesson] = LESSON.exec(place) ?? [];
  const revision = workshop && lesson ? await findLatestRevision(database(), workshop, lesson) : null;
  if (!wanted || !workshop || !lesson || !revision) return fault(404, 'not-found');
  const playAt = fragmentOfQuery(Object.fromEntries(wanted.searchParams));
  const { poster } = publicAddresses(workshop, lesson, revision.number, 'latest');
  const places = {
    site,
    shelf: `${site}${shelfPath(workshop)}`,
    embed: `${site}${embedPath(workshop, lesson)}${playAt === null ? '' : `?${writeFragment(playAt)}`}`,
    poster: revision.recording?.posterKey ? `${site}${poster}` : null,
  };
  const room = { width: roomOf(asked.get('maxwidth')), height: roomOf(asked.get('maxheight')) };
  const answer = answerText(request, JSON.stringify(oEmbed(revision, places, room)), {
    type: 'application/json; charset=utf-8',
    cache: 'public, max-age=300',
  });
  // Public, and asked for by scripts of other sites.
  answer.headers.set('access-control-allow-origin', '*');
  return answer;
});
