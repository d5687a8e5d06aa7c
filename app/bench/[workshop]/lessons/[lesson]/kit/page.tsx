import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { memberPage } from '#app/http/member-page.ts';
import { lessonPath } from '#app/lesson-page/page-addresses.ts';
import { roleSuffices } from '#lib/access/caller.ts';
import { openLesson } from '#lib/bench/open-lesson.ts';
import { database } from '#lib/data/database.ts';
import { findStock } from '#lib/data/stock.ts';
import { Batches } from './batches.tsx';
import { Kit } from './kit.client.tsx';

export const metadata: Metadata = { title: 'Kit' };

export default async function KitPage({ params }: { params: Promise<{ workshop: string; lesson: string }> }) {
  const { workshop, lesson } = await params;
  const membership = await memberPage(workshop, 'viewer');
  const opened = await openLesson(membership, lesson);
  if (!opened) notFound();
  const own = encodeURIComponent(membership.workshop.slug);
  const id = encodeURIComponent(opened.id);
  return (
    <Kit
      base={`/bench/${own}/lessons/${id}`}
      lessonId={opened.id}
      files={`/api/workshops/${own}/lessons/${id}/kit-files`}
      stock={{
        keepAt: `/api/workshops/${own}/stock`,
        counted: await findStock(database(), membership.workshop.id),
      }}
    >
      <Batches
        lessonId={opened.id}
        api={`/api/workshops/${own}/lessons/${id}/kit-batches`}
        mayEdit={roleSuffices(membership.role, 'editor')}
        page={lessonPath(membership.workshop.slug, opened.slug)}
      />
    </Kit>
  );
}
