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
              <div className="notice caution">
                <p>
                  A change ends the old address at once, and with it every link, printed sheet and note that
                  names it. Once a lesson is published, better leave it.
                </p>
              </div>
              <AddressForm slug={slug} />
            </>
          )}
        </section>
      </div>
    </main>
  );
}
