'use client';
import './design.css';

/** Stands in for the whole page where even its frame failed. */
export default function GlobalError({
  error,
  reset,
}: {
  error: Error & { digest?: string };
  reset: () => void;
}) {
  return (
    <html lang="en">
      <body>
        <main className="page narrow">
          <h1>Benchleaf could not show this page</h1>
          <p>Something went wrong on our side. What was saved is safe.</p>
          {error.digest && <p className="soft">Incident {error.digest}</p>}
          <button type="button" onClick={reset}>
            Try again
          </button>
        </main>
      </body>
    </html>
  );
}
