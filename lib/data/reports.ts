/** Queries of what pupils reported. */
import { z } from 'zod';
import { CONCERNS, type PupilReport } from '#lib/lesson/report.ts';
import type { Queries } from './database.ts';

export interface Report extends PupilReport {
  readonly id: string;
  readonly createdAt: Date;
  /** What the workshop noted about it; null until somebody did. */
  readonly answer: string | null;
  /** The correction that was made of it. */
  readonly correctionId: string | null;
  /** When it was answered, or a correction made of it; null while it is open. */
  readonly settledAt: Date | null;
}

const FIELDS = {
  id: true,
  revision: true,
  concerns: true,
  at: true,
  wrong: true,
  right: true,
  createdAt: true,
  answer: true,
  correctionId: true,
  settledAt: true,
} as const;

/** Reports of a lesson that are read at once, the newest. */
const MOST_READ = 500;

/** Open ones first, then the newest. */
export async function findReports(db: Queries, lessonId: string): Promise<readonly Report[]> {
  const rows = await db.report.findMany({
    where: { lessonId },
    select: FIELDS,
    orderBy: [{ settledAt: { sort: 'desc', nulls: 'first' } }, { createdAt: 'desc' }],
    take: MOST_READ,
  });
  return rows.map(({ concerns, ...row }) => ({ ...row, concerns: z.enum(CONCERNS).parse(concerns) }));
}

export const countOpenReports = (db: Queries, lessonId: string): Promise<number> =>
  db.report.count({ where: { lessonId, settledAt: null } });

export async function addReport(
  db: Queries,
  lessonId: string,
  report: PupilReport & Pick<Report, 'id' | 'createdAt'>,
): Promise<void> {
  await db.report.create({ data: { ...report, lessonId } });
}

/** @returns false where there is no such report */
export async function settleReport(
  db: Queries,
  lessonId: string,
  id: string,
  settled: Partial<Pick<Report, 'answer' | 'correctionId'>> & { readonly settledAt: Date },
): Promise<boolean> {
  const { count } = await db.report.updateMany({ where: { id, lessonId }, data: settled });
  return count > 0;
}

/** Takes one report out. */
export async function removeReport(db: Queries, lessonId: string, id: string): Promise<void> {
  await db.report.deleteMany({ where: { id, lessonId } });
}

/** Takes out every report that was answered, or that a correction was made of. */
export async function removeSettledReports(db: Queries, lessonId: string): Promise<void> {
  await db.report.deleteMany({ where: { lessonId, settledAt: { not: null } } });
}
