'use client';
/** Makes the draft what an earlier revision was, to be looked over and published anew. */
import Link from 'next/link';
import { useRef, useState } from 'react';
import { useDraft } from '../../draft.client.tsx';
import styles from './revisions.module.css';

interface BringBackProps {
  readonly api: string;
  readonly bench: string;
  /** Of all revisions, newest first. */
  readonly numbers: readonly number[];
}

export function BringBack({ api, bench, numbers }: BringBackProps) {
  const { mayEdit, saveState, version, refresh } = useDraft();
  const [number, setNumber] = useState(numbers[1] ?? numbers[0] ?? 1);
  const [busy, setBusy] = useState(false);
  const [said, setSaid] = useState<{ readonly done: boolean; readonly text: string } | null>(null);
  const wish = useRef<{ readonly id: string; readonly of: string } | null>(null);
  if (!mayEdit) return null;

  const bringBack = async () => {
    if (busy) return;
    const of = `${number} ${version}`;
    if (wish.current?.of !== of) wish.current = { id: crypto.randomUUID(), of };
    setBusy(true);
    setSaid(null);
    const code = await send(`${api}/revisions/${number}/bring-back`, wish.current.id, version);
    await refresh();
    setBusy(false);
    setSaid(
      code === null
        ? { done: true, text: `The draft is what revision ${number} was. Corrections stayed.` }
        : { done: false, text: faultWords(code) },
    );
  };

  return (
    <section className="panel" aria-labelledby="bring-back">
      <h3 id="bring-back">Go back to an earlier content</h3>
      <p>
        The draft, with its recording, becomes what that revision was; publishing it makes a new revision.
        What is published stays, and so do all corrections. What the draft holds now and no revision has is
        lost.
      </p>
      <div className="row">
        <label className="row">
          Revision
          <select value={number} onChange={(event) => setNumber(Number(event.currentTarget.value))}>
            {numbers.map((one) => (
              <option key={one} value={one}>
                {one}
              </option>
            ))}
          </select>
        </label>
        <button
          type="button"
          className="alarm"
          disabled={saveState !== 'saved' && !busy}
          aria-disabled={busy}
          onClick={() => void bringBack()}
        >
          {busy ? 'Bringing it back…' : `Make the draft what revision ${number} was`}
        </button>
      </div>
      <div role="status" className={styles.said}>
        {said?.done && (
          <p className="notice">
            {said.text} <Link href={`${bench}/check`}>Check and publish</Link>
          </p>
        )}
      </div>
      {said && !said.done && (
        <p className="notice alarm" role="alert">
          {said.text}
        </p>
      )}
    </section>
  );
}

async function send(address: string, saveId: string, version: number): Promise<string | null> {
  try {
    const response = await fetch(address, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ saveId, version }),
    });
    if (response.ok) return null;
    const answer = (await response.json()) as { fault?: { code?: string } };
    return answer.fault?.code ?? 'no-answer';
  } catch {
    return 'no-answer';
  }
}

function faultWords(code: string): string {
  switch (code) {
    case 'draft-is-newer':
      return 'The lesson was changed meanwhile. Its newest state is loaded; look once more, then try again.';
    case 'recording-gone':
      return 'The recording of that revision is not with this lesson any more, so its times would fit nothing.';
    case 'not-found':
      return 'This revision is not there.';
    default:
      return 'No answer came. Look at your connection and try again; nothing is done twice.';
  }
}
