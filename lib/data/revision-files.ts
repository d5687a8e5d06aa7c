/** Files that the worker makes of revisions: which there are, and the states that each goes through. */
import {
  isMadeFile,
  MADE_FILE_FAULTS,
  type MadeFile,
  type MadeFileFault,
  type MadeFileName,
} from '#lib/lesson/made-files.ts';
import { invariant } from '#lib/result.ts';
import type { Queries } from './database.ts';
import type { RevisionFile } from './generated/client.ts';

/** Which file of which revision. */
export interface FileOfRevision {
  readonly revisionId: string;
  readonly name: MadeFileName;
}

/** Notes files that are to be made; those that are noted stay as they are. */
export async function noteRevisionFiles(
  db: Queries,
  revisionId: string,
  names: readonly MadeFileName[],
): Promise<void> {
  await db.revisionFile.createMany({
    data: names.map((name) => ({ revisionId, name })),
    skipDuplicates: true,
  });
}

/** A revision's files, by name. */
export async function revisionFiles(db: Queries, revisionId: string): Promise<readonly MadeFile[]> {
  const rows = await db.revisionFile.findMany({ where: { revisionId }, orderBy: { name: 'asc' } });
  return rows.flatMap(toMadeFile);
}

/** One file of a revision, or null. */
export async function revisionFile(db: Queries, of: FileOfRevision): Promise<MadeFile | null> {
  const row = await db.revisionFile.findUnique({ where: { revisionId_name: of } });
  return (row && toMadeFile(row)[0]) ?? null;
}

// A name that this version does not know is not shown.
function toMadeFile(row: RevisionFile): readonly MadeFile[] {
  const { name, state, percent, fault, storageKey, sizeBytes } = row;
  if (!isMadeFile(name)) return [];
  switch (state) {
    case 'waiting':
      return [{ name, state }];
    case 'making':
      return [{ name, state, percent }];
    case 'failed':
      return [{ name, state, fault: MADE_FILE_FAULTS.find((known) => known === fault) ?? 'gave-up' }];
    case 'ready':
      invariant(storageKey !== null && sizeBytes !== null, 'a file that is ready is stored');
      return [{ name, state, storageKey, sizeBytes: Number(sizeBytes) }];
  }
}

/** Files that a worker still has to make, in the order of publication. */
export async function revisionFilesToMake(db: Queries): Promise<readonly FileOfRevision[]> {
  const rows = await db.revisionFile.findMany({
    where: { state: { in: ['waiting', 'making'] } },
    select: { revisionId: true, name: true },
    orderBy: [{ revision: { publishedAt: 'asc' } }, { name: 'asc' }],
  });
  return rows.flatMap(({ revisionId, name }) => (isMadeFile(name) ? [{ revisionId, name }] : []));
}

/** Revisions whose files were never noted: published before there were any, or brought from elsewhere. */
export async function revisionsWithoutFiles(db: Queries): Promise<readonly string[]> {
  const rows = await db.revision.findMany({
    where: { files: { none: { name: 'card.png' satisfies MadeFileName } } },
    select: { id: true },
    orderBy: { publishedAt: 'asc' },
  });
  return rows.map(({ id }) => id);
}

/** Takes a file to work on. @returns false where it is done, given up, or gone with its lesson */
export async function takeRevisionFile(db: Queries, { revisionId, name }: FileOfRevision): Promise<boolean> {
  const taken = await db.revisionFile.updateMany({
    where: { revisionId, name, state: { in: ['waiting', 'making'] } },
    data: { state: 'making', percent: 0 },
  });
  return taken.count > 0;
}

export async function noteMaking(
  db: Queries,
  { revisionId, name }: FileOfRevision,
  percent: number,
): Promise<void> {
  await db.revisionFile.updateMany({ where: { revisionId, name, state: 'making' }, data: { percent } });
}

/** @returns false where the lesson was deleted meanwhile: then nothing refers to the stored file */
export async function finishRevisionFile(
  db: Queries,
  { revisionId, name }: FileOfRevision,
  made: { readonly storageKey: string; readonly sizeBytes: number },
): Promise<boolean> {
  const done = await db.revisionFile.updateMany({
    where: { revisionId, name },
    data: { state: 'ready', percent: 100, fault: null, ...made },
  });
  return done.count > 0;
}

export async function giveUpRevisionFile(
  db: Queries,
  { revisionId, name }: FileOfRevision,
  fault: MadeFileFault,
): Promise<void> {
  await db.revisionFile.updateMany({
    where: { revisionId, name, state: { not: 'ready' } },
    data: { state: 'failed', fault },
  });
}

/** Lets a file that was given up wait again. @returns false where it was not */
export async function retryRevisionFile(db: Queries, { revisionId, name }: FileOfRevision): Promise<boolean> {
  const again = await db.revisionFile.updateMany({
    where: { revisionId, name, state: 'failed' },
    data: { state: 'waiting', percent: 0, fault: null },
  });
  return again.count > 0;
}

/** Whether any revision's file lies under a storage key. */
export const isRevisionFileKey = async (db: Queries, storageKey: string): Promise<boolean> =>
  (await db.revisionFile.count({ where: { storageKey } })) > 0;
