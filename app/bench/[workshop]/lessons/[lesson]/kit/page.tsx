import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { memberPage } from '#app/http/member-page.ts';
import { openLesson } from '#lib/bench/open-lesson.ts';
import { Kit } from './kit.client.tsx';

export const metadata: Metadata = { title: 'Kit' };

export default async function KitPage({ params }: { params: Promise<{ workshop: string; lesson: string }> }) {
  const { workshop, lesson } = await params;
  const membership = await memberPage(workshop, 'viewer');
  const opened = await openLesson(membership, lesson);
  if (!opened) notFound();
  const base = `/bench/${encodeURIComponent(membership.workshop.slug)}/lessons/${encodeURIComponent(opened.id)}`;
  const files = `/api/workshops/${encodeURIComponent(membership.workshop.slug)}/lessons/${encodeURIComponent(opened.id)}/kit-files`;
  return <Kit base={base} lessonId={opened.id} files={files} />;
}
