import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { memberPage } from '#app/http/member-page.ts';
import { openLesson } from '#lib/bench/open-lesson.ts';
import { database } from '#lib/data/database.ts';
import { currentRecording } from '#lib/data/recordings.ts';
import { countOpenReports } from '#lib/data/reports.ts';
import { Corrections } from './corrections.client.tsx';

interface CorrectionsProps {
  readonly params: Promise<{ workshop: string; lesson: string }>;
}

export const metadata: Metadata = { title: 'Corrections' };

/** States what was wrong in a published lesson, and what is right. */
export default async function CorrectionsScreen({ params }: CorrectionsProps) {
  const { workshop, lesson } = await params;
  const membership = await memberPage(workshop, 'viewer');
  const opened = await openLesson(membership, lesson);
  if (!opened) notFound();
  const recording = await currentRecording(database(), opened.id);
  const reports = await countOpenReports(database(), opened.id);
  const bench = `/bench/${encodeURIComponent(membership.workshop.slug)}/lessons/${encodeURIComponent(opened.id)}`;
  return (
    <main className="page">
      {opened.published === null ? null : (
        <p>
          <Link href={`${bench}/corrections/reports`}>
            {reports === 0
              ? 'Reports by pupils'
              : reports === 1
                ? 'Pupils reported something: 1 report waits for you'
                : `Pupils reported something: ${reports} reports wait for you`}
          </Link>
        </p>
      )}
      <Corrections bench={bench} published={opened.published} durationMs={recording?.durationMs ?? null} />
    </main>
  );
}
