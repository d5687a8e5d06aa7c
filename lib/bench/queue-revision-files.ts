/** Sees to it that every file of a revision that is still to be made has a job. */
import type { Database } from '#lib/data/database.ts';
import { noteRevisionFiles, revisionFilesToMake, revisionsWithoutFiles } from '#lib/data/revision-files.ts';
import { getRevision } from '#lib/data/revisions.ts';
import type { Queue } from '#lib/jobs/queue.ts';
import { filesToMake } from '#lib/lesson/made-files.ts';

/** A job that is there already is not queued twice; a needless one finds nothing to do. */
export async function queueRevisionFiles(
  { db }: { readonly db: Database },
  queue: Pick<Queue, 'send'>,
): Promise<void> {
  for (const id of await revisionsWithoutFiles(db))
    await noteRevisionFiles(db, id, filesToMake(await getRevision(db, id)));
  for (const file of await revisionFilesToMake(db)) await queue.send('make-revision-file', { ...file });
}
