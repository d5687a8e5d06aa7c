/** Queries of kits that were made up together. */
import { type RecordedBatch, recordedBatch } from '#lib/kit/recorded-batch.ts';
import type { Queries } from './database.ts';

const FIELDS = {
  id: true,
  revision: true,
  madeOn: true,
  rule: true,
  kits: true,
  note: true,
} as const;

const read = ({ madeOn, ...row }: { madeOn: Date }): RecordedBatch =>
  recordedBatch.parse({ ...row, madeOn: madeOn.toISOString().slice(0, 10) });

/** A lesson's batches, the last made up first. */
export async function findKitBatches(db: Queries, lessonId: string): Promise<readonly RecordedBatch[]> {
  const rows = await db.kitBatch.findMany({
    where: { lessonId },
    select: FIELDS,
    orderBy: [{ madeOn: 'desc' }, { createdAt: 'desc' }],
  });
  return rows.map(read);
}

export async function findKitBatch(db: Queries, lessonId: string, id: string): Promise<RecordedBatch | null> {
  const row = await db.kitBatch.findFirst({ where: { id, lessonId }, select: FIELDS });
  return row && read(row);
}

/** Keeps a batch; one with that id stays as it is. */
export async function addKitBatch(
  db: Queries,
  lessonId: string,
  { madeOn, kits, ...batch }: RecordedBatch,
): Promise<void> {
  await db.kitBatch.createMany({
    data: [{ ...batch, lessonId, madeOn: new Date(`${madeOn}T00:00:00Z`), kits: [...kits] }],
    skipDuplicates: true,
  });
}

/** Forgets a batch; one that is not there is forgotten already. */
export async function removeKitBatch(db: Queries, lessonId: string, id: string): Promise<void> {
  await db.kitBatch.deleteMany({ where: { id, lessonId } });
}
