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

/** How something is sold: a pack of so many at a price; null where unknown. */
export const offer = z.object({
  packCount: z.int().min(1).max(100_000),
  priceMinor: minorUnits.nullable(),
  link: linkAddress,
});
export type Offer = Readonly<z.infer<typeof offer>>;
