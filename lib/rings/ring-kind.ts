/**
 * A ring kind: the rings of a lesson that are alike. This folder knows single
 * rings (sizes, metals, arithmetic, what fits through what); it knows no
 * weave and no lesson. Lengths are mm, masses are g.
 */
import { z } from 'zod';
import { line, offer, thingId } from '#lib/thing.ts';
import { homeMade } from './home-made.ts';

/** A size as the teacher stated it, with the millimetres that it means. */
export const statedSize = z.object({
  /** As typed, its system always in it: `1/4 in`, `18 SWG`, `1.2 mm`. */
  stated: z.string().min(1).max(60),
  mm: z.number().positive().max(1_000),
});
export type StatedSize = Readonly<z.infer<typeof statedSize>>;

export const ringKind = z.object({
  id: thingId,
  /** What the lesson calls it: `large copper`. */
  name: line,
  innerDiameter: statedSize,
  /** The inner diameter measured on a closed ring, where it was; wins over the stated one. */
  measuredInnerMm: z.number().positive().max(1_000).nullable(),
  wire: statedSize,
  /** Id of a metal in lib/rings/metals.ts, or `other`. */
  metal: z.string().min(1).max(40),
  /** Named where the metal is `other`, else empty. */
  metalName: line,
  /** g/cm3 where the metal is `other`; null takes the table's. */
  densityGPerCm3: z.number().positive().max(30).nullable(),
  /** Colour in words, so that it can be followed by ear: `copper`, `deep blue`. */
  colour: line,
  /** `#rrggbb` for pictures; never the only cue. */
  colourCode: z.string().regex(/^#[0-9a-f]{6}$/),
  /** Grams of a weighed hundred; wins over the computed mass. */
  weighedHundredG: z.number().positive().max(100_000).nullable(),
  offer: offer.nullable(),
  /** How the teacher winds and cuts them herself; absent where they are bought. */
  homeMade: homeMade.optional(),
});
export type RingKind = Readonly<z.infer<typeof ringKind>>;
