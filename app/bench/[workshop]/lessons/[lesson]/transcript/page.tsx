/** The transcript of a lesson, marked up with chapters beside its recording. */
import { notFound } from 'next/navigation';
import { memberPage } from '#app/http/member-page.ts';
import { openBench } from '#lib/bench/bench.ts';
import { openLesson } from '#lib/bench/open-lesson.ts';
import { habitsOf } from '#lib/chapters/habits.ts';
import { findChapterBeginnings } from '#lib/data/chapter-beginnings.ts';
import { currentRecording } from '#lib/data/recordings.ts';
import { TranscriptScreen } from './transcript-screen.client.tsx';

export const metadata = { title: 'Transcript' };

export default async function TranscriptPage({
  params,
}: {
  params: Promise<{ workshop: string; lesson: string }>;
}) {
  const { workshop, lesson } = await params;
  const membership = await memberPage(workshop, 'viewer');
  const opened = await openLesson(membership, lesson);
  if (!opened) notFound();
  const { db } = openBench();
  const [recording, beginnings] = await Promise.all([
    currentRecording(db, opened.id),
    findChapterBeginnings(db, { workshopId: membership.workshop.id, lessonId: opened.id }),
  ]);
  const at = `${encodeURIComponent(membership.workshop.slug)}/lessons/${encodeURIComponent(opened.id)}`;
  return (
    <TranscriptScreen
      recordingsAddress={`/api/workshops/${at}/recordings`}
      recording={
        recording && {
          id: recording.id,
          durationMs: recording.durationMs,
          hasVideo: recording.hasVideo,
          width: recording.width,
          height: recording.height,
          pauses: recording.pauses,
        }
      }
      recordingAddress={`/api/workshops/${at}/recordings/${encodeURIComponent(recording?.id ?? '')}`}
      lessonAddress={`/bench/${at}`}
      habits={habitsOf(beginnings)}
      glossaryAddress={`/${encodeURIComponent(membership.workshop.slug)}/glossary`}
    />
  );
}
