'use client';

import { type FormEvent, useId, useState } from 'react';
import { sendJson } from '#app/forms/send-json.ts';
import { accessFaultWords } from '#app/words/access-faults.ts';
import { PART_WORDS } from '#app/words/description-words.ts';
import {
  DEFAULT_SETUP,
  type DescriptionSetup,
  descriptionSetup,
  PART_KINDS,
} from '#lib/description/description-setup.ts';
import styles from './description-setup.module.css';
import { LimitsFields } from './limits-fields.client.tsx';
import { OrderedList } from './ordered-list.client.tsx';

interface SetupFormProps {
  readonly api: string;
  readonly stored: DescriptionSetup;
}

export function SetupForm({ api, stored }: SetupFormProps) {
  const [setup, setSetup] = useState(stored);
  const [told, setTold] = useState('');
  const [fault, setFault] = useState('');
  const id = useId();
  const change = (changed: Partial<DescriptionSetup>): void => {
    setSetup({ ...setup, ...changed });
    setTold('Not saved yet.');
    setFault('');
  };

  const save = async (event: FormEvent) => {
    event.preventDefault();
    const checked = descriptionSetup.safeParse(setup);
    if (!checked.success) {
      setFault(
        checked.error.issues.map(({ message, path }) => faultWords(String(path[0]), message)).join(' '),
      );
      return;
    }
    const sent = await sendJson(api, 'PUT', checked.data);
    if (sent.ok) setTold('Saved. The texts of all lessons follow.');
    else setFault(accessFaultWords(sent.code).text);
  };
  const reset = async () => {
    const sent = await sendJson(api, 'DELETE');
    if (!sent.ok) return setFault(accessFaultWords(sent.code).text);
    setSetup(DEFAULT_SETUP);
    setFault('');
    setTold('Everything is worded again as at the beginning.');
  };

  return (
    <form onSubmit={(event) => void save(event)} noValidate>
      <div className="columns">
        <section className="panel" aria-labelledby={`${id}-parts`}>
          <h2 id={`${id}-parts`}>Parts, in this order</h2>
          <OrderedList
            label="Parts of the text"
            items={setup.parts}
            keyOf={({ kind }) => kind}
            nameOf={({ kind }) => PART_WORDS[kind]}
            onOrder={(parts) => change({ parts: [...parts] })}
          >
            {(part) => {
              const put = (changed: Partial<typeof part>): void =>
                change({
                  parts: setup.parts.map((each) =>
                    each.kind === part.kind ? { ...each, ...changed } : each,
                  ),
                });
              return (
                <>
                  <label className={styles['shown']}>
                    <input
                      type="checkbox"
                      checked={part.shown}
                      onChange={(event) => put({ shown: event.target.checked })}
                    />
                    {PART_WORDS[part.kind]}
                  </label>
                  <label className={styles['heading']}>
                    <span className="unseen">{PART_WORDS[part.kind]}, under the</span> heading
                    <input
                      value={part.heading}
                      maxLength={100}
                      placeholder="none"
                      onChange={(event) => put({ heading: event.target.value })}
                    />
                  </label>
                </>
              );
            }}
          </OrderedList>
          <div className="field">
            <label htmlFor={`${id}-house`}>Lines of the house</label>
            <p className="hint" id={`${id}-house-hint`}>
              The same in every text: where to reach you, when you teach.
            </p>
            <textarea
              id={`${id}-house`}
              aria-describedby={`${id}-house-hint`}
              rows={4}
              maxLength={5_000}
              value={setup.house}
              onChange={(event) => change({ house: event.target.value })}
            />
          </div>
          <div className="field">
            <label htmlFor={`${id}-campaign`}>Tag on every web address</label>
            <p className="hint" id={`${id}-campaign-hint`}>
              Written name=value, such as from=recording. It shows in your own statistics where visitors come
              from. Empty: no tag.
            </p>
            <input
              id={`${id}-campaign`}
              aria-describedby={`${id}-campaign-hint`}
              value={setup.campaign}
              maxLength={200}
              autoCapitalize="none"
              spellCheck={false}
              onChange={(event) => change({ campaign: event.target.value })}
            />
          </div>
        </section>
        <div>
          <section className="panel" aria-labelledby={`${id}-limits`}>
            <h2 id={`${id}-limits`}>What the place takes</h2>
            <LimitsFields limits={setup.limits} onChange={(limits) => change({ limits })} />
          </section>
          <section className="panel" aria-labelledby={`${id}-out`}>
            <h2 id={`${id}-out`}>Where it is too long</h2>
            <p>Whole parts are left out, the first of this list first. Lines are never cut.</p>
            <OrderedList
              label="What is left out first"
              items={setup.leaveOut}
              keyOf={(kind) => kind}
              nameOf={(kind) => `Leaving out ${PART_WORDS[kind].toLowerCase()}`}
              onOrder={(leaveOut) => change({ leaveOut: [...leaveOut] })}
            >
              {(kind) => (
                <label className={styles['shown']}>
                  <input
                    type="checkbox"
                    checked
                    onChange={() => change({ leaveOut: setup.leaveOut.filter((each) => each !== kind) })}
                  />
                  {PART_WORDS[kind]}
                </label>
              )}
            </OrderedList>
            <p>These always stay:</p>
            <ul className={styles['staying']}>
              {PART_KINDS.filter((kind) => !setup.leaveOut.includes(kind)).map((kind) => (
                <li key={kind}>
                  <label className={styles['shown']}>
                    <input
                      type="checkbox"
                      checked={false}
                      onChange={() => change({ leaveOut: [...setup.leaveOut, kind] })}
                    />
                    {PART_WORDS[kind]}
                  </label>
                </li>
              ))}
            </ul>
          </section>
        </div>
      </div>
      {fault && (
        <p className="fault" role="alert">
          {fault}
        </p>
      )}
      <div className="row">
        <button type="submit">Save</button>
        <button type="button" className="quiet" onClick={() => void reset()}>
          As at the beginning
        </button>
        <span role="status">{told}</span>
      </div>
    </form>
  );
}

const FIELD_WORDS: Readonly<Record<string, string>> = {
  campaign: 'Tag',
  limits: 'What the place takes: a number is out of range.',
  parts: 'Parts',
  house: 'Lines of the house: at most 5,000 characters.',
};

const faultWords = (field: string, message: string): string =>
  field === 'campaign' ? `Tag: ${message}` : (FIELD_WORDS[field] ?? message);
