/** Notices a recording that was taken in, or replaced, while the screen is open, and has the screen show it. */
import { useRouter } from 'next/navigation';
import { useEffect } from 'react';
import type { ShownRecordings } from '#app/http/present-recording.ts';

/** How often it is looked for while there is none, ms. */
const LOOK_MS = 3_000;

/**
 * @param address of the list of the lesson's recordings
 * @param shown id of the one on the screen; null: none yet
 */
export function useNewRecording(address: string, shown: string | null): void {
  const router = useRouter();
  useEffect(() => {
    const gone = new AbortController();
    const look = async () => {
      if (document.visibilityState !== 'visible') return;
      const response = await fetch(address, { signal: gone.signal });
      if (!response.ok) return;
      const { current }: ShownRecordings = await response.json();
      if (current !== null && current !== shown) router.refresh();
    };
    // Where no answer comes, the next look may have one.
    const lookAgain = () => void look().catch(() => undefined);
    const timer = shown === null ? setInterval(lookAgain, LOOK_MS) : undefined;
    // Somebody comes back from another tab, where it may have been brought in.
    document.addEventListener('visibilitychange', lookAgain);
    return () => {
      gone.abort();
      clearInterval(timer);
      document.removeEventListener('visibilitychange', lookAgain);
    };
  }, [address, shown, router]);
}
