/** Bringing in a lesson's recording and its transcript, in either order. */
import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { memberPage } from '#app/http/member-page.ts';
import { presentRecordings } from '#app/http/present-recording.ts';
import { roleSuffices } from '#lib/access/caller.ts';
import { openBench } from '#lib/bench/bench.ts';
import { openLesson } from '#lib/bench/open-lesson.ts';
import { environment } from '#lib/config/environment.ts';
import { acceptedComparison, findPlaceableLessons, openComparison } from '#lib/data/comparisons.ts';
import { currentRecording } from '#lib/data/recordings.ts';
import { ChaptersPart } from './chapters-part.client.tsx';
import { OtherTranscript } from './other-transcript.client.tsx';
import { RecordingPart } from './recording-part.client.tsx';
import { TranscriptFile } from './transcript-file.client.tsx';

export const metadata: Metadata = { title: 'Bring in' };

export default async function BringIn({ params }: { params: Promise<{ workshop: string; lesson: string }> }) {
  const { workshop, lesson } = await params;
  const membership = await memberPage(workshop, 'viewer');
  const opened = await openLesson(membership, lesson);
  if (!opened) notFound();
  const { db } = openBench();
  const [recording, recordings, comparison, accepted] = await Promise.all([
    currentRecording(db, opened.id),
    presentRecordings(opened.id),
    openComparison(db, opened.id),
    acceptedComparison(db, opened.id),
  ]);
  const mayEdit = roleSuffices(membership.role, 'editor');
  const others =
    mayEdit && recording?.peaksKey
      ? await findPlaceableLessons(db, {
          workshopId: membership.workshop.id,
          lessonId: opened.id,
        })
      : [];
  const at = `${encodeURIComponent(membership.workshop.slug)}/lessons/${encodeURIComponent(opened.id)}`;
  return (
    <main className="page">
      <RecordingPart
        workshop={membership.workshop.slug}
        lesson={opened.id}
        mayEdit={mayEdit}
        largestBytes={environment().BENCHLEAF_LARGEST_RECORDING}
        first={{ recordings, compared: { comparison, accepted } }}
      />
      <TranscriptFile
        address={`/api/workshops/${at}/transcript-files`}
        transcriptPage={`/bench/${at}/transcript`}
      />
      {others.length > 0 && (
        <OtherTranscript
          address={`/api/workshops/${at}/comparison`}
          screen={`/bench/${at}/bring-in/new-recording`}
          lessons={others}
        />
      )}
      <ChaptersPart
        recordingAddress={recording && `/api/workshops/${at}/recordings/${encodeURIComponent(recording.id)}`}
        transcriptPage={`/bench/${at}/transcript`}
      />
    </main>
  );
}
