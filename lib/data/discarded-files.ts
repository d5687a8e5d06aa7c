/** Stored files to be removed: noted in the transaction that drops what refers to them, removed after it. */
import type { Queries } from './database.ts';

/** Notes files for removal; call it inside the transaction. */
export async function discardFiles(tx: Queries, storageKeys: readonly string[]): Promise<void> {
  await tx.discardedFile.createMany({
    data: storageKeys.map((storageKey) => ({ storageKey })),
    skipDuplicates: true,
  });
}

/**
 * Removes what was noted, by now or before a crash; a file that cannot be
 * removed stays noted. `remove` must not mind a file that is gone already.
 */
export async function removeDiscardedFiles(
  db: Queries,
  remove: (storageKey: string) => Promise<void>,
): Promise<void> {
  for (const { storageKey } of await db.discardedFile.findMany()) {
    await remove(storageKey);
    await db.discardedFile.deleteMany({ where: { storageKey } });
  }
}
