/** A still picture of a recording: the stored one, or one that the worker takes now. */
import { findStill } from '#lib/data/stills.ts';
import type { Queue } from '#lib/jobs/queue.ts';
import type { Bench } from './bench.ts';

/** How long a request waits for the worker, ms. */
const PATIENCE_MS = 20_000;
const LOOK_MS = 120;

/**
 * @returns the still's storage key; null where none came in time: the
 * recording has no picture, or the worker is busy and the asker may ask again.
 */
export async function findOrTakeStill(
  { db }: Pick<Bench, 'db'>,
  queue: Pick<Queue, 'send'>,
  still: { readonly recordingId: string; readonly atMs: number },
  signal: AbortSignal,
): Promise<string | null> {
  const known = await findStill(db, still.recordingId, still.atMs);
  if (known) return known;
  await queue.send('take-still', { ...still });
  const until = performance.now() + PATIENCE_MS;
  while (performance.now() < until && !signal.aborted) {
    await new Promise((resolve) => setTimeout(resolve, LOOK_MS));
    const key = await findStill(db, still.recordingId, still.atMs);
    if (key) return key;
  }
  return null;
}
