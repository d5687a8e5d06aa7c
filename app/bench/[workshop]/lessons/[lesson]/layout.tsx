/**
 * Around every screen of one lesson: its head and its draft. The lesson's
 * title is the page's h1, so that screens begin with h2. Each page asks for
 * rights by itself; a layout is not asked again when the page changes.
 */
import { notFound } from 'next/navigation';
import type { ReactNode } from 'react';
import { memberPage } from '#app/http/member-page.ts';
import { roleSuffices } from '#lib/access/caller.ts';
import { openLesson } from '#lib/bench/open-lesson.ts';
import { CollisionDialog } from './collision-dialog.client.tsx';
import { DraftProvider } from './draft.client.tsx';
import { LandOnThing } from './land-on-thing.client.tsx';
import { LessonBar } from './lesson-bar.client.tsx';

interface LessonLayoutProps {
  readonly params: Promise<{ workshop: string; lesson: string }>;
  readonly children: ReactNode;
}

export default async function LessonLayout({ params, children }: LessonLayoutProps) {
  const { workshop, lesson } = await params;
  const membership = await memberPage(workshop, 'viewer');
  const opened = await openLesson(membership, lesson);
  if (!opened) notFound();
  const at = `${encodeURIComponent(membership.workshop.slug)}/lessons/${encodeURIComponent(opened.id)}`;
  return (
    <DraftProvider
      address={`/api/workshops/${at}/draft`}
      lessonId={opened.id}
      userId={membership.caller.userId}
      mayEdit={roleSuffices(membership.role, 'editor')}
    >
      <LessonBar base={`/bench/${at}`} />
      <LandOnThing />
      {children}
      <CollisionDialog />
    </DraftProvider>
  );
}
