/**
 * Primitives of everything that a lesson holds: ids for life, lines and
 * paragraphs of text, addresses, money and counts, as zod schemas.
 */
import { z } from 'zod';

export const thingId = z.string().min(1).max(64);
export const line = z.string().max(300);
export const paragraph = z.string().max(20_000);

/** An address that a pupil may follow: https, http or mailto only. */
export const linkAddress = z
  .string()
  .max(2_000)
  .refine((text) => text === '' || /^(https?:\/\/|mailto:)\S+$/i.test(text), {
    message: 'A link starts with https://, http:// or mailto:',
  });

export const count = z.int().min(0).max(100_000);
/** Money: whole minor units of the lesson's currency. */
export const minorUnits = z.int().min(0).max(1_000_000_000);

/** A mass as it is stated, with the whole nanograms that it means: every unit of the trade is a whole number of them. */
export const statedMass = z.object({
  /** As typed, its unit always in it: `1 ozt`, `50 g`. */
  stated: z.string().min(1).max(60),
  nanograms: z.int().min(1).max(9_000_000_000_000_000),
});
export type StatedMass = Readonly<z.infer<typeof statedMass>>;

/** A pack as it is sold, by count or by mass; its price is null where unknown. */
export const pack = z.discriminatedUnion('by', [
  z.object({ by: z.literal('count'), count: z.int().min(1).max(100_000), priceMinor: minorUnits.nullable() }),
  z.object({ by: z.literal('mass'), mass: statedMass, priceMinor: minorUnits.nullable() }),
]);
export type Pack = Readonly<z.infer<typeof pack>>;

const offered = z.object({ packs: z.array(pack).min(1).max(20).readonly(), link: linkAddress });

/** How something is sold: the packs there are, and where. */
export const offer = z.union([
  offered,
  // As offers were written before there could be several packs; drafts and revisions still hold it.
  z
    .object({
      packCount: z.int().min(1).max(100_000),
      priceMinor: minorUnits.nullable(),
      link: linkAddress,
    })
    .transform(
      ({ packCount, priceMinor, link }): z.infer<typeof offered> => ({
        packs: [{ by: 'count', count: packCount, priceMinor }],
        link,
      }),
    ),
]);
export type Offer = Readonly<z.infer<typeof offer>>;
