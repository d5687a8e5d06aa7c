/** Looks at a new recording beside the lesson's own, and decides about it. */
import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { memberPage } from '#app/http/member-page.ts';
import { openLesson } from '#lib/bench/open-lesson.ts';
import { openComparison } from '#lib/data/comparisons.ts';
import { database } from '#lib/data/database.ts';
import { NewRecording } from './new-recording.client.tsx';

export const metadata: Metadata = { title: 'Recordings compared' };

export default async function NewRecordingScreen({
  params,
}: {
  params: Promise<{ workshop: string; lesson: string }>;
}) {
  const { workshop, lesson } = await params;
  const membership = await memberPage(workshop, 'viewer');
  const opened = await openLesson(membership, lesson);
  if (!opened) notFound();
  const comparison = await openComparison(database(), opened.id);
  const at = `${encodeURIComponent(membership.workshop.slug)}/lessons/${encodeURIComponent(opened.id)}`;
  return (
    <main className="page">
      <h2>
        {comparison?.fromLessonId ? 'A transcript placed by its sound' : 'A new recording beside the old one'}
      </h2>
      <NewRecording api={`/api/workshops/${at}`} bench={`/bench/${at}`} />
    </main>
  );
}
