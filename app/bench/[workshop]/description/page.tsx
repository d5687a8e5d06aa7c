import type { Metadata } from 'next';
import { memberPage } from '#app/http/member-page.ts';
import { database } from '#lib/data/database.ts';
import { findDescriptionSetup } from '#lib/data/description-texts.ts';
import { SetupForm } from './setup-form.client.tsx';

export const metadata: Metadata = { title: 'Description texts' };

/** How this workshop words the texts that go beside its recordings. */
export default async function DescriptionSetupPage({ params }: PageProps<'/bench/[workshop]/description'>) {
  const { workshop: slug } = await params;
  const { workshop } = await memberPage(slug, 'owner');
  return (
    <main className="page">
      <h1>Description texts of {workshop.name}</h1>
      <p className="soft">
        Said once here, used in the text of every lesson: what it is made of, in which order, and what the
        place where you paste it takes. Each lesson’s check screen shows its own text.
      </p>
      <SetupForm
        api={`/api/workshops/${encodeURIComponent(slug)}/description-setup`}
        stored={await findDescriptionSetup(database(), slug)}
      />
    </main>
  );
}
