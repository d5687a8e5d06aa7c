/** Portable copies that were sent to a workshop: how far they are, and what came of them. */
import { z } from 'zod';
import { type CopyFault, copyFault } from '#lib/copies/copy-fault.ts';
import type { Queries } from './database.ts';
import { type CopyState, Prisma } from './generated/client.ts';

/** A copy as the bench shows it. */
export interface SentCopy {
  readonly id: string;
  readonly state: CopyState;
  readonly name: string;
  readonly sizeBytes: number;
  /** What is being read. */
  readonly step: string | null;
  readonly fault: CopyFault | null;
  /** Lessons that came of it and are still there. */
  readonly lessons: readonly { readonly id: string; readonly title: string }[];
  readonly createdAt: Date;
}

const ids = z.array(z.string());

/** A workshop's latest copies, newest first. */
export async function listCopies(db: Queries, workshopId: string): Promise<readonly SentCopy[]> {
  const rows = await db.portableCopy.findMany({
    where: { workshopId },
    orderBy: [{ createdAt: 'desc' }, { id: 'asc' }],
    take: 20,
  });
  const lessonIds = rows.flatMap((row) => ids.parse(row.lessonIds));
  const titles = new Map(
    (
      await db.$queryRaw<{ id: string; title: string | null }[]>`
        SELECT "id", "content"->>'title' AS "title" FROM "lesson"
        WHERE "workshopId" = ${workshopId} AND "id" = ANY(${lessonIds}::text[])`
    ).map(({ id, title }) => [id, title ?? '']),
  );
  return rows.map((row) => ({
    id: row.id,
    state: row.state,
    name: row.name,
    sizeBytes: Number(row.sizeBytes),
    step: row.step,
    fault: row.fault === null ? null : copyFault.parse(row.fault),
    lessons: ids.parse(row.lessonIds).flatMap((id) => {
      const title = titles.get(id);
      return title === undefined ? [] : [{ id, title }];
    }),
    createdAt: row.createdAt,
  }));
}

export async function addCopy(
  db: Queries,
  copy: { id: string; workshopId: string; userId: string; name: string; sizeBytes: number; createdAt: Date },
): Promise<void> {
  await db.portableCopy.create({ data: copy });
}

/** Forgets a copy whose bytes never all came. */
export async function dropCopy(db: Queries, id: string): Promise<void> {
  await db.portableCopy.deleteMany({ where: { id, state: 'receiving' } });
}

/** Forgets a copy that was refused, or that is read: what came of it stays. */
export async function forgetCopy(db: Queries, workshopId: string, id: string): Promise<boolean> {
  const { count } = await db.portableCopy.deleteMany({
    where: { id, workshopId, state: { in: ['refused', 'ready'] } },
  });
  return count > 0;
}

/** All bytes are there. @returns false where it was not receiving any */
export async function copyArrived(db: Queries, id: string): Promise<boolean> {
  const moved = await db.portableCopy.updateMany({
    where: { id, state: 'receiving' },
    data: { state: 'waiting' },
  });
  return moved.count > 0;
}

/** Copies in some states, oldest first. */
export async function copiesInState(
  db: Queries,
  states: readonly CopyState[],
): Promise<readonly { readonly id: string; readonly sizeBytes: number; readonly createdAt: Date }[]> {
  const rows = await db.portableCopy.findMany({
    where: { state: { in: [...states] } },
    select: { id: true, sizeBytes: true, createdAt: true },
    orderBy: { createdAt: 'asc' },
  });
  return rows.map((row) => ({ ...row, sizeBytes: Number(row.sizeBytes) }));
}

/** A copy that an attempt took. */
export interface ClaimedCopy {
  readonly id: string;
  readonly attempt: string;
  readonly workshopId: string;
  readonly userId: string;
  readonly sizeBytes: number;
}

/** Takes a copy for this attempt; null where there is nothing to read (any more). */
export async function claimCopy(db: Queries, id: string, attempt: string): Promise<ClaimedCopy | null> {
  const [row] = await db.portableCopy.updateManyAndReturn({
    where: { id, state: { in: ['waiting', 'reading'] } },
    data: { state: 'reading', attempt, step: null, fault: Prisma.DbNull },
    select: { workshopId: true, userId: true, sizeBytes: true },
  });
  return row ? { ...row, id, attempt, sizeBytes: Number(row.sizeBytes) } : null;
}

const own = ({ id, attempt }: ClaimedCopy) => ({ id, attempt, state: 'reading' }) as const;

/** @returns false where the attempt no longer owns the copy */
export const noteCopyStep = async (db: Queries, copy: ClaimedCopy, step: string): Promise<boolean> =>
  (await db.portableCopy.updateMany({ where: own(copy), data: { step: step.slice(0, 300) } })).count > 0;

/** Ends an attempt with the reason why the copy is not taken. */
export async function refuseCopy(db: Queries, copy: ClaimedCopy, fault: CopyFault): Promise<void> {
  await db.portableCopy.updateMany({ where: own(copy), data: { state: 'refused', step: null, fault } });
}

/** Ends it with what came of it, within the transaction that makes that. @returns false where the attempt no longer owns the copy */
export const finishCopy = async (
  tx: Queries,
  copy: ClaimedCopy,
  lessonIds: readonly string[],
): Promise<boolean> =>
  (
    await tx.portableCopy.updateMany({
      where: own(copy),
      data: { state: 'ready', step: null, lessonIds: [...lessonIds] },
    })
  ).count > 0;
