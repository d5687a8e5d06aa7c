/**
 * Reads a portable copy into a workshop: of one lesson, or of a whole
 * workshop. Everything is read and looked at before a row is written; then
 * all of it is there in one transaction, or nothing. What the workshop has
 * already is never overwritten.
 */
import { z } from 'zod';
import { type CopyFault, CopyRefused } from '#lib/copies/copy-fault.ts';
import { type OpenCopy, openCopy } from '#lib/copies/read-zip.ts';
import type { Queries } from '#lib/data/database.ts';
import {
  type ClaimedCopy,
  claimCopy,
  finishCopy,
  noteCopyStep,
  refuseCopy,
} from '#lib/data/portable-copies.ts';
import { LESSON_FILE } from '#lib/portable/portable-lesson.ts';
import { portableWorkshop, WORKSHOP_FILE } from '#lib/portable/portable-workshop.ts';
import { arrived, arrivingPath, removeArrived } from '#lib/recording/arriving.ts';
import type { RecordingWork } from '#lib/recording/recording-work.ts';
import type { CopyPlace } from './copy-place.ts';
import { retryOnTakenSlug } from './create-workshop.ts';
import { idFrom, type ReadLesson, readDocument, readLessonCopy } from './read-lesson-copy.ts';
import { addLesson } from './write-lesson-copy.ts';
import { addToWorkshop } from './write-workshop-copy.ts';

/** More than any teacher has. */
const MOST_LESSONS = 1_000;
/** Failures that are nobody's file's fault are tried so often before a person is asked. */
const MOST_ATTEMPTS = 3;
/** A long transaction: a workshop's lessons with all their cues, ms. */
const LONGEST_WRITE_MS = 300_000;

/** Every end that concerns the file is written to the copy; what is thrown is for the queue to try again. */
export async function bringInCopy(
  work: RecordingWork,
  { copyId }: { readonly copyId: string },
  {
    signal,
    number = 1,
    largestBytes,
  }: { readonly signal: AbortSignal; readonly number?: number; readonly largestBytes: number },
): Promise<void> {
  const copy = await claimCopy(work.db, copyId, work.newId());
  if (!copy) return;
  const stored: string[] = [];
  try {
    await bringIn(work, copy, { signal, largestBytes, onStore: (key) => stored.push(key) });
  } catch (error) {
    const fault = faultOf(error, !signal.aborted && number >= MOST_ATTEMPTS);
    if (!fault) throw error;
    for (const key of stored) await work.storage.remove(key);
    await refuseCopy(work.db, copy, fault);
  }
  await removeArrived(work.filesFolder, copyId);
}

/** Null where another attempt may help. */
function faultOf(error: unknown, isLast: boolean): CopyFault | null {
  if (error instanceof CopyRefused) return error.fault;
  const code = error instanceof Error && 'code' in error ? error.code : '';
  if (code === 'ENOSPC' || code === 'EDQUOT') return { code: 'disk-full' };
  return isLast ? { code: 'gave-up' } : null;
}

async function bringIn(
  work: RecordingWork,
  copy: ClaimedCopy,
  {
    signal,
    largestBytes,
    onStore,
  }: {
    readonly signal: AbortSignal;
    /** Of one recording. */
    readonly largestBytes: number;
    readonly onStore: (key: string) => void;
  },
): Promise<void> {
  const file = await arrived(work.filesFolder, copy.id);
  if (file?.bytes !== copy.sizeBytes) throw new CopyRefused({ code: 'incomplete' });
  const zip = await openCopy(arrivingPath(work.filesFolder, copy.id));
  try {
    const { lessons: roots, workshop: workshopFile } = placesIn(zip);
    const workshop = workshopFile ? await readDocument(zip, workshopFile, portableWorkshop) : null;
    const lessons: ReadLesson[] = [];
    for (const root of roots) {
      lessons.push(
        await readLessonCopy({
          work,
          zip,
          root,
          seed: copy.id,
          largestBytes,
          signal,
          onStep: async (step) => {
            signal.throwIfAborted();
            if (!(await noteCopyStep(work.db, copy, step))) throw new Error('Another attempt has this copy');
          },
          onStore,
        }),
      );
    }
    await retryOnTakenSlug(() =>
      work.db.$transaction(
        async (tx) => {
          const at = await placeOf(tx, copy);
          for (const lesson of lessons) await addLesson(tx, at, lesson);
          if (workshop) await addToWorkshop(tx, at, workshop);
          const ids = lessons.map(({ id }) => id);
          if (!(await finishCopy(tx, copy, ids))) throw new Error('Another attempt has this copy');
        },
        { timeout: LONGEST_WRITE_MS },
      ),
    );
  } finally {
    zip.close();
  }
}

async function placeOf(tx: Queries, { id, workshopId, userId }: ClaimedCopy): Promise<CopyPlace> {
  const member = await tx.member.findFirst({ where: { workshopId, userId }, select: { role: true } });
  return {
    workshopId,
    userId,
    isOwner: z.string().nullish().parse(member?.role) === 'owner',
    now: new Date(),
    idFor: (thing) => idFrom(`${id} ${thing}`),
  };
}

/** Folders of lessons, however deep the archive packs them, and the workshop's own file. @throws CopyRefused */
export function placesIn(zip: Pick<OpenCopy, 'names'>): {
  readonly lessons: readonly string[];
  readonly workshop: string | null;
} {
  const foldersOf = (file: string): string[] =>
    zip.names
      .filter((name) => name === file || name.endsWith(`/${file}`))
      // What some systems put beside every file they pack.
      .filter((name) => !name.startsWith('__MACOSX/'))
      .map((name) => name.slice(0, name.length - file.length))
      .toSorted();
  const lessons = foldersOf(LESSON_FILE);
  const [workshop, second] = foldersOf(WORKSHOP_FILE);
  if (second !== undefined || (workshop === undefined && lessons.length === 0)) {
    throw new CopyRefused({ code: 'no-lesson' });
  }
  if (lessons.length > MOST_LESSONS) throw new CopyRefused({ code: 'too-many-lessons', most: MOST_LESSONS });
  return { lessons, workshop: workshop === undefined ? null : workshop + WORKSHOP_FILE };
}
