/** A lesson as a folder of plain files; `?draft=no` leaves out what is not published. What pupils reported and the like goes along for an owner alone. */
import { answerZip } from '#app/http/answer-zip.ts';
import { fault, withMember } from '#app/http/with-member.ts';
import type { LessonParams } from '#app/http/with-recording.ts';
import { toBePictured } from '#app/pictures/own-shapes.ts';
import { below, inTurn, lessonEntries } from '#app/portable/lesson-entries.ts';
import { gatherLesson } from '#lib/bench/gather-copy.ts';
import { database } from '#lib/data/database.ts';
import { openStorage } from '#lib/storage/open-storage.ts';

export const GET = withMember<LessonParams>('viewer', async (request, { workshop, role }, { lesson }) => {
  const withDraft = new URL(request.url).searchParams.get('draft') !== 'no';
  const copy = await gatherLesson(
    { db: database(), storage: openStorage() },
    { workshop, lessonId: lesson, withDraft, withBench: withDraft && role === 'owner' },
  );
  if (!copy) return fault(404, 'not-found');
  const pictured = await toBePictured(copy.shown.content);
  return answerZip(inTurn(below(copy.slug, lessonEntries(copy, pictured))), `${copy.slug}.zip`);
});
