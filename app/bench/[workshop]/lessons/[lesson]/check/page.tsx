import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { memberPage } from '#app/http/member-page.ts';
import { lessonPath } from '#app/lesson-page/page-addresses.ts';
import { dayOf } from '#app/words/days.ts';
import { roleSuffices } from '#lib/access/caller.ts';
import { frozenRecordingOf } from '#lib/bench/frozen-recording.ts';
import { openLesson } from '#lib/bench/open-lesson.ts';
import { environment } from '#lib/config/environment.ts';
import { database } from '#lib/data/database.ts';
import { findCopiedTexts, findDescriptionSetup } from '#lib/data/description-texts.ts';
import { findDraft } from '#lib/data/lessons.ts';
import { Check } from './check.client.tsx';
import { Places } from './places.tsx';
import { PrintedSigns } from './printed-signs.tsx';

interface CheckProps {
  readonly params: Promise<{ workshop: string; lesson: string }>;
}

export const metadata: Metadata = { title: 'Check' };

/** What is still missing, the text to paste, the files, and publishing. */
export default async function CheckScreen({ params }: CheckProps) {
  const { workshop, lesson } = await params;
  const membership = await memberPage(workshop, 'viewer');
  const opened = await openLesson(membership, lesson);
  if (!opened) notFound();
  const { slug } = membership.workshop;
  const [recording, setup, copied, draft] = await Promise.all([
    frozenRecordingOf(database(), opened.id),
    findDescriptionSetup(database(), slug),
    findCopiedTexts(database(), opened.id),
    findDraft(database(), { workshopId: membership.workshop.id, lessonId: opened.id }),
  ]);
  const at = `${encodeURIComponent(slug)}/lessons/${encodeURIComponent(opened.id)}`;
  const lessonAddress = `${environment().BENCHLEAF_ADDRESS}${lessonPath(slug, opened.slug)}`;
  return (
    <main className="page">
      <Check
        bench={`/bench/${at}`}
        api={`/api/workshops/${at}`}
        preview={`/bench/${at}/preview`}
        lessonAddress={lessonAddress}
        lessonPath={lessonPath(slug, opened.slug)}
        recording={
          recording && {
            durationMs: recording.durationMs,
            hasAudio: recording.hasAudio,
            hasVideo: recording.hasVideo,
          }
        }
        setup={setup}
        setupPath={membership.role === 'owner' ? `/bench/${encodeURIComponent(slug)}/description` : null}
        copied={Object.fromEntries(
          Object.entries(copied).map(([format, { text, copiedAt }]) => [
            format,
            { text, day: dayOf(copiedAt) },
          ]),
        )}
        published={opened.published}
      >
        <Places
          lessonId={opened.id}
          workshop={slug}
          lessonAddress={lessonAddress}
          slug={opened.slug}
          api={`/api/workshops/${at}`}
          bench={`/bench/${at}`}
          mayEdit={roleSuffices(membership.role, 'editor')}
        />
      </Check>
      {draft ? <PrintedSigns content={draft.content} /> : null}
    </main>
  );
}
