/**
 * The lesson's comparison of two recordings that nobody has decided yet, and the one that gave it the recording it has;
 * begins one with the recording of another lesson, whose transcript may be placed.
 */
import { readBody } from '#app/http/read-body.ts';
import { fault, withMember } from '#app/http/with-member.ts';
import { type LessonParams, withLesson } from '#app/http/with-recording.ts';
import { openBench } from '#lib/bench/bench.ts';
import { beginPlacing, placingRequest } from '#lib/bench/place-other-transcript.ts';
import { acceptedComparison, openComparison } from '#lib/data/comparisons.ts';
import { database } from '#lib/data/database.ts';
import { queue } from '#lib/jobs/queue.ts';

export const GET = withLesson('viewer', async (_request, lesson) => {
  const [comparison, accepted] = await Promise.all([
    openComparison(database(), lesson.id),
    acceptedComparison(database(), lesson.id),
  ]);
  return Response.json({ comparison, accepted }, { headers: { 'cache-control': 'no-store' } });
});

export const POST = withMember<LessonParams>('editor', async (request, at, { lesson }) => {
  const read = await readBody(request, placingRequest);
  if (!read.ok) return read.refusal;
  const begun = await beginPlacing(openBench(), await queue(), at, {
    lessonId: lesson,
    from: read.value.from,
  });
  if (begun.ok) return Response.json({ comparison: begun.value }, { status: 201 });
  return fault(begun.fault.code === 'not-found' ? 404 : 409, begun.fault.code);
});
