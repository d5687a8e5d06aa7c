/** What the worker makes of a published revision: how far it is, and making again what was given up. */

import { fault } from '#app/http/with-member.ts';
import { type LessonParams, withLesson } from '#app/http/with-recording.ts';
import { numberOfAddress } from '#app/http/with-revision.ts';
import { database } from '#lib/data/database.ts';
import { retryRevisionFile, revisionFiles } from '#lib/data/revision-files.ts';
import { listRevisions } from '#lib/data/revisions.ts';
import { queue } from '#lib/jobs/queue.ts';

type Params = LessonParams & { number: string };

async function revisionId(lessonId: string, number: string): Promise<string | null> {
  const wanted = numberOfAddress(number);
  const marks = await listRevisions(database(), lessonId);
  return marks.find((mark) => mark.number === wanted)?.id ?? null;
}

async function answer(id: string): Promise<Response> {
  const files = await revisionFiles(database(), id);
  return Response.json(
    { files: files.map((file) => ({ ...file, storageKey: undefined })) },
    { headers: { 'cache-control': 'no-store' } },
  );
}

export const GET = withLesson<Params>('viewer', async (_request, lesson, { number }) => {
  const id = await revisionId(lesson.id, number);
  return id === null ? fault(404, 'not-found') : answer(id);
});

export const POST = withLesson<Params>('editor', async (_request, lesson, { number }) => {
  const id = await revisionId(lesson.id, number);
  if (id === null) return fault(404, 'not-found');
  const jobs = await queue();
  for (const { name, state } of await revisionFiles(database(), id)) {
    if (state !== 'failed') continue;
    await database().$transaction(async (tx) => {
      const file = { revisionId: id, name };
      if (await retryRevisionFile(tx, file)) await jobs.send('make-revision-file', file, tx);
    });
  }
  return answer(id);
});
