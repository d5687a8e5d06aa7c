'use client';
import { EntryFrame } from './entry-frame.tsx';

/** Next wants this file to be a client component; the digest is what the server's log knows the error by. */
export default function ScreenError({
  error,
  reset,
}: {
  error: Error & { digest?: string };
  reset: () => void;
}) {
  return (
    <EntryFrame
      title="This screen could not be shown"
      lead="Something went wrong on our side. What was saved is safe; what you typed just now is still in this browser."
    >
      {error.digest && <p className="soft">Incident {error.digest}</p>}
      <button type="button" onClick={reset}>
        Try again
      </button>
    </EntryFrame>
  );
}
