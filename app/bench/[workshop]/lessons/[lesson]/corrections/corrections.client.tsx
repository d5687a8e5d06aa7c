'use client';

import Link from 'next/link';
import { useState } from 'react';
import { concernsWords } from '#app/words/correction-words.ts';
import { putRightWords } from '#app/words/effect-words.ts';
import type { Correction } from '#lib/lesson/content.ts';
import { correctionsNewestFirst, emptyCorrection, isPublished } from '#lib/lesson/corrections.ts';
import { formatTimeCode } from '#lib/time/time-code.ts';
import { useDraft } from '../draft.client.tsx';
import { CorrectionForm } from './correction-form.client.tsx';
import styles from './corrections.module.css';

interface CorrectionsProps {
  readonly bench: string;
  /** Number of the latest revision, or null where nothing is published. */
  readonly published: number | null;
  readonly durationMs: number | null;
}

export function Corrections({ bench, published, durationMs }: CorrectionsProps) {
  const { content, cues, mayEdit, change } = useDraft();
  const [openId, setOpenId] = useState<string | null>(null);
  const listed = correctionsNewestFirst(content.corrections);
  const drafted = listed.filter((correction) => !isPublished(correction));
  const standing = listed.filter(isPublished);

  const begin = () => {
    const fresh = emptyCorrection(crypto.randomUUID());
    change([{ kind: 'put', list: 'corrections', item: fresh }], 'begin a correction');
    setOpenId(fresh.id);
  };
  const put = (correction: Correction) =>
    change([{ kind: 'put', list: 'corrections', item: correction }], 'change a correction');
  const remove = (id: string) => change([{ kind: 'remove', list: 'corrections', id }], 'remove a correction');

  return (
    <>
      {published === null ? null : (
        <p>
          <Link href={`${bench}/corrections/revisions`}>Compare revisions, or go back to an earlier one</Link>
        </p>
      )}
      <section className="panel" aria-labelledby="new-title">
        <h2 id="new-title">To be published with revision {(published ?? 0) + 1}</h2>
        {published === null ? (
          <p>
            Nothing is published yet: simply mend what is wrong. Corrections tell pupils who already worked by
            an earlier revision.
          </p>
        ) : null}
        {drafted.length === 0 && published !== null ? <p className="soft">No new correction.</p> : null}
        {drafted.map((correction) => (
          <CorrectionForm
            key={correction.id}
            correction={correction}
            cues={cues}
            bench={bench}
            durationMs={durationMs}
            mayEdit={mayEdit}
            focused={correction.id === openId}
            onChange={put}
            onRemove={remove}
          />
        ))}
        <div className="row">
          {mayEdit && published !== null ? (
            <button type="button" className={drafted.length > 0 ? 'quiet' : ''} onClick={begin}>
              State a correction
            </button>
          ) : null}
          {drafted.length > 0 && published !== null ? (
            <a className="button quiet" href={`${bench}/corrections/revisions?newer=draft`}>
              See all that would change
            </a>
          ) : null}
          {drafted.length > 0 ? (
            <a className="button" href={`${bench}/check`}>
              Check and publish revision {(published ?? 0) + 1}
            </a>
          ) : null}
        </div>
      </section>
      {standing.length === 0 ? null : (
        <section className="panel" aria-labelledby="standing-title">
          <h2 id="standing-title">Published</h2>
          <p className="soft">
            What was published stands for ever. If a correction is itself wrong, state a new one.
          </p>
          <ol className={styles.standing}>
            {standing.map((correction) => (
              <li key={correction.id} id={correction.id}>
                <p>
                  <span className="label">Revision {correction.revision}</span> {correction.kind}
                  {correction.startMs === null || correction.endMs === null
                    ? ''
                    : `, ${formatTimeCode(correction.startMs)} to ${formatTimeCode(correction.endMs)}`}
                </p>
                <p>
                  <s>{correction.wrong}</s> <strong>{correction.right}</strong>
                </p>
                <p className="soft">
                  {concernsWords(correction.affects)}{' '}
                  {correction.kitsChange ? 'Kits change.' : 'Kits stay as they are.'}{' '}
                  {putRightWords(correction.effects)}
                </p>
              </li>
            ))}
          </ol>
        </section>
      )}
    </>
  );
}
