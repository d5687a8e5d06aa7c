/** Chooses the moment whose picture stands for a recording. */
import { setPoster } from '#lib/data/recordings.ts';
import type { Queue } from '#lib/jobs/queue.ts';
import { failed, ok, type Result } from '#lib/result.ts';
import type { Bench } from './bench.ts';
import { findOrTakeStill } from './find-still.ts';

export async function choosePoster(
  bench: Pick<Bench, 'db'>,
  queue: Pick<Queue, 'send'>,
  poster: { readonly recordingId: string; readonly atMs: number },
  signal: AbortSignal,
): Promise<Result<null, { readonly code: 'no-picture-yet' }>> {
  const key = await findOrTakeStill(bench, queue, poster, signal);
  if (!key) return failed({ code: 'no-picture-yet' });
  await setPoster(bench.db, poster.recordingId, { key, atMs: poster.atMs });
  return ok(null);
}
