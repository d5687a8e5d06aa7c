/** Takes a pupil's report of a published lesson. */
import { countReport } from '#lib/access/report-limit.ts';
import { addReport } from '#lib/data/reports.ts';
import { findPublicLesson } from '#lib/data/revisions.ts';
import type { PupilReport } from '#lib/lesson/report.ts';
import { failed, ok, type Result } from '#lib/result.ts';
import type { Bench } from './bench.ts';

export interface ReportInput {
  /** Slugs. */
  readonly workshop: string;
  readonly lesson: string;
  readonly report: PupilReport;
  /** The network address that it came from; it is not kept. */
  readonly place: string;
}

export type ReportFault = { readonly code: 'not-found' } | { readonly code: 'too-many-reports' };

export async function takeReport(
  { db, now, newId }: Bench,
  { workshop, lesson, report, place }: ReportInput,
): Promise<Result<null, ReportFault>> {
  const found = await findPublicLesson(db, workshop, lesson);
  if (!found?.revisions.some(({ number }) => number === report.revision))
    return failed({ code: 'not-found' });
  const at = now();
  if (!(await countReport(db, { place, lessonId: found.lessonId }, at)))
    return failed({ code: 'too-many-reports' });
  await addReport(db, found.lessonId, { ...report, id: newId(), createdAt: at });
  return ok(null);
}
