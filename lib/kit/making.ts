/**
 * What a kit list is reckoned from: ring kinds, sequence, a measured sample,
 * rules, and everything that is no ring. This folder answers how many repeats
 * a length takes and what has to lie on the tray for it; it knows no lesson
 * and no stored revision.
 */
import { z } from 'zod';
import type { RingKind } from '#lib/rings/ring-kind.ts';
import { line, offer, paragraph, thingId } from '#lib/thing.ts';
import type { Sequence } from '#lib/weave/placement.ts';

export const sample = z.object({
  /** Length that one repeat adds, mm. */
  perRepeatMm: z.number().positive().max(10_000),
  /** What the ends add besides the repeats, mm. */
  endsMm: z.number().min(0).max(10_000),
  /** Closed clasp with its rings, mm. */
  claspMm: z.number().min(0).max(10_000),
  /** How it was measured. */
  measured: z.enum(['pulled taut', 'at rest']),
});
export type Sample = Readonly<z.infer<typeof sample>>;

/** A size that the lesson gives a kit for; its target length is stated once, ease included. */
export const size = z.object({
  id: thingId,
  name: line,
  /** Wrist, ankle, neck: what the tape shows, mm. */
  bodyMm: z.number().positive().max(10_000),
});

export const ROUNDINGS = ['up', 'nearest', 'down'] as const;
export type Rounding = (typeof ROUNDINGS)[number];

export const kitRules = z.object({
  /** What is added to the body measure to get the finished length, thickness of the piece included, mm. */
  easeMm: z.number().min(0).max(1_000),
  rounding: z.enum(ROUNDINGS),
  /** Spare rings in whole per cent of each line, rounded up per line. */
  sparePercent: z.int().min(0).max(100),
});
export type KitRules = Readonly<z.infer<typeof kitRules>>;

export const MATERIAL_KINDS = ['tool', 'finding', 'consumable', 'safety', 'bead', 'cord', 'other'] as const;
export type MaterialKind = (typeof MATERIAL_KINDS)[number];

export const MATERIAL_PER = ['lesson', 'length', 'repeat'] as const;

export const material = z.object({
  id: thingId,
  kind: z.enum(MATERIAL_KINDS),
  name: line,
  /** Thousandths of a unit, so that 2.5 m of cord is a whole number. */
  quantityMilli: z.int().min(0).max(1_000_000_000),
  /** `piece`, `m`, `g`, `drop`. */
  unit: z.string().min(1).max(30),
  /** `length`: per 100 mm of finished length. */
  per: z.enum(MATERIAL_PER),
  /** Grams of one unit, where its mass counts. */
  massG: z.number().positive().max(100_000).nullable(),
  offer: offer.nullable(),
  note: paragraph,
});
export type Material = Readonly<z.infer<typeof material>>;

/** All that `kitFor` reads; a lesson's content fits as it is. */
export interface Making extends Sequence {
  readonly ringKinds: readonly RingKind[];
  readonly sample: Sample | null;
  readonly kitRules: KitRules;
  readonly materials: readonly Material[];
  /** ISO 4217 code of every price. */
  readonly currency: string;
}
