/** Keeps the comparison of two recordings fresh while a worker is at it. */
import { useCallback, useEffect, useRef, useState } from 'react';
import type { Comparison } from '#lib/data/comparisons.ts';

const BUSY_MS = 900;

/** The lesson's comparison, as one answer tells of it. */
export interface Compared {
  /** Null where there is nothing to decide. */
  readonly comparison: Comparison | null;
  /** The one that gave the lesson the recording it has; null where there is none. */
  readonly accepted: Comparison | null;
}

export interface ComparisonFeed {
  /** Undefined until the first answer, null where there is nothing to decide. */
  readonly comparison: Comparison | null | undefined;
  /** The one that gave the lesson the recording it has; null where there is none. */
  readonly accepted: Comparison | null;
  readonly unreachable: boolean;
  readonly look: () => Promise<void>;
}

/**
 * @param api address of the lesson's routes, without a slash at its end
 * @param asOf looked at anew whenever this becomes another; what is shown stays meanwhile
 * @param first as the server had it when it wrote the page
 */
export function useComparison(api: string, asOf = '', first?: Compared): ComparisonFeed {
  const [comparison, setComparison] = useState(first?.comparison);
  const [accepted, setAccepted] = useState(first?.accepted ?? null);
  const [unreachable, setUnreachable] = useState(false);
  const asked = useRef(0);
  const shown = useRef(0);
  const look = useCallback(async () => {
    asked.current += 1;
    const number = asked.current;
    try {
      const response = await fetch(`${api}/comparison`);
      if (!response.ok) throw new Error(String(response.status));
      const answer: Compared = await response.json();
      // An answer older than the one that is shown is no news.
      if (number > shown.current) {
        shown.current = number;
        setComparison(answer.comparison);
        setAccepted(answer.accepted);
      }
      setUnreachable(false);
    } catch {
      setUnreachable(true);
    }
  }, [api]);
  const isBusy = unreachable || comparison?.state === 'waiting' || comparison?.state === 'comparing';
  useEffect(() => {
    void asOf;
    void look();
  }, [look, asOf]);
  useEffect(() => {
    if (!isBusy) return;
    const timer = setInterval(() => void look(), BUSY_MS);
    return () => clearInterval(timer);
  }, [isBusy, look]);
  return { comparison, accepted, unreachable, look };
}

/** The waveform of a recording: one byte for every 50 ms; null until it is there. */
export function usePeaks(address: string): Uint8Array | null {
  const [peaks, setPeaks] = useState<Uint8Array | null>(null);
  useEffect(() => {
    let gone = false;
    void fetch(address)
      .then(async (response) => (response.ok ? new Uint8Array(await response.arrayBuffer()) : null))
      .catch(() => null)
      .then((found) => {
        if (!gone) setPeaks(found);
      });
    return () => {
      gone = true;
    };
  }, [address]);
  return peaks;
}
