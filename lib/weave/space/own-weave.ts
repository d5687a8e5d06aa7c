/**
 * A sequence that is none of the stored weaves, as far as a shape can be
 * sought for it: how many rings, who passes through whom and from which side.
 * Its shape does not depend on names, colours or sizes, so one that was
 * derived once serves every lesson that is made like this.
 */
import { z } from 'zod';
import { failed, ok, type Result } from '#lib/result.ts';
import { SIDES } from '../placement.ts';
import type { KnownWeave } from './known-weave.ts';
import { OWN } from './own-id.ts';
import type { PieceCell } from './piece-cell.ts';
import { reachedFrom } from './reached-rings.ts';

/** Beyond this many rings in a repeat no start was ever found in reasonable time. */
const MOST_RINGS = 12;
const MOST_LINKS = 60;

const place = z
  .int()
  .min(0)
  .max(MOST_RINGS - 1);

export const ownSequence = z.object({
  kind: z.enum(['chain', 'unit']),
  rings: z.int().min(1).max(MOST_RINGS),
  /** Ring `by` of a repeat passes through ring `through` of the repeat `repeats` further on. */
  links: z
    .array(z.object({ by: place, through: place, repeats: z.int().min(-9).max(9), from: z.enum(SIDES) }))
    .min(1)
    .max(MOST_LINKS),
});
export type OwnSequence = z.infer<typeof ownSequence>;

/** Why no shape is sought for a sequence. */
export type NotSought =
  /** Links and sides do not show what lies folded back. */
  | 'folded'
  /** A pass or a carried ring without its side. */
  | 'sides-untold'
  | 'too-large'
  /** It falls apart: some rings hold none of the others. */
  | 'unlinked';

/** What a shape is sought from. */
export function ownSequenceOf({ rings, links, isFolded, isUnit }: PieceCell): Result<OwnSequence, NotSought> {
  if (isFolded) return failed('folded');
  if (links.length === 0) return failed('unlinked');
  if (rings.length > MOST_RINGS || links.length > MOST_LINKS) return failed('too-large');
  const told = links.flatMap(({ by, through, repeats, from }) =>
    from === null ? [] : [{ by, through, repeats, from }],
  );
  if (told.length < links.length) return failed('sides-untold');
  const sequence = {
    kind: isUnit ? ('unit' as const) : ('chain' as const),
    rings: rings.length,
    links: told,
  };
  return holdsTogether(sequence) ? ok(sequence) : failed('unlinked');
}

/** Whether from one ring all rings of its repeat and of the next are reached from link to link. */
function holdsTogether({ kind, rings, links }: OwnSequence): boolean {
  const isReached = reachedFrom(
    links.map(({ by, through, repeats }) => ({ a: by, b: through, cells: repeats })),
    { ring: 0, cell: 0 },
  );
  return (kind === 'unit' ? [0] : [0, 1]).every((cell) =>
    Array.from({ length: rings }, (_, ring) => ring).every((ring) => isReached({ ring, cell })),
  );
}

/** Equal texts have equal shapes; counts up where shapes are derived otherwise than before. */
export const ownKey = ({ kind, rings, links }: OwnSequence): string =>
  `1 ${kind} ${rings} ${links.map(({ by, through, repeats, from }) => `${by} ${through} ${repeats} ${from}`).join(', ')}`;

const shape = z.object({
  aspectRatio: z.number().positive(),
  pitch: z.number().positive(),
  pushed: z.number().positive().nullable(),
  twist: z.number(),
  rings: z.array(z.array(z.number()).length(6)).min(1).max(MOST_RINGS),
});

/** A derived weave as it is stored. */
export const derivedWeave = z.object({
  weave: z.object({
    id: z.string().startsWith(OWN),
    kind: z.enum(['chain', 'unit']),
    rings: z.int().min(1).max(MOST_RINGS),
    /** Degrees. */
    twist: z.number(),
    freeTwist: z.boolean(),
    links: z
      .array(
        z.object({
          a: place,
          b: place,
          cells: z.int().min(0).max(9),
          sign: z.union([z.literal(1), z.literal(-1)]),
        }),
      )
      .max(MOST_LINKS),
  }),
  settled: z.object({
    id: z.string().startsWith(OWN),
    leastAspectRatio: z.number().positive(),
    shapes: z.array(shape).min(1).max(20),
  }),
}) satisfies z.ZodType<KnownWeave>;

/** What is known of the shape of a sequence that is none of the stored weaves. */
export type OwnShape =
  | { readonly state: 'derived'; readonly known: KnownWeave }
  | { readonly state: 'waiting' }
  /** It was sought, and none was found. */
  | { readonly state: 'none' };

/** What is known of such sequences, by their keys. */
export type OwnShapes = ReadonlyMap<string, OwnShape>;
