/**
 * A placement: the opening, filling, passing and closing of one ring, or the
 * laying out of closed ones. A ring sequence is placements in three parts.
 * This folder knows how rings follow and hold each other; it knows no lengths
 * of a finished piece, no prices and no lesson.
 */
import { z } from 'zod';
import { line, paragraph, thingId } from '#lib/thing.ts';
import { momentMs } from '#lib/time/time.ts';

/** The face of the older ring that is turned to the viewer is its front. */
export const SIDES = ['front', 'back'] as const;
export type Side = (typeof SIDES)[number];

/** How what was added is laid, beyond who links with whom: 2-2, box and byzantine differ in this alone. */
export const LIES = ['as it falls', 'fold back', 'part', 'through between', 'over', 'under'] as const;

export const placement = z.object({
  id: thingId,
  /** Ring kind that is opened and woven in; null where only closed rings are laid out. */
  opened: thingId.nullable(),
  /** Rings closed beforehand that it picks up (or that are laid out). */
  carries: z.array(z.object({ ringKind: thingId, count: z.int().min(1).max(1_000) })).max(20),
  /** One entry per ring that is passed, in the order passed. */
  passes: z.array(z.object({ from: z.enum(SIDES) })).max(50),
  lie: z.enum(LIES),
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

export const SEQUENCE_PARTS = ['start', 'repeat', 'finishing'] as const;
export type SequencePart = (typeof SEQUENCE_PARTS)[number];

/** A ring sequence: `repeat` is walked n times between `start` and `finishing`. */
export type Sequence = { readonly [part in SequencePart]: readonly Placement[] };

/** A step that adds no rings: one numbered action with its time. */
export const step = z.object({
  id: thingId,
  sentence: paragraph,
  atMs: momentMs.nullable(),
  /** What the still shows, for who cannot see it. */
  pictureText: line.default(''),
});
