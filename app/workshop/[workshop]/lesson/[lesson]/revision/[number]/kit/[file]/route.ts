/** The kit of a revision for the measure in the address, as a file. */
import { answerText } from '#app/http/answer-text.ts';
import { fault } from '#app/http/with-member.ts';
import { type RevisionParams, withRevision } from '#app/http/with-revision.ts';
import { lessonPath } from '#app/lesson-page/page-addresses.ts';
import { isKitFile, kitFile } from '#app/paper/kit-file.ts';
import { sheetLessonOf } from '#app/paper/kit-sheet.ts';
import { toBePictured } from '#app/pictures/own-shapes.ts';
import { stepsForPaper } from '#app/pictures/pictures-for-paper.ts';
import { environment } from '#lib/config/environment.ts';
import { kitFor } from '#lib/kit/kit-list.ts';
import { bodyMmOf, measureOfQuery } from '#lib/lesson/asked-measure.ts';

type Params = RevisionParams & { file: string };

export const GET = withRevision<Params>(
  async (request, revision, { workshop, lesson, file }, _id, latest) => {
    if (!isKitFile(file)) return fault(404, 'not-found');
    const { content } = revision;
    const query = Object.fromEntries(new URL(request.url).searchParams);
    const asked = measureOfQuery(query, content);
    const body = asked && bodyMmOf(asked, content.kitRules);
    if (!body) return fault(422, 'measure-missing');
    if (!body.ok) return fault(422, body.fault.code);
    const kit = kitFor(content, body.value);
    if (!kit.ok) return fault(422, kit.fault.code);
    const told = {
      ...sheetLessonOf(revision, `${environment().BENCHLEAF_ADDRESS}${lessonPath(workshop, lesson)}`),
      latest,
      ...(file === 'kit.pdf' ? { steps: stepsForPaper(await toBePictured(content)) } : {}),
    };
    const made = await kitFile(file, told, kit.value);
    return answerText(request, made.body, {
      type: made.type,
      // A revision never changes, but how a sheet is set may.
      cache: 'public, max-age=3600',
      ...(file === 'kit.csv' ? { saveAs: file } : {}),
    });
  },
);
