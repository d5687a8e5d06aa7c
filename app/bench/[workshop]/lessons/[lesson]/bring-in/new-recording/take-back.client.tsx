'use client';
/** The way back to the recording that the lesson had before. */
import { useRef, useState } from 'react';
import { sendJson } from '#app/forms/send-json.ts';
import { takeBackFaultWords } from '#app/words/recording-change-words.ts';
import { useDraft } from '../../draft.client.tsx';

interface TakeBackProps {
  /** Of the route. */
  readonly address: string;
  /** Name of the former recording's file. */
  readonly old: string;
  readonly onDone: () => void;
}

export function TakeBack({ address, old, onDone }: TakeBackProps) {
  const { mayEdit, saveState, version, refresh } = useDraft();
  const [busy, setBusy] = useState(false);
  const [fault, setFault] = useState<string | null>(null);
  const wish = useRef<{ readonly saveId: string; readonly version: number } | null>(null);
  if (!mayEdit) return null;

  const takeBack = async () => {
    if (busy) return;
    if (wish.current?.version !== version) wish.current = { saveId: crypto.randomUUID(), version };
    setBusy(true);
    setFault(null);
    const sent = await sendJson(address, 'POST', wish.current);
    await refresh();
    setBusy(false);
    if (sent.ok) onDone();
    else setFault(takeBackFaultWords(sent.code));
  };

  return (
    <details>
      <summary>Go back to the recording before this one</summary>
      <p>
        The lesson gets {old} again, and everything stands where it stood. What you changed since goes back
        with its sound; words written for parts that are only in this recording are taken out. This recording
        then waits for your decision once more. What is published stays as it is.
      </p>
      <p>
        <button
          type="button"
          className="quiet"
          disabled={saveState !== 'saved' && !busy}
          aria-disabled={busy}
          onClick={() => void takeBack()}
        >
          {busy ? 'Going back…' : 'Go back to the former recording'}
        </button>
      </p>
      {fault !== null && (
        <p className="notice alarm" role="alert">
          {fault}
        </p>
      )}
    </details>
  );
}
