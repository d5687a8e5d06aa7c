/** What pupils reported of a lesson: each to be answered, made into a correction, or taken out. */
import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { memberPage } from '#app/http/member-page.ts';
import { dayOf } from '#app/words/days.ts';
import { openLesson } from '#lib/bench/open-lesson.ts';
import { readReports } from '#lib/bench/read-reports.ts';
import { database } from '#lib/data/database.ts';
import { Reports } from './reports.client.tsx';

interface ReportsProps {
  readonly params: Promise<{ workshop: string; lesson: string }>;
}

export const metadata: Metadata = { title: 'Reports' };

export default async function ReportsScreen({ params }: ReportsProps) {
  const { workshop, lesson } = await params;
  const membership = await memberPage(workshop, 'viewer');
  const opened = await openLesson(membership, lesson);
  if (!opened) notFound();
  const at = `${encodeURIComponent(membership.workshop.slug)}/lessons/${encodeURIComponent(opened.id)}`;
  const reports = await readReports(database(), opened.id);
  return (
    <main className="page">
      <p>
        <Link href={`/bench/${at}/corrections`}>Back to the corrections</Link>
      </p>
      <Reports
        bench={`/bench/${at}`}
        api={`/api/workshops/${at}/reports`}
        reports={reports.map(({ report, cueId }) => ({
          ...report,
          cueId,
          day: dayOf(report.createdAt),
          settled: report.settledAt !== null,
        }))}
      />
    </main>
  );
}
