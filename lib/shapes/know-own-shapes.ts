/** What is known of the shapes of a lesson's own sequences; what is not known yet is asked of the worker. */
import { LRUCache } from 'lru-cache';
import type { Database } from '#lib/data/database.ts';
import { askForOwnShape, findOwnShapes } from '#lib/data/own-shapes.ts';
import type { Queue } from '#lib/jobs/queue.ts';
import { ownSequences } from '#lib/lesson/own-sequences.ts';
import type { Pictured } from '#lib/lesson/pictured.ts';
import type { OwnSequence, OwnShape } from '#lib/weave/space/own-weave.ts';

/** A job that is not done after so long may be lost, and is queued again. */
const PATIENCE_MS = 10 * 60_000;

interface Asking {
  readonly db: Database;
  readonly queue: () => Promise<Pick<Queue, 'send'>>;
  readonly now: () => Date;
}

/** Shapes do not change once they are known. */
const known = new LRUCache<string, OwnShape>({ max: 200 });

/** The lesson with what is known of its own sequences, as its pictures take it. Most lessons are a stored weave and come back as they are. */
export async function withOwnShapes<P extends Pictured>(asking: Asking, content: P): Promise<P> {
  const sequences = ownSequences(content);
  if (sequences.size === 0) return content;
  const unknown = [...sequences.keys()].filter((key) => !known.has(key));
  const stored = unknown.length === 0 ? [] : await findOwnShapes(asking.db, unknown);
  for (const { key, shape } of stored) if (shape.state !== 'waiting') known.set(key, shape);
  const own = new Map<string, OwnShape>();
  for (const [key, sequence] of sequences) {
    const shape = known.get(key);
    if (!shape)
      await ask(asking, key, { sequence, before: stored.find((each) => each.key === key)?.askedAt });
    own.set(key, shape ?? { state: 'waiting' });
  }
  return { ...content, own };
}

/** Whether a shape is still sought: pictures will be others before long. */
export const isWaiting = ({ own }: Pictured): boolean =>
  [...(own?.values() ?? [])].some(({ state }) => state === 'waiting');

async function ask(
  { db, queue, now }: Asking,
  key: string,
  { sequence, before }: { readonly sequence: OwnSequence; readonly before: Date | undefined },
): Promise<void> {
  if (before && now().getTime() - before.getTime() < PATIENCE_MS) return;
  const jobs = await queue();
  // The job exists exactly if it is noted that the shape is sought.
  await db.$transaction(async (within) => {
    await askForOwnShape(within, sequence, now());
    await jobs.send('derive-shape', { key }, within);
  });
}
