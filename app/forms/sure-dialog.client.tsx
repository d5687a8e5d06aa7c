'use client';
/** Asks once more before something is lost: says what, and does it only on the second press. */
import { type ReactNode, useId, useRef, useState } from 'react';
import { accessFaultWords } from '#app/words/access-faults.ts';
import styles from './forms.module.css';
import { sendJson } from './send-json.ts';

interface Props {
  /** On the button that opens the question. */
  readonly opens: ReactNode;
  readonly question: string;
  /** What is lost. */
  readonly children: ReactNode;
  /** On the button that does it. */
  readonly does: string;
  /** On the button that leaves all as it is. */
  readonly keep?: string;
  readonly to: string;
  readonly method: 'POST' | 'DELETE';
  readonly done: () => void;
}

export function SureDialog({ opens, question, children, does, keep = 'Cancel', to, method, done }: Props) {
  const dialog = useRef<HTMLDialogElement>(null);
  const title = useId();
  const [fault, setFault] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);

  async function go() {
    if (busy) return;
    setBusy(true);
    const sent = await sendJson(to, method);
    setBusy(false);
    if (!sent.ok) return setFault(accessFaultWords(sent.code, sent.facts).text);
    dialog.current?.close();
    done();
  }

  return (
    <>
      <button type="button" className="bare" onClick={() => dialog.current?.showModal()}>
        {opens}
      </button>
      <dialog ref={dialog} aria-labelledby={title} className={styles['sure']} onClose={() => setFault(null)}>
        <h2 id={title}>{question}</h2>
        {children}
        {fault && (
          <p role="alert" className="fault">
            {fault}
          </p>
        )}
        <div className="row">
          <button type="button" className="quiet" onClick={() => dialog.current?.close()}>
            {keep}
          </button>
          <button type="button" className="alarm" aria-disabled={busy || undefined} onClick={() => void go()}>
            {does}
          </button>
        </div>
      </dialog>
    </>
  );
}
