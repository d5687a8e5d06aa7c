/** The papers of a recorded batch: labels, inserts and picking sheet by its own revision, and what the latest one changes in it. */
import { answerFile } from '#app/http/answer-file.ts';
import { fault, withMember } from '#app/http/with-member.ts';
import type { LessonParams } from '#app/http/with-recording.ts';
import { lessonPath } from '#app/lesson-page/page-addresses.ts';
import { batchFile, isBatchFile, pickedByRecord } from '#app/paper/batch-file.ts';
import { exchangeSheet } from '#app/paper/exchange-sheet.ts';
import { type SheetLesson, sheetLessonOf } from '#app/paper/kit-sheet.ts';
import { makePdf } from '#app/paper/make-pdf.ts';
import { openLesson } from '#lib/bench/open-lesson.ts';
import { environment } from '#lib/config/environment.ts';
import { database } from '#lib/data/database.ts';
import { findKitBatch } from '#lib/data/kit-batches.ts';
import { getRevision, listRevisions } from '#lib/data/revisions.ts';
import { exchangeCsv } from '#lib/kit/exchange-csv.ts';
import { batchChange } from '#lib/lesson/batch-change.ts';
import type { Revision } from '#lib/lesson/revision.ts';

type Params = LessonParams & { batch: string; file: string };

export const GET = withMember<Params>(
  'viewer',
  async (request, at, { lesson: lessonId, batch: id, file }) => {
    const lesson = await openLesson(at, lessonId);
    const batch = lesson && (await findKitBatch(database(), lesson.id, id));
    const marks = batch ? await listRevisions(database(), lesson.id) : [];
    const mark = marks.find(({ number }) => number === batch?.revision);
    const [latest] = marks;
    if (!lesson || !batch || !mark || !latest) return fault(404, 'not-found');
    const held = await getRevision(database(), mark.id);
    const address = `${environment().BENCHLEAF_ADDRESS}${lessonPath(at.workshop.slug, lesson.slug)}`;
    const told = (revision: Revision): SheetLesson => sheetLessonOf(revision, address);
    const name = `${lesson.slug}-revision-${held.number}-${file}`;
    if (isBatchFile(file)) {
      const from = /^[1-9]\d{0,5}$/.exec(new URL(request.url).searchParams.get('from') ?? '1');
      const picked = pickedByRecord(held.content, batch, Number(from?.[0] ?? 1));
      const made = await batchFile(file, told(held), picked);
      return made.ok ? answerFile(made.value, name) : fault(422, made.fault.code);
    }
    const now = await getRevision(database(), latest.id);
    const change = batchChange(batch, held.content, now.content);
    if (file === 'changes.csv')
      return answerFile(
        { body: exchangeCsv(change.parts, change.lines), type: 'text/csv; charset=utf-8' },
        name,
      );
    if (file !== 'changes.pdf') return fault(404, 'not-found');
    const sheet = exchangeSheet(told(now), held.number, change, batch.rule);
    return answerFile({ body: await makePdf(sheet), type: 'application/pdf' }, name);
  },
);
