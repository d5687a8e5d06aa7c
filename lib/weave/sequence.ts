/**
 * A ring sequence counted: how many rings of each kind every part takes,
 * opened and closed beforehand. What the whole piece takes is always start +
 * n x repeat + finishing.
 */
import { type Placement, SEQUENCE_PARTS, type Sequence, type SequencePart, type Side } from './placement.ts';

/** Rings of one kind in one part. */
export interface Prepared {
  readonly opened: number;
  readonly closed: number;
}

export type PartCounts = { readonly [part in SequencePart]: Prepared };

const NONE: Prepared = { opened: 0, closed: 0 };

/** Rings that one placement adds, by ring kind. */
export function countsOfPlacement(
  placement: Pick<Placement, 'opened' | 'carries'>,
): ReadonlyMap<string, Prepared> {
  const counts = new Map<string, Prepared>();
  if (placement.opened !== null) counts.set(placement.opened, { opened: 1, closed: 0 });
  for (const { ringKind, count } of placement.carries) {
    const before = counts.get(ringKind) ?? NONE;
    counts.set(ringKind, { ...before, closed: before.closed + count });
  }
  return counts;
}

/** Rings that one placement adds, all kinds together. */
export const ringsAdded = (placement: Pick<Placement, 'opened' | 'carries'>): number =>
  (placement.opened === null ? 0 : 1) + placement.carries.reduce((sum, c) => sum + c.count, 0);

/** Counts per ring kind and part; kinds in the order in which they first appear. */
export function countSequence(sequence: Sequence): ReadonlyMap<string, PartCounts> {
  const counts = new Map<string, PartCounts>();
  for (const part of SEQUENCE_PARTS)
    for (const placement of sequence[part])
      for (const [kind, added] of countsOfPlacement(placement)) {
        const before = counts.get(kind) ?? { start: NONE, repeat: NONE, finishing: NONE };
        counts.set(kind, { ...before, [part]: sum(before[part], added) });
      }
  return counts;
}

const sum = (a: Prepared, b: Prepared): Prepared => ({
  opened: a.opened + b.opened,
  closed: a.closed + b.closed,
});

/** start + n x repeat + finishing. */
export const totalOf = (counts: PartCounts, repeats: number): Prepared => ({
  opened: counts.start.opened + repeats * counts.repeat.opened + counts.finishing.opened,
  closed: counts.start.closed + repeats * counts.repeat.closed + counts.finishing.closed,
});

/** How many rings the piece has once each placement is made: one number a placement, per part, counted from `from`. */
export function runningCounts(placements: readonly Placement[], from = 0): readonly number[] {
  let rings = from;
  return placements.map((placement) => {
    rings += ringsAdded(placement);
    return rings;
  });
}

const otherSide = (side: Side): Side => (side === 'front' ? 'back' : 'front');

/** The same placement for the other hand: every ring is passed from its other side. */
export const mirroredPlacement = <P extends Pick<Placement, 'passes'>>(placement: P): P => ({
  ...placement,
  passes: placement.passes.map((pass) => ({ ...pass, from: otherSide(pass.from) })),
});
