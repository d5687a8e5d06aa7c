/** Writes a lesson that was read from a portable copy: its rows, within the caller's transaction. */
import type { Queries } from '#lib/data/database.ts';
import { reviveEndedLesson, takenLessonSlugs } from '#lib/data/ended-lessons.ts';
import { addLessonBench } from '#lib/data/lesson-bench-rows.ts';
import { addLessonRow, addRevisionRow, addTranscriptRow } from '#lib/data/lesson-copy-rows.ts';
import { writePublishedLines } from '#lib/data/search.ts';
import { freeSlug } from '#lib/lesson/slug.ts';
import { invariant } from '#lib/result.ts';
import type { CopyPlace } from './copy-place.ts';
import type { ReadLesson } from './read-lesson-copy.ts';

/** Its address is taken from the copy, with a number where the workshop has it already: a lesson that was deleted gets its own again. */
export async function addLesson(tx: Queries, at: CopyPlace, lesson: ReadLesson): Promise<void> {
  const { manifest } = lesson;
  const latestMark = manifest.revisions.at(-1);
  const latest = latestMark ? await lesson.revision(latestMark) : null;
  const draft = lesson.draft ?? latest;
  invariant(draft !== null, 'a copy without revisions has a draft');
  const { workshopId } = at;
  if (latest) await reviveEndedLesson(tx, { workshopId, slug: manifest.slug, title: latest.content.title });
  await addLessonRow(tx, {
    id: lesson.id,
    workshopId,
    slug: freeSlug(manifest.slug, await takenLessonSlugs(tx, workshopId, manifest.slug)),
    content: draft.content,
    cues: draft.cues,
    currentId: lesson.currentId,
    recordings: lesson.recordings,
    now: at.now,
  });
  for (const mark of manifest.revisions) {
    await addRevisionRow(tx, {
      id: at.idFor(`${lesson.id} revision ${mark.number}`),
      lessonId: lesson.id,
      document: await lesson.revision(mark),
      publishedById: at.userId,
    });
  }
  if (latest) await writePublishedLines(tx, lesson.id, latest);
  if (lesson.bench) await addLessonBench(tx, lesson.id, lesson.bench, at.idFor);
  for (const [index, file] of manifest.transcriptFiles.entries()) {
    await addTranscriptRow(tx, {
      id: at.idFor(`${lesson.id} transcript ${index}`),
      lessonId: lesson.id,
      bytes: await lesson.transcriptFile(file.file),
      ...file,
    });
  }
}
