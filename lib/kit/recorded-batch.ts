/** Kits that were made up together of one published revision, as the workshop keeps them. */
import { z } from 'zod';
import { line } from '#lib/thing.ts';
import { BATCH_RULES } from './kit-batch.ts';
import { LONGEST_MM } from './length.ts';

/** So many kits of one size. */
export const batchKits = z.object({
  /** The size's name, or its measure in words. */
  name: line.min(1),
  bodyMm: z.number().positive().max(LONGEST_MM),
  times: z.int().min(1).max(10_000),
});
export type BatchKits = Readonly<z.infer<typeof batchKits>>;

export const recordedBatch = z.object({
  /** Made by the browser, once for each wish to record. */
  id: z.uuid(),
  /** Number of the revision that the kits were packed by. */
  revision: z.int().min(1),
  /** Day, ISO 8601. */
  madeOn: z.iso.date(),
  rule: z.enum(BATCH_RULES),
  kits: z.array(batchKits).min(1).max(60).readonly(),
  note: line,
});
export type RecordedBatch = Readonly<z.infer<typeof recordedBatch>>;

export const kitsIn = ({ kits }: Pick<RecordedBatch, 'kits'>): number =>
  kits.reduce((sum, { times }) => sum + times, 0);
