'use client';
/** The workshop's glossary in this window: read once, and decisions sent as they are made. */
import { useCallback, useEffect, useState } from 'react';
import { sendJson } from '#app/forms/send-json.ts';
import type { VERDICTS, WorkshopGlossary } from '#lib/bench/change-glossary.ts';
import { plainWords, type Suggestion } from '#lib/glossary/suggestion.ts';

const EMPTY: WorkshopGlossary = { terms: [], decisions: [] };
const NOT_KEPT = 'It counts here, but could not be kept for other lessons. Look at your connection.';

export function useGlossary(api: string) {
  const [glossary, setGlossary] = useState<WorkshopGlossary>(EMPTY);
  const [fault, setFault] = useState<string | null>(null);

  useEffect(() => {
    const gone = new AbortController();
    const load = async () => {
      const response = await fetch(api, { signal: gone.signal });
      if (response.ok) setGlossary((await response.json()) as WorkshopGlossary);
    };
    // Without it our own terms are searched for all the same.
    load().catch(() => undefined);
    return () => gone.abort();
  }, [api]);

  const decide = useCallback(
    (one: Suggestion, verdict: Exclude<(typeof VERDICTS)[number], 'forget'>, times: number) => {
      const heard = plainWords(one.heard);
      const { instead } = one;
      // What was taken teaches the next search; what is never wanted is gone at once.
      if (verdict === 'never')
        setGlossary((now) => ({
          ...now,
          decisions: [{ heard, instead, taken: 0, never: true }, ...now.decisions],
        }));
      const send = async () => {
        const sent = await sendJson(`${api}/decisions`, 'POST', { heard, instead, verdict, times });
        setFault(sent.ok ? null : NOT_KEPT);
      };
      void send();
    },
    [api],
  );
  return { glossary, decide, fault };
}
