/**
 * A placement: the opening, filling, passing and closing of one ring, or the
 * laying out of closed ones. A ring sequence is placements in three parts.
 * This folder knows how rings follow and hold each other; it knows no lengths
 * of a finished piece, no prices and no lesson.
 */
import { z } from 'zod';
import { line, paragraph, thingId } from '#lib/thing.ts';
import { momentMs } from '#lib/time/time.ts';
import type { SequencePart } from './sequence-parts.ts';

export { SEQUENCE_PARTS, type SequencePart } from './sequence-parts.ts';

/** The face of the older ring that is turned to the viewer is its front. */
export const SIDES = ['front', 'back'] as const;
export type Side = (typeof SIDES)[number];

/** How what was added is laid, beyond who links with whom: 2-2, box and byzantine differ in this alone. */
export const LIES = ['as it falls', 'fold back', 'part', 'through between', 'over', 'under'] as const;

/** Rows of a piece are named by the teacher: `A`, `edge`; a piece of one row leaves the name empty. */
const rowName = z.string().max(20);

/**
 * Names a ring that is there already, by its row: the newest, the one before
 * it, or the first of the row and those after it. Named like this, the same
 * words fit every repeat, and the start and finishing too.
 */
export const ringRef = z.object({
  row: rowName,
  /** 1: the newest (or the first) itself. */
  nth: z.int().min(1).max(1_000),
  from: z.enum(['newest', 'first']),
});
export type RingRef = Readonly<z.infer<typeof ringRef>>;

/** What is optional here came later: documents from before simply do not tell it. */
export const placement = z.object({
  id: thingId,
  /** Ring kind that is opened and woven in; null where only closed rings are laid out. */
  opened: thingId.nullable(),
  /** Rings closed beforehand that it picks up (or that are laid out). */
  carries: z
    .array(
      z.object({
        ringKind: thingId,
        count: z.int().min(1).max(1_000),
        /** Row that these rings join; absent: the piece's one row. */
        row: rowName.optional(),
        /** The side from which the opened ring goes through them. */
        from: z.enum(SIDES).optional(),
      }),
    )
    .max(20),
  /** One entry per ring that is passed, in the order passed; counted before this placement adds anything. */
  passes: z.array(z.object({ from: z.enum(SIDES), ring: ringRef.optional() })).max(50),
  lie: z.enum(LIES),
  /** The rings that the lie is about, counted when the placement is done; absent or empty: what it added. */
  lays: z.array(ringRef).max(50).optional(),
  /** Row that the opened ring joins (before the rings that it carries); absent: the piece's one row. */
  row: rowName.optional(),
  /** In the repeat: the unit it belongs to, where the piece has several; absent: the only or main one. */
  unit: rowName.optional(),
  /** The sentence that the pupil reads. */
  sentence: paragraph,
  /** The moment that shows it; a still is taken from there. */
  atMs: momentMs.nullable(),
  /** What the still shows, for who cannot see it; empty: the sentence says it all. */
  pictureText: line.default(''),
});
type Frozen<T> = T extends readonly (infer E)[]
  ? readonly Frozen<E>[]
  : T extends object
    ? { readonly [K in keyof T]: Frozen<T[K]> }
    : T;
export type Placement = Frozen<z.infer<typeof placement>>;

/** A ring sequence: `repeat` is walked n times between `start` and `finishing`. */
export type Sequence = { readonly [part in SequencePart]: readonly Placement[] };

/**
 * A run of repeats in a piece that has several: another unit, or the same one
 * in other rings. Runs follow one another from the start to the finishing.
 */
export const run = z.object({
  id: thingId,
  /** `Placement.unit` of what is repeated; empty: the main unit. */
  unit: rowName,
  /** Null: as many as the length leaves; several such runs share alike. */
  repeats: z.int().min(1).max(10_000).nullable(),
  /** Ring kinds that others stand in for. */
  swaps: z.array(z.object({ ringKind: thingId, by: thingId })).max(100),
});
export type Run = Frozen<z.infer<typeof run>>;

/** A ring that shows at an end of the finished piece, and what it must be like there. */
export const endRing = z.object({
  row: rowName,
  /** 1: the outermost of its row at that end. */
  nth: z.int().min(1).max(100),
  /** Null: any. */
  ringKind: thingId.nullable(),
  /** How many rings it is linked with; null: not stated. */
  links: z.int().min(0).max(100).nullable(),
});
export type EndRing = Readonly<z.infer<typeof endRing>>;

/** How a piece must begin and end, so that a finishing left out is found. */
export const pieceEnds = z.object({ first: z.array(endRing).max(20), last: z.array(endRing).max(20) });
export type PieceEnds = Frozen<z.infer<typeof pieceEnds>>;

/** A ring sequence with what it says of the whole piece. */
export interface Piece extends Sequence {
  readonly runs?: readonly Run[];
  /** Placement of the repeat after which the finishing comes, in the middle of a repeat; null: after whole ones. */
  readonly endsAfter?: string | null;
  readonly ends?: PieceEnds | null;
}

/** A step that adds no rings: one numbered action with its time. */
export const step = z.object({
  id: thingId,
  sentence: paragraph,
  atMs: momentMs.nullable(),
  /** What the still shows, for who cannot see it. */
  pictureText: line.default(''),
});
