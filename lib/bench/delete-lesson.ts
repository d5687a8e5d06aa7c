/**
 * Deletes a lesson for ever: draft, recordings, revisions and their public pages. Where it was
 * published its addresses go on answering that it has ended, since they stand on kits and sheets.
 */
import { z } from 'zod';
import { type Membership, roleSuffices } from '#lib/access/caller.ts';
import { discardFiles, removeDiscardedFiles } from '#lib/data/discarded-files.ts';
import { noteEndedLesson } from '#lib/data/ended-lessons.ts';
import { failed, ok, type Result } from '#lib/result.ts';
import type { Bench } from './bench.ts';

/** `published-needs-owner`: what pupils may have bought kits after is not an editor's to take away. */
export interface DeleteLessonFault {
  readonly code: 'not-found' | 'published-needs-owner';
}

/**
 * Deletes a lesson of the membership's workshop. The rows go at once or not at
 * all; the files after them, and where that is cut short at the next deletion.
 */
export async function deleteLesson(
  { db, now }: Bench,
  { workshop, role }: Membership,
  lessonId: string,
  removeFile: (storageKey: string) => Promise<void>,
): Promise<Result<null, DeleteLessonFault>> {
  const deleted = await db.$transaction(async (tx): Promise<Result<null, DeleteLessonFault>> => {
    // Holds back a publication that would slip in between.
    await tx.$queryRaw`SELECT "id" FROM "lesson" WHERE "id" = ${lessonId} FOR UPDATE`;
    const lesson = await tx.lesson.findFirst({
      where: { id: lessonId, workshopId: workshop.id },
      select: {
        slug: true,
        content: true,
        recordings: {
          select: { originalKey: true, playableKey: true, posterKey: true, peaksKey: true, stills: true },
        },
        revisions: { select: { document: true, files: { select: { storageKey: true } } } },
      },
    });
    if (!lesson) return failed({ code: 'not-found' });
    if (lesson.revisions.length > 0 && !roleSuffices(role, 'owner')) {
      return failed({ code: 'published-needs-owner' });
    }
    const keys = lesson.recordings.flatMap(({ stills, ...recording }) => [
      ...Object.values(recording),
      ...stills.map((still) => still.storageKey),
    ]);
    const frozen = lesson.revisions.flatMap(({ document, files }) => [
      ...filesOf(document),
      ...files.map(({ storageKey }) => storageKey),
    ]);
    await discardFiles(
      tx,
      [...keys, ...frozen].filter((key) => key !== null),
    );
    if (lesson.revisions.length > 0) {
      const { title } = titled.parse(lesson.content);
      await noteEndedLesson(tx, { workshopId: workshop.id, slug: lesson.slug, title, endedAt: now() });
    }
    await tx.lesson.delete({ where: { id: lessonId } });
    return ok(null);
  });
  if (deleted.ok) await removeDiscardedFiles(db, removeFile);
  return deleted;
}

const titled = z.object({ title: z.string() });

/** Only what is needed here, so that a revision of an older schema can be deleted too. */
const frozenFiles = z.object({
  recording: z.object({ mediaKey: z.string(), posterKey: z.string().nullable() }).nullable(),
  stills: z.array(z.object({ key: z.string() })),
});

function filesOf(document: unknown): readonly (string | null)[] {
  const { recording, stills } = frozenFiles.parse(document);
  return [recording?.mediaKey ?? null, recording?.posterKey ?? null, ...stills.map((still) => still.key)];
}
