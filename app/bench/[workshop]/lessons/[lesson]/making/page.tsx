import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { memberPage } from '#app/http/member-page.ts';
import { openLesson } from '#lib/bench/open-lesson.ts';
import { Making } from './making.client.tsx';

export const metadata: Metadata = { title: 'Making' };

export default async function MakingPage({
  params,
}: {
  params: Promise<{ workshop: string; lesson: string }>;
}) {
  const { workshop, lesson } = await params;
  const membership = await memberPage(workshop, 'viewer');
  const opened = await openLesson(membership, lesson);
  if (!opened) notFound();
  const at = `/api/workshops/${encodeURIComponent(membership.workshop.slug)}/lessons/${encodeURIComponent(opened.id)}`;
  const recordingAddress =
    opened.recordingId === null ? null : `${at}/recordings/${encodeURIComponent(opened.recordingId)}`;
  return (
    <Making lessonId={opened.id} recordingAddress={recordingAddress} picturesAddress={`${at}/pictures`} />
  );
}
