/** Kits of the draft as files: for one measure, or for a class or a batch (`kits=3 <size>`, once a size). */
import { answerFile } from '#app/http/answer-file.ts';
import { fault, withMember } from '#app/http/with-member.ts';
import type { LessonParams } from '#app/http/with-recording.ts';
import { lessonPath } from '#app/lesson-page/page-addresses.ts';
import { type BatchFileFault, batchFile, isBatchFile, pickedByQuery } from '#app/paper/batch-file.ts';
import { isKitFile, kitFile } from '#app/paper/kit-file.ts';
import type { SheetLesson } from '#app/paper/kit-sheet.ts';
import { toBePictured } from '#app/pictures/own-shapes.ts';
import { stepsForPaper } from '#app/pictures/pictures-for-paper.ts';
import { openLesson } from '#lib/bench/open-lesson.ts';
import { environment } from '#lib/config/environment.ts';
import { database } from '#lib/data/database.ts';
import { findDraft } from '#lib/data/lessons.ts';
import { kitFor } from '#lib/kit/kit-list.ts';
import { bodyMmOf, measureOfQuery } from '#lib/lesson/asked-measure.ts';

type Params = LessonParams & { file: string };

export const GET = withMember<Params>('viewer', async (request, at, { lesson: lessonId, file }) => {
  const lesson = await openLesson(at, lessonId);
  const draft = lesson && (await findDraft(database(), { lessonId, workshopId: at.workshop.id }));
  if (!lesson || !draft) return fault(404, 'not-found');
  const { content } = draft;
  const told: SheetLesson = {
    title: content.title,
    weave: content.weave,
    workshop: at.workshop.name,
    language: content.language,
    address:
      lesson.published === null
        ? null
        : `${environment().BENCHLEAF_ADDRESS}${lessonPath(at.workshop.slug, lesson.slug)}`,
    revision: null,
    at: new Date(),
  };
  const query = new URL(request.url).searchParams;
  if (isBatchFile(file)) {
    const made = await batchFile(file, told, pickedByQuery(content, query));
    return made.ok ? answerFile(made.value, `${lesson.slug}-${file}`) : refuse(made.fault);
  }
  if (!isKitFile(file)) return fault(404, 'not-found');
  const asked = measureOfQuery(Object.fromEntries(query), content);
  const body = asked && bodyMmOf(asked, content.kitRules);
  if (!body) return fault(422, 'measure-missing');
  if (!body.ok) return fault(422, body.fault.code);
  const kit = kitFor(content, body.value);
  if (!kit.ok) return fault(422, kit.fault.code);
  const steps = file === 'kit.pdf' ? { steps: stepsForPaper(await toBePictured(content)) } : {};
  return answerFile(await kitFile(file, { ...told, ...steps }, kit.value), `${lesson.slug}-${file}`);
});

const refuse = ({ code }: BatchFileFault): Response => fault(422, code);
