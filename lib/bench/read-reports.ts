/** What pupils reported of a lesson, each with the cue that was said at its moment in the revision that they saw. */
import type { Database } from '#lib/data/database.ts';
import { findReports, type Report } from '#lib/data/reports.ts';
import { getRevision, listRevisions } from '#lib/data/revisions.ts';
import { cueAt, reportedMs } from '#lib/lesson/report.ts';

export interface ReportRead {
  readonly report: Report;
  /** Cues keep their id through every change; null where the report names no moment, or nothing is said there. */
  readonly cueId: string | null;
}

/** Open ones first, then the newest. */
export async function readReports(db: Database, lessonId: string): Promise<readonly ReportRead[]> {
  const [reports, marks] = await Promise.all([findReports(db, lessonId), listRevisions(db, lessonId)]);
  const read: ReportRead[] = [];
  for (const report of reports) {
    const atMs = reportedMs(report);
    const mark = marks.find(({ number }) => number === report.revision);
    const cues = atMs !== null && mark ? (await getRevision(db, mark.id)).cues : [];
    read.push({ report, cueId: atMs === null ? null : (cueAt(cues, atMs)?.id ?? null) });
  }
  return read;
}
