/** Keeps the list of a lesson's recordings fresh while something happens to one. */
import { useCallback, useEffect, useRef, useState } from 'react';
import type { ShownRecordings } from '#app/http/present-recording.ts';

const BUSY_MS = 700;

export interface RecordingsFeed {
  readonly now: ShownRecordings;
  readonly unreachable: boolean;
  readonly refresh: () => Promise<void>;
}

/**
 * @param base address of the lesson's routes, without a slash at its end
 * @param first as the server had them when it wrote the page
 */
export function useRecordings(base: string, first: ShownRecordings): RecordingsFeed {
  const [now, setNow] = useState(first);
  const [unreachable, setUnreachable] = useState(false);
  const asked = useRef(0);
  const shown = useRef(0);
  const refresh = useCallback(async () => {
    asked.current += 1;
    const number = asked.current;
    try {
      const response = await fetch(`${base}/recordings`);
      if (!response.ok) throw new Error(String(response.status));
      const answer: ShownRecordings = await response.json();
      // An answer older than the one that is shown is no news; where answers are slow, each still counts.
      if (number > shown.current) {
        shown.current = number;
        setNow(answer);
      }
      setUnreachable(false);
    } catch {
      setUnreachable(true);
    }
  }, [base]);
  const isBusy =
    unreachable || now.recordings.some(({ state }) => state === 'waiting' || state === 'ingesting');
  useEffect(() => {
    void refresh();
  }, [refresh]);
  useEffect(() => {
    if (!isBusy) return;
    const timer = setInterval(() => void refresh(), BUSY_MS);
    return () => clearInterval(timer);
  }, [isBusy, refresh]);
  return { now, unreachable, refresh };
}
