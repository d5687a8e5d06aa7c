/** The revision that a kit was packed by, and the latest one beside it. */
import type { Database } from '#lib/data/database.ts';
import { findPublicLesson, getRevision } from '#lib/data/revisions.ts';
import type { Revision } from '#lib/lesson/revision.ts';

export interface HeldKitRead {
  readonly held: Revision;
  readonly latest: Revision;
}

/** Null where no revision of that number was published. */
export async function readHeldKit(
  db: Database,
  workshop: string,
  lesson: string,
  number: number,
): Promise<HeldKitRead | null> {
  const found = await findPublicLesson(db, workshop, lesson);
  const mark = found?.revisions.find((revision) => revision.number === number);
  const latest = found?.revisions[0];
  if (!mark || !latest) return null;
  return { held: await getRevision(db, mark.id), latest: await getRevision(db, latest.id) };
}
