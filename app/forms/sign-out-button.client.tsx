'use client';
import { type ReactNode, useState } from 'react';
import { accessFaultWords } from '#app/words/access-faults.ts';
import { sendJson } from './send-json.ts';

/** Signs out, then loads a whole new page, so that nothing of the bench stays in memory. */
export function SignOutButton({ leadsTo, children }: { leadsTo: string; children: ReactNode }) {
  const [fault, setFault] = useState<string | null>(null);

  async function signOut() {
    const sent = await sendJson('/api/auth/sign-out', 'POST');
    if (sent.ok) window.location.assign(leadsTo);
    else setFault(accessFaultWords(sent.code, sent.facts).text);
  }

  return (
    <>
      <button type="button" className="bare" onClick={() => void signOut()}>
        {children}
      </button>
      {fault && (
        <span role="alert" className="fault">
          {fault}
        </span>
      )}
    </>
  );
}
