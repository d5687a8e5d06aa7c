/** The draft's page in the frame of a phone, a tablet, a window and on paper; and secret addresses to show it to others. */
import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { memberPage } from '#app/http/member-page.ts';
import { dayOf } from '#app/words/days.ts';
import { listPreviewAddresses } from '#lib/access/preview-address.ts';
import { openLesson } from '#lib/bench/open-lesson.ts';
import { database } from '#lib/data/database.ts';
import { Frames } from './frames.client.tsx';
import { SecretAddresses } from './secret-addresses.client.tsx';

interface PreviewScreenProps {
  readonly params: Promise<{ workshop: string; lesson: string }>;
}

export const metadata: Metadata = { title: 'Preview' };

export default async function PreviewScreen({ params }: PreviewScreenProps) {
  const { workshop, lesson } = await params;
  const membership = await memberPage(workshop, 'viewer');
  const opened = await openLesson(membership, lesson);
  if (!opened) notFound();
  const [slug, id] = [encodeURIComponent(membership.workshop.slug), encodeURIComponent(opened.id)];
  const addresses = await listPreviewAddresses(database(), opened.id);
  return (
    <main className="page">
      <h2>Preview</h2>
      <Frames page={`/draft/${slug}/${id}`} api={`/api/workshops/${slug}/lessons/${id}`} />
      <SecretAddresses
        api={`/api/workshops/${slug}/lessons/${id}/preview-addresses`}
        addresses={addresses.map(({ id: address, note, createdAt }) => ({
          id: address,
          note,
          day: dayOf(createdAt),
        }))}
      />
    </main>
  );
}
