'use client';
/** What the recording says aloud beside what the lesson says in writing; what differs can become a correction. */
import { useState } from 'react';
import { factWords, valuesToCorrect, writtenWords } from '#app/words/misheard-words.ts';
import type { ComparedFact } from '#lib/facts/compare-facts.ts';
import { isCorrected, type SaidAloud as Said } from '#lib/facts/spoken-findings.ts';
import { emptyCorrection } from '#lib/lesson/corrections.ts';
import { formatTimeCode } from '#lib/time/time-code.ts';
import { useDraft } from '../draft.client.tsx';
import { ProposedSteps } from './proposed-steps.client.tsx';
import styles from './said-aloud.module.css';

export function SaidAloud({ said, bench }: { readonly said: Said; readonly bench: string }) {
  const { content, cues, mayEdit, change } = useDraft();
  const [begun, setBegun] = useState<string | null>(null);
  const differing = said.facts.filter(({ standing }) => standing === 'contradicts');
  const others = said.facts.filter(({ standing }) => standing !== 'contradicts');

  const correct = (compared: ComparedFact) => {
    const id = crypto.randomUUID();
    const { startMs, endMs, ringKinds } = compared.fact;
    const item = {
      ...emptyCorrection(id),
      ...valuesToCorrect(compared),
      startMs,
      endMs,
      of: ringKinds.length === 1 ? (ringKinds[0] ?? null) : null,
    };
    change([{ kind: 'put', list: 'corrections', item }], 'begin a correction');
    setBegun(id);
  };

  if (cues.length === 0) return null;
  return (
    <section className="panel" aria-labelledby="said-title">
      <h2 id="said-title">Said aloud, beside what is written</h2>
      {said.facts.length === 0 ? (
        <p className="soft">No size, gauge or count was found in the transcript.</p>
      ) : differing.length === 0 ? (
        <p className="soft">Nothing that is said differs from the ring kinds, the sequence and the kit.</p>
      ) : (
        <ul className={styles.facts}>
          {differing.map((compared) => (
            <li key={compared.fact.id} className={styles.differs}>
              <p>
                Said: <strong>{factWords(compared.fact)}</strong>
                {compared.names.length > 0 && <> of {compared.names.join(' or ')}</>}. The lesson has:{' '}
                <strong>{writtenWords(compared)}</strong>.
              </p>
              <Quote compared={compared} bench={bench} />
              {isCorrected(compared, content.corrections) ? (
                <p className="hint">There is a correction for this moment.</p>
              ) : mayEdit ? (
                <button type="button" className="quiet" onClick={() => correct(compared)}>
                  Make it a correction
                  <span className="unseen">: said {factWords(compared.fact)}</span>
                </button>
              ) : null}
            </li>
          ))}
        </ul>
      )}
      <p role="status">
        {begun !== null && (
          <>
            A correction is begun.{' '}
            <a href={`${bench}/corrections#${encodeURIComponent(begun)}`}>Say whom it concerns</a>
          </>
        )}
      </p>
      <ProposedSteps bench={bench} />
      {others.length > 0 && (
        <details>
          <summary>
            {others.length} other {others.length === 1 ? 'fact' : 'facts'} said aloud
          </summary>
          <ul className={styles.facts}>
            {others.map((compared) => (
              <li key={compared.fact.id}>
                <p>
                  <strong>{factWords(compared.fact)}</strong>
                  {compared.names.length > 0 && <> of {compared.names.join(' or ')}</>}{' '}
                  <span className="soft">
                    {compared.standing === 'agrees'
                      ? `agrees with ${compared.written}`
                      : 'nothing in the lesson to compare it with'}
                  </span>
                </p>
                <Quote compared={compared} bench={bench} />
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

const Quote = ({ compared: { fact }, bench }: { compared: ComparedFact; bench: string }) => (
  <p className={styles.quote}>
    <a href={`${bench}/transcript#${encodeURIComponent(fact.cueId)}`}>{formatTimeCode(fact.startMs)}</a> “
    {fact.quote}”
  </p>
);
