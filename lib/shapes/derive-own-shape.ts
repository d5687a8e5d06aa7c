/** Derives the shape of a sequence of a teacher's own, once for all lessons that are made like this. */
import { setImmediate } from 'node:timers/promises';
import type { Database } from '#lib/data/database.ts';
import { askForOwnShape, findOwnShapes, finishOwnShape, soughtSequence } from '#lib/data/own-shapes.ts';
import { ownSequences } from '#lib/lesson/own-sequences.ts';
import type { Pictured } from '#lib/lesson/pictured.ts';
import { deriveWeave } from '#lib/weave/space/derive-weave.ts';

/** Can be ended at any moment and begun again. Between pieces of the work others have their turn. */
export async function deriveOwnShape(
  { db }: { readonly db: Database },
  { key }: { readonly key: string },
  signal: AbortSignal,
): Promise<void> {
  const sequence = await soughtSequence(db, key);
  if (!sequence) return;
  const work = deriveWeave(sequence);
  for (let at = work.next(); ; at = work.next()) {
    if (at.done) {
      await finishOwnShape(db, key, { known: at.value, now: new Date() });
      return;
    }
    await setImmediate();
    signal.throwIfAborted();
  }
}

/** The lesson with the shapes of its own sequences; what is not known yet is derived first. For work that can wait. */
export async function withDerivedShapes<P extends Pictured>(
  work: { readonly db: Database },
  content: P,
  signal: AbortSignal,
): Promise<P> {
  const sequences = ownSequences(content);
  if (sequences.size === 0) return content;
  for (const [key, sequence] of sequences) {
    await askForOwnShape(work.db, sequence, new Date());
    await deriveOwnShape(work, { key }, signal);
  }
  const found = await findOwnShapes(work.db, [...sequences.keys()]);
  return { ...content, own: new Map(found.map(({ key, shape }) => [key, shape])) };
}
