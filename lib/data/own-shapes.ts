/** Shapes of sequences that are none of the stored weaves, by the keys of the sequences. */

import type { KnownWeave } from '#lib/weave/space/known-weave.ts';
import {
  derivedWeave,
  type OwnSequence,
  type OwnShape,
  ownKey,
  ownSequence,
} from '#lib/weave/space/own-weave.ts';
import type { Queries } from './database.ts';
import { Prisma } from './generated/client.ts';

export interface StoredShape {
  readonly key: string;
  readonly shape: OwnShape;
  readonly askedAt: Date;
}

export async function findOwnShapes(db: Queries, keys: readonly string[]): Promise<readonly StoredShape[]> {
  const rows = await db.ownShape.findMany({ where: { key: { in: [...keys] } } });
  return rows.map(({ key, known, doneAt, askedAt }) => ({ key, askedAt, shape: shapeOf(known, doneAt) }));
}

function shapeOf(known: unknown, doneAt: Date | null): OwnShape {
  if (doneAt === null) return { state: 'waiting' };
  return known === null ? { state: 'none' } : { state: 'derived', known: derivedWeave.parse(known) };
}

/** Notes that a shape is sought, or sought once more; one that is known stays. */
export async function askForOwnShape(db: Queries, sequence: OwnSequence, now: Date): Promise<void> {
  const key = ownKey(sequence);
  await db.ownShape.createMany({ data: { key, sequence, askedAt: now }, skipDuplicates: true });
  await db.ownShape.updateMany({ where: { key, doneAt: null }, data: { askedAt: now } });
}

/** What a shape is still sought for; null where it is known, or was never asked for. */
export async function soughtSequence(db: Queries, key: string): Promise<OwnSequence | null> {
  const row = await db.ownShape.findUnique({ where: { key, doneAt: null }, select: { sequence: true } });
  return row && ownSequence.parse(row.sequence);
}

/** @param known null where none was found */
export async function finishOwnShape(
  db: Queries,
  key: string,
  { known, now }: { readonly known: KnownWeave | null; readonly now: Date },
): Promise<void> {
  await db.ownShape.updateMany({
    where: { key, doneAt: null },
    data: { doneAt: now, known: known ? derivedWeave.parse(known) : Prisma.DbNull },
  });
}
