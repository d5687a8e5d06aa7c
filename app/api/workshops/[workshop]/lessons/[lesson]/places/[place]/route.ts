/** Notes which revision stands in a place outside, or forgets it. */
import { z } from 'zod';
import { readBody } from '#app/http/read-body.ts';
import { fault, withMember } from '#app/http/with-member.ts';
import type { LessonParams } from '#app/http/with-recording.ts';
import { lessonPath } from '#app/lesson-page/page-addresses.ts';
import { openBench } from '#lib/bench/bench.ts';
import { openLesson } from '#lib/bench/open-lesson.ts';
import { forgetPlace, markPlace } from '#lib/bench/paste-again.ts';
import { environment } from '#lib/config/environment.ts';
import { database } from '#lib/data/database.ts';

type Params = LessonParams & { place: string };

const marked = z.object({ revision: z.int().min(1), ticked: z.boolean() });

export const PUT = withMember<Params>('editor', async (request, at, { lesson: lessonId, place }) => {
  const lesson = await openLesson(at, lessonId);
  if (!lesson) return fault(404, 'not-found');
  const read = await readBody(request, marked);
  if (!read.ok) return read.refusal;
  const { slug } = at.workshop;
  const lessonAddress = `${environment().BENCHLEAF_ADDRESS}${lessonPath(slug, lesson.slug)}`;
  const of = { lessonId: lesson.id, workshop: slug, lessonAddress };
  const done = await markPlace(openBench(), of, { place, ...read.value });
  return done.ok ? new Response(null, { status: 204 }) : fault(422, done.fault.code);
});

export const DELETE = withMember<Params>('editor', async (_request, at, { lesson: lessonId, place }) => {
  const lesson = await openLesson(at, lessonId);
  if (!lesson) return fault(404, 'not-found');
  await forgetPlace(database(), lesson.id, place);
  return new Response(null, { status: 204 });
});
