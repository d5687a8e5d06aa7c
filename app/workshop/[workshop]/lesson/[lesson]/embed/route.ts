/** The latest revision's player for pages of other sites: the one address of ours that may stand in their frames. */
import { answerText } from '#app/http/answer-text.ts';
import { withPublic } from '#app/http/moved-or-ended.ts';
import { fault } from '#app/http/with-member.ts';
import { embedPage, endedEmbed } from '#app/lesson-page/embed-page.ts';
import { lessonPath, publicAddresses } from '#app/lesson-page/page-addresses.ts';
import { environment } from '#lib/config/environment.ts';
import { database } from '#lib/data/database.ts';
import { findEndedLesson } from '#lib/data/ended-lessons.ts';
import { findLatestRevision } from '#lib/data/revisions.ts';
import { fragmentOfQuery } from '#lib/lesson/asked-measure.ts';

type Params = { workshop: string; lesson: string };

export const GET = withPublic<Params>(async (request, { workshop, lesson }) => {
  const revision = await findLatestRevision(database(), workshop, lesson);
  if (!revision) {
    const ended = await findEndedLesson(database(), workshop, lesson);
    if (!ended) return fault(404, 'not-found');
    return new Response(endedEmbed(ended), {
      status: 410,
      headers: { 'content-type': 'text/html; charset=utf-8', 'cache-control': 'public, max-age=300' },
    });
  }
  const files = publicAddresses(workshop, lesson, revision.number, 'latest');
  const at = {
    lesson: `${environment().BENCHLEAF_ADDRESS}${lessonPath(workshop, lesson)}`,
    recording: files.recording,
    poster: files.poster,
    captions: files.textFile('captions.vtt'),
    chapters: files.textFile('chapters.vtt'),
  };
  const query = Object.fromEntries(new URL(request.url).searchParams);
  return answerText(request, embedPage(revision, at, fragmentOfQuery(query)), {
    type: 'text/html; charset=utf-8',
    // The next revision has another recording, other captions, or a correction.
    cache: 'public, max-age=300',
  });
});
