/** Everything that a public page of a lesson shows, read from its revisions. */
import type { Database } from '#lib/data/database.ts';
import { revisionFiles } from '#lib/data/revision-files.ts';
import { findPublicLesson, getRevision, type RevisionMark } from '#lib/data/revisions.ts';
import type { Content } from '#lib/lesson/content.ts';
import type { MadeFile } from '#lib/lesson/made-files.ts';
import type { Revision } from '#lib/lesson/revision.ts';
import { type RevisionChange, revisionDifference } from '#lib/lesson/revision-difference.ts';

export interface LessonPageRead {
  readonly revision: Revision;
  /** What the worker makes of it. */
  readonly madeFiles: readonly MadeFile[];
  readonly latest: number;
  readonly held: { readonly number: number; readonly content: Content } | null;
  /** Numbers before the one that is shown, newest first. */
  readonly earlier: readonly number[];
  /** Newest first; what changed is null for the first revision. */
  readonly history: readonly {
    readonly number: number;
    readonly publishedAt: Date;
    readonly changes: readonly RevisionChange[] | null;
  }[];
}

interface Wanted {
  readonly workshop: string;
  readonly lesson: string;
  /** Null for the latest. */
  readonly number: number | null;
  /** The revision of a kit that the reader holds. */
  readonly held: number | null;
}

/** Revisions whose changes are told on a page; older ones are listed without. */
const MOST_TOLD = 12;

/** Null where nothing is published there. */
export async function readLessonPage(db: Database, wanted: Wanted): Promise<LessonPageRead | null> {
  const lesson = await findPublicLesson(db, wanted.workshop, wanted.lesson);
  const latest = lesson?.revisions[0];
  const shown = lesson?.revisions.find(({ number }) => number === (wanted.number ?? latest?.number));
  if (!lesson || !latest || !shown) return null;
  const heldMark = lesson.revisions.find(({ number }) => number === wanted.held && number < shown.number);
  return {
    revision: await getRevision(db, shown.id),
    madeFiles: await revisionFiles(db, shown.id),
    latest: latest.number,
    held: heldMark
      ? { number: heldMark.number, content: (await getRevision(db, heldMark.id)).content }
      : null,
    earlier: lesson.revisions.map(({ number }) => number).filter((number) => number < shown.number),
    history: await readHistory(db, lesson.revisions),
  };
}

async function readHistory(db: Database, marks: readonly RevisionMark[]): Promise<LessonPageRead['history']> {
  const documents = await Promise.all(marks.slice(0, MOST_TOLD + 1).map(({ id }) => getRevision(db, id)));
  return marks.map(({ number, publishedAt }, index) => {
    const now = documents[index];
    const before = documents[index + 1];
    return { number, publishedAt, changes: now && before ? revisionDifference(before, now) : null };
  });
}
