import type { Metadata } from 'next';
import { memberPage } from '#app/http/member-page.ts';
import { currencyChoices, languageChoices } from '#app/words/choices.ts';
import { openBench } from '#lib/bench/bench.ts';
import { DEMO_WORKSHOP_SLUG } from '#lib/bench/demo-workshop.ts';
import { environment } from '#lib/config/environment.ts';
import { findAbout } from '#lib/data/member-list.ts';
import { AddressForm, SettingsForm } from './settings-forms.client.tsx';

export const metadata: Metadata = { title: 'Settings' };

export default async function SettingsPage({ params }: PageProps<'/bench/[workshop]/settings'>) {
  const { workshop: slug } = await params;
  const { workshop } = await memberPage(slug, 'owner');
  return (
    <main className="page">
      <h1>Settings of {workshop.name}</h1>
      <div className="columns">
        <section className="panel" aria-labelledby="stated">
          <h2 id="stated">What pupils read</h2>
          <SettingsForm
            slug={slug}
            name={workshop.name}
            about={await findAbout(openBench().db, workshop.id)}
            currency={workshop.currency}
            language={workshop.language}
            currencies={currencyChoices(workshop.currency)}
            languages={languageChoices(workshop.language)}
          />
        </section>
        <section className="panel" aria-labelledby="address">
          <h2 id="address">Address of the workshop’s pages</h2>
          <p>
            Now{' '}
            <strong style={{ overflowWrap: 'anywhere' }}>
              {environment().BENCHLEAF_ADDRESS}/workshop/{slug}
            </strong>
          </p>
          {slug === DEMO_WORKSHOP_SLUG ? (
            <p className="soft">The demo workshop keeps its address.</p>
          ) : (
            <>
              <p>
                After a change the old address leads on to the new one: links, printed sheets and the codes on
                kits that are sold keep working, and no other workshop can take it. You can go back to it.
              </p>
              <AddressForm slug={slug} />
            </>
          )}
        </section>
        <section className="panel" aria-labelledby="copy">
          <h2 id="copy">Portable copy</h2>
          <p>
            The whole workshop as a folder of plain files, one folder a lesson: pages that open from disk, the
            recordings as pupils play them, every revision and draft, stock, glossary and wording, batches of
            kits, what pupils reported and what was copied where. Keep it to yourself; it can be brought in
            again here or elsewhere, on the page of lessons.
          </p>
          <p>
            <a
              className="button quiet"
              href={`/api/workshops/${encodeURIComponent(slug)}/portable-copy`}
              download
            >
              Take out the workshop
            </a>
          </p>
          <p className="soft">
            Left out: who the members are, and the recordings’ files as they came from the camera.
          </p>
        </section>
      </div>
    </main>
  );
}
