'use client';
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { LongField, TextField } from '#app/forms/field.client.tsx';
import { JsonForm } from '#app/forms/json-form.client.tsx';
import { sendJson } from '#app/forms/send-json.ts';
import type { OwnTerm } from '#lib/data/glossary.ts';
import type { HeardDecision } from '#lib/glossary/decide.ts';
import styles from './glossary.module.css';

/** `pliers; pair of pliers`: parted where one would write a semicolon or a comma. */
const parted = (typed: string): readonly string[] =>
  typed
    .split(/[;,]/)
    .map((text) => text.trim())
    .filter((text) => text !== '');

export function TermForm({ api }: { readonly api: string }) {
  const router = useRouter();
  const [told, setTold] = useState('');
  return (
    <>
      <JsonForm
        to={api}
        label="A term of your own"
        submit="Keep the term"
        busy="Keeping…"
        body={({ term = '', forms = '', sounds = '', meaning = '' }) => ({
          term,
          forms: parted(forms),
          sounds: parted(sounds),
          meaning,
        })}
        done={(_, form) => {
          form.reset();
          setTold('Kept. It is looked for in transcripts from now on.');
          router.refresh();
        }}
      >
        <TextField name="term" label="Term" hint="As it is to be written." maxLength={120} required />
        <TextField
          name="sounds"
          label="Sounds like"
          hint="How you say it, spelled with ordinary words, where its letters mislead: “mail” for maille."
          maxLength={300}
        />
        <TextField
          name="forms"
          label="Also right"
          hint="Plurals and other spellings that are to be left alone, with commas between."
          maxLength={300}
        />
        <LongField
          name="meaning"
          label="What it means"
          hint="For pupils, in a sentence or two. Lesson pages explain the term with it from their next revision on. Leave it empty for words that need no explaining."
          maxLength={600}
          rows={3}
        />
      </JsonForm>
      <p role="status">{told}</p>
    </>
  );
}

export function OwnTermRow({
  api,
  term,
  mayEdit,
}: {
  readonly api: string;
  readonly term: OwnTerm;
  readonly mayEdit: boolean;
}) {
  const away = useTakeAway();
  return (
    <li>
      <span>
        <strong>{term.term}</strong>
        {term.sounds.length > 0 && <span className="soft"> said “{term.sounds.join('”, “')}”</span>}
        {term.forms.length > 0 && <span className="soft">, also {term.forms.join(', ')}</span>}
        {term.meaning !== '' && <span className={styles['meaning']}>{term.meaning}</span>}
      </span>
      {mayEdit && (
        <button
          type="button"
          className="bare"
          disabled={away.busy}
          onClick={() => away.send(`${api}/terms/${encodeURIComponent(term.id)}`, 'DELETE')}
        >
          Remove<span className="unseen"> {term.term}</span>
        </button>
      )}
      {away.fault && (
        <p className="fault" role="alert">
          {away.fault}
        </p>
      )}
    </li>
  );
}

export function DecisionRow({
  api,
  decision,
  mayEdit,
}: {
  readonly api: string;
  readonly decision: HeardDecision;
  readonly mayEdit: boolean;
}) {
  const away = useTakeAway();
  const { heard, instead, taken, never } = decision;
  return (
    <li>
      <span>
        {heard} <span aria-hidden="true">→</span>
        <span className="unseen">for</span> <strong>{instead}</strong>
        {!never && <span className="soft">, taken {taken === 1 ? 'once' : `${taken} times`}</span>}
      </span>
      {mayEdit && (
        <button
          type="button"
          className="bare"
          disabled={away.busy}
          onClick={() => away.send(`${api}/decisions`, 'POST', { heard, instead, verdict: 'forget' })}
        >
          Forget<span className="unseen"> {heard}</span>
        </button>
      )}
      {away.fault && (
        <p className="fault" role="alert">
          {away.fault}
        </p>
      )}
    </li>
  );
}

function useTakeAway() {
  const router = useRouter();
  const [busy, setBusy] = useState(false);
  const [fault, setFault] = useState<string | null>(null);
  const send = async (to: string, method: 'POST' | 'DELETE', body?: unknown) => {
    setBusy(true);
    const sent = await sendJson(to, method, body);
    setBusy(false);
    setFault(sent.ok ? null : 'It could not be taken away. Look at your connection and try again.');
    if (sent.ok) router.refresh();
  };
  return { busy, fault, send: (...asked: Parameters<typeof send>) => void send(...asked) };
}
