/** The draft as files in open formats: captions, chapters, transcript. */
import { attachment } from '#app/http/attachment.ts';
import { fault, withMember } from '#app/http/with-member.ts';
import type { LessonParams } from '#app/http/with-recording.ts';
import { openBench } from '#lib/bench/bench.ts';
import { DRAFT_EXPORTS, exportDraft, isDraftExport } from '#lib/bench/export-draft.ts';
import { openLesson } from '#lib/bench/open-lesson.ts';

type Params = LessonParams & { file: string };

export const GET = withMember<Params>('viewer', async (_request, at, params) => {
  const { file } = params;
  const lesson = await openLesson(at, params.lesson);
  if (!lesson || !isDraftExport(file)) return fault(404, 'not-found');
  const address = { lessonId: lesson.id, workshopId: at.workshop.id };
  const text = await exportDraft(openBench(), address, file);
  if (text === null) return fault(404, 'not-found');
  return new Response(text, {
    headers: {
      'content-type': `${DRAFT_EXPORTS[file]}; charset=utf-8`,
      'content-disposition': attachment(`${lesson.slug}-${file}`),
      'x-content-type-options': 'nosniff',
      'cache-control': 'private, no-store',
    },
  });
});
