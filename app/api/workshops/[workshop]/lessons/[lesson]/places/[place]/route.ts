/** Notes which revision stands in a place outside, or forgets it. */
import { z } from 'zod';
import { readBody } from '#app/http/read-body.ts';
import { fault, withMember } from '#app/http/with-member.ts';
import type { LessonParams } from '#app/http/with-recording.ts';
import { lessonPath } from '#app/lesson-page/page-addresses.ts';
import { openBench } from '#lib/bench/bench.ts';
import { openLesson } from '#lib/bench/open-lesson.ts';
import { forgetPlace, markDraftFile, markPlace } from '#lib/bench/paste-again.ts';
import { environment } from '#lib/config/environment.ts';
import { database } from '#lib/data/database.ts';
import { type DraftFile, isDraftFile } from '#lib/description/places.ts';

type Params = LessonParams & { place: string };

const marked = z.union([
  z.object({ revision: z.int().min(1), ticked: z.boolean() }),
  /** Its file was taken out of the draft. */
  z.object({ draft: z.literal(true) }),
]);

export const PUT = withMember<Params>('editor', async (request, at, { lesson: lessonId, place }) => {
  const lesson = await openLesson(at, lessonId);
  if (!lesson) return fault(404, 'not-found');
  const read = await readBody(request, marked);
  if (!read.ok) return read.refusal;
  const { slug } = at.workshop;
  const lessonAddress = `${environment().BENCHLEAF_ADDRESS}${lessonPath(slug, lesson.slug)}`;
  const of = { lessonId: lesson.id, workshop: slug, lessonAddress };
  if ('draft' in read.value && !isDraftFile(place)) return fault(422, 'place-not-found');
  const done = !('draft' in read.value)
    ? await markPlace(openBench(), of, { place, ...read.value })
    : await markDraftFile(openBench(), { ...of, workshopId: at.workshop.id }, place as DraftFile);
  return done.ok ? new Response(null, { status: 204 }) : fault(422, done.fault.code);
});

export const DELETE = withMember<Params>('editor', async (_request, at, { lesson: lessonId, place }) => {
  const lesson = await openLesson(at, lessonId);
  if (!lesson) return fault(404, 'not-found');
  await forgetPlace(database(), lesson.id, place);
  return new Response(null, { status: 204 });
});
