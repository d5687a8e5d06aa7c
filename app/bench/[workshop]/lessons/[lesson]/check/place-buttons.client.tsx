'use client';
/** Taking something along to a place outside, and ticking it off there. */
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { sendJson } from '#app/forms/send-json.ts';
import type { Place } from '#lib/description/places.ts';
import { toClipboard } from './to-clipboard.ts';

interface Of {
  /** Where the place's mark is kept. */
  readonly to: string;
  readonly revision: number;
  /** Of the place. */
  readonly name: string;
}

/** Notes that a file was taken along from somewhere else than the list of places; where that fails, it is still to be ticked there. */
export function useTaken(api: string): (place: Place, what: { draft: true } | { revision: number }) => void {
  const router = useRouter();
  return (place, what) => {
    const body = 'draft' in what ? what : { ...what, ticked: false };
    void sendJson(`${api}/places/${place}`, 'PUT', body).then((sent) => sent.ok && router.refresh());
  };
}

function useMark({ to, revision }: Of) {
  const router = useRouter();
  const [failed, setFailed] = useState(false);
  const send = async (method: 'PUT' | 'DELETE', ticked = false) => {
    const sent = await sendJson(to, method, method === 'PUT' ? { revision, ticked } : undefined);
    setFailed(!sent.ok);
    if (sent.ok) router.refresh();
  };
  return { failed, send };
}

const Failed = ({ failed }: { readonly failed: boolean }) =>
  failed ? (
    <span role="alert" className="fault">
      This could not be noted. Reload the page and try again.
    </span>
  ) : null;

/** @param does on the button */
export function TickPlace({ does, ...of }: Of & { readonly does: string }) {
  const { failed, send } = useMark(of);
  return (
    <>
      <button type="button" className="quiet" onClick={() => void send('PUT', true)}>
        {does}
        <span className="unseen"> {of.name}</span>
      </button>
      <Failed failed={failed} />
    </>
  );
}

export function ForgetPlace(of: Of) {
  const { failed, send } = useMark(of);
  return (
    <>
      <button type="button" className="bare" onClick={() => void send('DELETE')}>
        Not used any more<span className="unseen"> {of.name}</span>
      </button>
      <Failed failed={failed} />
    </>
  );
}

interface TakeLinkProps extends Of {
  readonly href: string;
  readonly words: string;
  readonly mayEdit: boolean;
}

/** A file to take along; taking it is noted. */
export function TakeLink({ href, words, mayEdit, ...of }: TakeLinkProps) {
  const { failed, send } = useMark(of);
  return (
    <>
      <a href={href} download onClick={() => mayEdit && void send('PUT')}>
        {words}
        <span className="unseen"> {of.name}</span>
      </a>
      <Failed failed={failed} />
    </>
  );
}

interface CopyPlaceProps extends Of {
  readonly text: string;
  readonly isHtml: boolean;
  readonly mayEdit: boolean;
}

/** A text to take along; copying it is noted. */
export function CopyPlace({ text, isHtml, mayEdit, ...of }: CopyPlaceProps) {
  const { failed, send } = useMark(of);
  const [told, setTold] = useState('');
  const copy = async () => {
    try {
      await toClipboard(text, isHtml);
    } catch {
      setTold('Your browser did not allow copying.');
      return;
    }
    setTold('Copied.');
    if (mayEdit) await send('PUT');
  };
  return (
    <>
      <button type="button" className="quiet" onClick={() => void copy()}>
        Copy<span className="unseen"> {of.name}</span>
      </button>
      <span role="status" className="hint">
        {told}
      </span>
      <Failed failed={failed} />
    </>
  );
}
