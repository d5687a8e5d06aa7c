/** Records kits that were made up together of one published revision, and reads what later ones change in them. */
import type { Database } from '#lib/data/database.ts';
import { addKitBatch, findKitBatches } from '#lib/data/kit-batches.ts';
import { getRevision, listRevisions } from '#lib/data/revisions.ts';
import { kitFor } from '#lib/kit/kit-list.ts';
import type { RecordedBatch } from '#lib/kit/recorded-batch.ts';
import { type BatchChange, batchChange } from '#lib/lesson/batch-change.ts';
import { failed, ok, type Result } from '#lib/result.ts';

export type RecordBatchFault =
  | { readonly code: 'revision-not-found' }
  /** The revision gives no kit for these sizes. */
  | { readonly code: 'kit-not-computed'; readonly names: readonly string[] };

/** The same batch sent again is kept once. */
export async function recordBatch(
  db: Database,
  lessonId: string,
  batch: RecordedBatch,
): Promise<Result<null, RecordBatchFault>> {
  const mark = (await listRevisions(db, lessonId)).find(({ number }) => number === batch.revision);
  if (!mark) return failed({ code: 'revision-not-found' });
  const { content } = await getRevision(db, mark.id);
  const names = batch.kits.filter(({ bodyMm }) => !kitFor(content, bodyMm).ok).map(({ name }) => name);
  if (names.length > 0) return failed({ code: 'kit-not-computed', names });
  await addKitBatch(db, lessonId, batch);
  return ok(null);
}

export interface BatchRead {
  readonly batch: RecordedBatch;
  /** What the latest revision changes in its kits; null where they are of the latest. */
  readonly change: BatchChange | null;
}

/** A lesson's batches, the last made up first, and the number of its latest revision. */
export async function readBatches(
  db: Database,
  lessonId: string,
): Promise<{ readonly latest: number | null; readonly batches: readonly BatchRead[] }> {
  const [marks, batches] = await Promise.all([listRevisions(db, lessonId), findKitBatches(db, lessonId)]);
  const [latest] = marks;
  if (!latest) return { latest: null, batches: [] };
  const now = batches.length === 0 ? null : await getRevision(db, latest.id);
  const read: BatchRead[] = [];
  for (const batch of batches) {
    const mark = marks.find(({ number }) => number === batch.revision);
    const old = now && mark && mark.id !== latest.id ? await getRevision(db, mark.id) : null;
    read.push({ batch, change: now && old ? batchChange(batch, old.content, now.content) : null });
  }
  return { latest: latest.number, batches: read };
}
