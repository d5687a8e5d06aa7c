/** The workshop's glossary: its own terms, what it decided about misheard words, and the terms that are there anyway. */
import type { Metadata } from 'next';
import { memberPage } from '#app/http/member-page.ts';
import { roleSuffices } from '#lib/access/caller.ts';
import { openBench } from '#lib/bench/bench.ts';
import { readGlossary } from '#lib/bench/change-glossary.ts';
import { EXPLAINED_TRADE_TERMS } from '#lib/glossary/trade-meanings.ts';
import { TRADE_TERMS } from '#lib/glossary/trade-terms.ts';
import styles from './glossary.module.css';
import { DecisionRow, OwnTermRow, TermForm } from './glossary-forms.client.tsx';

export const metadata: Metadata = { title: 'Glossary' };

export default async function GlossaryPage({ params }: PageProps<'/bench/[workshop]/glossary'>) {
  const { workshop: slug } = await params;
  const membership = await memberPage(slug, 'viewer');
  const { terms, decisions } = await readGlossary(openBench(), membership);
  const mayEdit = roleSuffices(membership.role, 'editor');
  const api = `/api/workshops/${encodeURIComponent(slug)}/glossary`;
  const taken = decisions.filter(({ never }) => !never);
  const never = decisions.filter((decision) => decision.never);
  return (
    <main className="page">
      <h1>Glossary of {membership.workshop.name}</h1>
      <p>
        Words that an automatic transcript may mishear. They are looked for by sound in every transcript of
        this workshop, and offered there; nothing is changed by itself. Those with a meaning are explained on
        lesson pages where they occur.
      </p>
      <div className="columns">
        <section className="panel" aria-labelledby="own">
          <h2 id="own">Your own terms</h2>
          {terms.length === 0 ? (
            <p className="soft">None yet: names of your designs, your village, a pupil’s word for a tool.</p>
          ) : (
            <ul className={styles['list']}>
              {terms.map((term) => (
                <OwnTermRow key={term.id} api={api} term={term} mayEdit={mayEdit} />
              ))}
            </ul>
          )}
          {mayEdit && <TermForm api={api} />}
        </section>
        <section className="panel" aria-labelledby="learned">
          <h2 id="learned">Learned from your decisions</h2>
          {taken.length === 0 ? (
            <p className="soft">
              Nothing yet. What you take in a transcript is offered first in the next one.
            </p>
          ) : (
            <ul className={styles['list']}>
              {taken.map((decision) => (
                <DecisionRow
                  key={`${decision.heard} ${decision.instead}`}
                  api={api}
                  decision={decision}
                  mayEdit={mayEdit}
                />
              ))}
            </ul>
          )}
          <h3>Never offered</h3>
          {never.length === 0 ? (
            <p className="soft">Nothing.</p>
          ) : (
            <ul className={styles['list']}>
              {never.map((decision) => (
                <DecisionRow
                  key={`${decision.heard} ${decision.instead}`}
                  api={api}
                  decision={decision}
                  mayEdit={mayEdit}
                />
              ))}
            </ul>
          )}
        </section>
      </div>
      <details className="panel">
        <summary>{TRADE_TERMS.length} terms of the trade that are looked for anyway</summary>
        <ul className={styles['terms']}>
          {TRADE_TERMS.map(({ term, sounds }) => (
            <li key={term}>
              {term}
              {sounds.length > 0 && <span className="soft"> said “{sounds.join('”, “')}”</span>}
            </li>
          ))}
        </ul>
      </details>
      <details className="panel">
        <summary>{EXPLAINED_TRADE_TERMS.length} terms of the trade that English lessons explain</summary>
        <p className="soft">
          Common practice in our own words. Where you mean something else, keep a term of your own with your
          meaning: it goes before ours.
        </p>
        <dl className={styles['meanings']}>
          {EXPLAINED_TRADE_TERMS.map(({ term, meaning }) => (
            <div key={term}>
              <dt>{term}</dt>
              <dd>{meaning}</dd>
            </div>
          ))}
        </dl>
      </details>
    </main>
  );
}
