/** The draft as files in open formats: captions, chapters, transcript. */
import { attachment } from '#app/http/attachment.ts';
import { fault, withMember } from '#app/http/with-member.ts';
import type { LessonParams } from '#app/http/with-recording.ts';
import { openLesson } from '#lib/bench/open-lesson.ts';
import { database } from '#lib/data/database.ts';
import { findDraft } from '#lib/data/lessons.ts';
import { currentRecording } from '#lib/data/recordings.ts';
import { isTextFile, TEXT_FILES, writeTextFile } from '#lib/lesson/text-files.ts';

type Params = LessonParams & { file: string };

export const GET = withMember<Params>('viewer', async (_request, at, params) => {
  const { file } = params;
  const lesson = await openLesson(at, params.lesson);
  if (!lesson || !isTextFile(file)) return fault(404, 'not-found');
  const draft = await findDraft(database(), { lessonId: lesson.id, workshopId: at.workshop.id });
  if (!draft) return fault(404, 'not-found');
  const recording = await currentRecording(database(), lesson.id);
  const text = writeTextFile(file, { ...draft, durationMs: recording?.durationMs ?? null });
  return new Response(text, {
    headers: {
      'content-type': `${TEXT_FILES[file]}; charset=utf-8`,
      'content-disposition': attachment(`${lesson.slug}-${file}`),
      'x-content-type-options': 'nosniff',
      'cache-control': 'private, no-store',
    },
  });
});
