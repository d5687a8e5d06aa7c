/**
 * What a workshop keeps about a lesson and shows to nobody else: kits that were
 * made up, what pupils reported, what was taken along to places outside. Goes
 * into copies for a workshop's owner alone. Batches are counted, not named by
 * ids of a database, so that a copy of a copy has the same bytes.
 */
import { z } from 'zod';
import { PLACES } from '#lib/description/places.ts';
import { DESCRIPTION_FORMATS } from '#lib/description/write-description.ts';
import { recordedBatch } from '#lib/kit/recorded-batch.ts';
import { CONCERNS } from '#lib/lesson/report.ts';

export const BENCH_FILE = 'bench.json';

const when = z.iso.datetime();
const revision = z.int().min(1).describe('Number of a revision of this lesson');
/** A report as it is kept; longer than a form takes, never cut. */
const said = z.string().max(20_000);

export const portableBench = z.object({
  batches: z
    .array(recordedBatch.omit({ id: true }).extend({ recordedAt: when }))
    .max(10_000)
    .describe('Kits that were made up together, the oldest first'),
  reports: z
    .array(
      z.object({
        revision,
        concerns: z.enum(CONCERNS),
        at: said.describe('The moment as the pupil typed it'),
        wrong: said,
        right: said,
        createdAt: when,
        answer: said.nullable().describe('What the workshop noted about it'),
        correctionId: z.string().max(200).nullable().describe('Id of the correction that was made of it'),
        settledAt: when.nullable(),
      }),
    )
    .max(100_000)
    .describe('What pupils said is wrong; nothing is known of who said it'),
  places: z
    .array(
      z.object({
        place: z.union([z.enum(PLACES), z.string().regex(/^batch-[1-9]\d{0,4}$/)]),
        revision,
        ticked: z.boolean(),
        at: when,
      }),
    )
    .max(20_000)
    .describe('Which revision was last taken to which place; batch-N is the Nth batch'),
  copiedTexts: z
    .array(
      z.object({ format: z.enum(DESCRIPTION_FORMATS), text: z.string().max(1024 * 1024), copiedAt: when }),
    )
    .max(DESCRIPTION_FORMATS.length)
    .describe('Description texts as they were last copied'),
});
export type PortableBench = Readonly<z.infer<typeof portableBench>>;

/** What a schema cannot say: null where it holds, else the part that does not. */
export function benchFault(bench: PortableBench, revisions: number): string | null {
  const { batches, reports, places, copiedTexts } = bench;
  const isOnce = (names: readonly string[]): boolean => new Set(names).size === names.length;
  if ([...batches, ...reports, ...places].some((one) => one.revision > revisions)) return 'revision';
  if (!isOnce(places.map(({ place }) => place))) return 'places';
  if (places.some(({ place }) => Number(/^batch-(\d+)$/.exec(place)?.[1] ?? 0) > batches.length))
    return 'places';
  return isOnce(copiedTexts.map(({ format }) => format)) ? null : 'copiedTexts';
}
