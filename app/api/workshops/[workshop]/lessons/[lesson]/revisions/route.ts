/** Publishes the next revision of a lesson. */
import { readBody } from '#app/http/read-body.ts';
import { fault, withMember } from '#app/http/with-member.ts';
import { openBench } from '#lib/bench/bench.ts';
import { findOrTakeStill } from '#lib/bench/find-still.ts';
import { frozenRecordingOf } from '#lib/bench/frozen-recording.ts';
import {
  type PublishFault,
  publishLesson,
  publishRequest,
  type Recordings,
} from '#lib/bench/publish-lesson.ts';
import { queue } from '#lib/jobs/queue.ts';

type Params = { workshop: string; lesson: string };

export const POST = withMember<Params>('editor', async (request, at, params) => {
  const body = await readBody(request, publishRequest);
  if (!body.ok) return body.refusal;
  const bench = openBench();
  const recordings: Recordings = {
    current: (lessonId) => frozenRecordingOf(bench.db, lessonId),
    takeStill: async (recordingId, atMs) =>
      findOrTakeStill(bench, await queue(), { recordingId, atMs }, request.signal),
    makeLater: async (tx, revisionId, names) => {
      const jobs = await queue();
      for (const name of names) await jobs.send('make-revision-file', { revisionId, name }, tx);
    },
  };
  const published = await publishLesson(bench, recordings, {
    ...body.value,
    workshopId: at.workshop.id,
    lessonId: params.lesson,
    userId: at.caller.userId,
    workshop: { name: at.workshop.name, slug: at.workshop.slug },
  });
  return published.ok
    ? Response.json(published.value, { status: 201, headers: { 'cache-control': 'no-store' } })
    : refuse(published.fault);
});

function refuse(why: PublishFault): Response {
  const { code, ...facts } = why;
  switch (code) {
    case 'not-found':
      return fault(404, code);
    case 'something-missing':
      return fault(422, code, facts);
    case 'picture-not-taken':
      return fault(503, code, facts);
    case 'draft-is-newer':
    case 'recording-changed':
    case 'request-id-taken':
      return fault(409, code, facts);
  }
}
