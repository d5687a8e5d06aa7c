/**
 * What a kit list is reckoned from: ring kinds, sequence, a measured sample,
 * rules, and everything that is no ring. This folder answers how many repeats
 * a length takes and what has to lie on the tray for it; it knows no lesson
 * and no stored revision.
 */
import { z } from 'zod';
import type { RingKind } from '#lib/rings/ring-kind.ts';
import { line, offer, paragraph, thingId } from '#lib/thing.ts';
import type { Piece } from '#lib/weave/placement.ts';

/** A piece that was woven to measure: so many repeats came out so long, ends included and clasp not. */
export const samplePiece = z.object({
  repeats: z.int().min(1).max(10_000),
  mm: z.number().positive().max(10_000),
});
export type SamplePiece = Readonly<z.infer<typeof samplePiece>>;

export const sample = z.object({
  /** Length that one repeat adds, mm. */
  perRepeatMm: z.number().positive().max(10_000),
  /** What the ends add besides the repeats, mm. */
  endsMm: z.number().min(0).max(10_000),
  /** Closed clasp with its rings, mm. */
  claspMm: z.number().min(0).max(10_000),
  /** How it was measured. */
  measured: z.enum(['pulled taut', 'at rest']),
  /** The measured pieces that the lengths came from; none where they were stated as they are. */
  pieces: z.array(samplePiece).max(20).readonly().default([]),
  /** What a repeat of a run adds, mm, where it is not what one repeat adds: another unit, or rings of another size. */
  runs: z
    .array(
      z.object({
        run: thingId,
        perRepeatMm: z.number().positive().max(10_000),
        /** Over how many repeats it was measured; null where nobody said. */
        overRepeats: z.int().min(1).max(10_000).nullable().default(null),
      }),
    )
    .max(100)
    .readonly()
    .default([]),
  /** How sure each length was read, ± mm; null where nobody said. */
  readingMm: z.number().positive().max(100).nullable().default(null),
  /** With which rings, how hard it was pulled, when, by whom. */
  note: line.default(''),
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

export type Size = Readonly<z.infer<typeof size>>;

/** `line`: of each ring kind, rounded up. `kit`: of all rings together, rounded up once and shared out by count. */
export const SPARE_BY = ['line', 'kit'] as const;

export const spareRule = z.object({
  /** Whole per cent. */
  sparePercent: z.int().min(0).max(100),
  spareBy: z.enum(SPARE_BY).default('line'),
  /** Of every ring kind at least so many. */
  spareLeast: z.int().min(0).max(1_000).default(0),
});
export type SpareRule = Readonly<z.infer<typeof spareRule>>;

export const kitRules = z.object({
  /** What is added to the body measure to get the finished length, mm; the piece's thickness is in it unless that is stated. */
  easeMm: z.number().min(0).max(1_000),
  /** Thickness of the piece, mm, where the ease leaves it out: once round it adds pi times as much. Null: the ease includes it. */
  thicknessMm: z.number().positive().max(100).nullable().default(null),
  rounding: z.enum(ROUNDINGS),
  ...spareRule.shape,
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
export interface Making extends Piece {
  readonly ringKinds: readonly RingKind[];
  readonly sample: Sample | null;
  readonly kitRules: KitRules;
  readonly materials: readonly Material[];
  /** ISO 4217 code of every price. */
  readonly currency: string;
}
