/** Sees to it that every comparison of recordings that is still to be done has a job. */
import { comparisonsToDo } from '#lib/data/comparisons.ts';
import type { Database } from '#lib/data/database.ts';
import type { Queue } from '#lib/jobs/queue.ts';

/** A job that is there already is not queued twice; a needless one finds nothing to do. */
export async function queueComparisons(
  { db }: { readonly db: Database },
  queue: Pick<Queue, 'send'>,
): Promise<void> {
  for (const comparisonId of await comparisonsToDo(db))
    await queue.send('compare-recordings', { comparisonId });
}
