import { z } from 'zod';
import { readBody } from '#app/http/read-body.ts';
import { withMember } from '#app/http/with-member.ts';
import { openBench } from '#lib/bench/bench.ts';
import { createLesson, lessonTitle } from '#lib/bench/create-lesson.ts';

export const POST = withMember('editor', async (request, at) => {
  const read = await readBody(request, z.object({ title: lessonTitle }));
  if (!read.ok) return read.refusal;
  return Response.json({ lesson: await createLesson(openBench(), at, read.value) }, { status: 201 });
});
