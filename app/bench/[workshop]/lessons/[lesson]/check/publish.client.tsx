'use client';

import Link from 'next/link';
import { useRouter } from 'next/navigation';
import { useRef, useState } from 'react';
import { publishFaultWords } from '#app/words/publish-fault.ts';
import { useDraft } from '../draft.client.tsx';
import { MadeFiles } from './made-files.client.tsx';

interface PublishProps {
  readonly api: string;
  readonly preview: string;
  readonly lessonPath: string;
  readonly firstPublished: number | null;
  /** Whether something has to be mended first. */
  readonly blocked: boolean;
  /** How many corrections would be published. */
  readonly corrections: number;
}

type Answer = { readonly number: number } | { readonly fault: string };

async function send(address: string, requestId: string, version: number): Promise<Answer> {
  try {
    const response = await fetch(address, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ requestId, version }),
    });
    const body = (await response.json()) as { number?: number; fault?: { code?: string } };
    return typeof body.number === 'number'
      ? { number: body.number }
      : { fault: body.fault?.code ?? 'no-answer' };
  } catch {
    return { fault: 'no-answer' };
  }
}

export function Publish(props: PublishProps) {
  const { saveState, version, mayEdit, refresh } = useDraft();
  const router = useRouter();
  const [published, setPublished] = useState(props.firstPublished);
  const [busy, setBusy] = useState(false);
  const [done, setDone] = useState<number | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  // One id for one wish: kept while no answer came, so that asking again publishes once.
  const wish = useRef<{ readonly id: string; readonly version: number } | null>(null);
  const next = (published ?? 0) + 1;
  const saved = saveState === 'saved';

  const publish = async () => {
    if (busy) return;
    if (!wish.current || wish.current.version !== version)
      wish.current = { id: crypto.randomUUID(), version };
    setBusy(true);
    setFault(null);
    const answer = await send(`${props.api}/revisions`, wish.current.id, version);
    setBusy(false);
    if ('number' in answer) {
      wish.current = null;
      setPublished(answer.number);
      setDone(answer.number);
      // New corrections got their number in the draft; what stands outside may be old now.
      void refresh();
      router.refresh();
    } else {
      if (answer.fault !== 'no-answer') wish.current = null;
      setFault(answer.fault);
      if (answer.fault === 'draft-is-newer') void refresh();
    }
  };

  return (
    <>
      <p>
        {published === null
          ? 'Nothing is published yet.'
          : `Revision ${published} is published. Pupils see it until the next one.`}{' '}
        {published === null ? null : <a href={props.lessonPath}>Look at the lesson page</a>}
      </p>
      {props.corrections > 0 ? (
        <p>
          {props.corrections === 1
            ? 'A new correction goes with it.'
            : `${props.corrections} new corrections go with it.`}
        </p>
      ) : null}
      <p>
        <Link className="button quiet" href={props.preview}>
          Preview the page
        </Link>
      </p>
      {mayEdit ? (
        <p>
          <button
            type="button"
            disabled={props.blocked || (!saved && !busy)}
            aria-disabled={busy}
            aria-describedby="publish-note"
            onClick={() => void publish()}
          >
            {busy ? 'Publishing…' : `Publish revision ${next}`}
          </button>
        </p>
      ) : null}
      <p id="publish-note" className="hint">
        {!mayEdit
          ? 'Publishing needs the role of an editor.'
          : props.blocked
            ? 'Mend what is listed first.'
            : saved
              ? 'A published revision stays for ever; mistakes are corrected in the next one.'
              : 'Publishing waits until the draft is saved.'}
      </p>
      <div role="status">
        {done === null ? null : (
          <p className="notice">
            Revision {done} is published. <a href={props.lessonPath}>Open the lesson page</a>, or see{' '}
            <a href="#paste-again">where to paste again</a>.
          </p>
        )}
      </div>
      {fault === null ? null : (
        <p className="notice alarm" role="alert">
          {publishFaultWords(fault)}
        </p>
      )}
      {published === null ? null : (
        <MadeFiles
          key={published}
          api={props.api}
          revisionPath={`${props.lessonPath}/revision/${published}`}
          number={published}
          mayEdit={mayEdit}
        />
      )}
    </>
  );
}
