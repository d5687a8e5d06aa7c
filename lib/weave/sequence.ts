/**
 * A ring sequence counted: how many rings of each kind every part takes,
 * opened and closed beforehand. What the whole piece takes is always start +
 * n x repeat + finishing; with runs, n x repeat is one product a run, and a
 * piece that ends in the middle of a repeat adds what was begun of it.
 */
import type { Piece, Placement, Sequence, Side } from './placement.ts';
import { endingOf, inRun, planRuns, type Stretch, unitOf } from './runs.ts';
import { SEQUENCE_PARTS, type SequencePart } from './sequence-parts.ts';

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

/** One product of a count: `times` x what is opened and closed each time. */
export interface CountTerm {
  readonly what: 'start' | 'repeat' | 'begun repeat' | 'finishing';
  /** Id of the run; null where the piece has none, and outside the repeat. */
  readonly run: string | null;
  readonly times: number;
  readonly each: Prepared;
}

export interface KindCount extends Prepared {
  /** What the counts are made of, in the order of the piece; never a term of nothing. */
  readonly terms: readonly CountTerm[];
}

/**
 * What a piece of `repeats` whole repeats takes of each ring kind, with its
 * working; kinds in the order in which they first appear. Takes as long for
 * 10,000 repeats as for one, unless runs go round.
 */
export function countPiece(piece: Piece, repeats: number): ReadonlyMap<string, KindCount> {
  const counts = new Map<string, KindCount>();
  const addTerm = (
    placements: readonly Pick<Placement, 'opened' | 'carries'>[],
    { what, run, times }: Omit<CountTerm, 'each'>,
  ): void => {
    for (const [kind, each] of countsOfPlacements(placements)) {
      const before = counts.get(kind) ?? { ...NONE, terms: [] };
      counts.set(kind, {
        opened: before.opened + times * each.opened,
        closed: before.closed + times * each.closed,
        terms: [...before.terms, { what, run, times, each }],
      });
    }
  };
  addTerm(piece.start, { what: 'start', run: null, times: 1 });
  for (const { run, repeats: times } of stretchesByRun(piece, repeats))
    addTerm(
      unitOf(piece, run?.unit ?? '').map((placement) => inRun(placement, run)),
      { what: 'repeat', run: run?.id ?? null, times },
    );
  const ending = endingOf(piece, repeats);
  addTerm(
    ending.placements.map((placement) => inRun(placement, ending.run)),
    { what: 'begun repeat', run: ending.run?.id ?? null, times: 1 },
  );
  addTerm(piece.finishing, { what: 'finishing', run: null, times: 1 });
  return counts;
}

/** The plan of a piece with every run named once, however often it comes round. */
function stretchesByRun(piece: Piece, repeats: number): readonly Stretch[] {
  const sums = new Map<string, Stretch>();
  for (const stretch of planRuns(piece.runs ?? [], repeats)) {
    const id = stretch.run?.id ?? '';
    sums.set(id, { run: stretch.run, repeats: (sums.get(id)?.repeats ?? 0) + stretch.repeats });
  }
  return [...sums.values()];
}

function countsOfPlacements(
  placements: readonly Pick<Placement, 'opened' | 'carries'>[],
): ReadonlyMap<string, Prepared> {
  const counts = new Map<string, Prepared>();
  for (const placement of placements)
    for (const [kind, added] of countsOfPlacement(placement))
      counts.set(kind, sum(counts.get(kind) ?? NONE, added));
  return counts;
}

/** How many rings the piece has once each placement is made: one number a placement, per part, counted from `from`. */
export function runningCounts(placements: readonly Placement[], from = 0): readonly number[] {
  let rings = from;
  return placements.map((placement) => {
    rings += ringsAdded(placement);
    return rings;
  });
}

const otherSide = (side: Side): Side => (side === 'front' ? 'back' : 'front');

/**
 * The same placement for the other hand: every ring is entered from its other
 * side, and what lay over lies under. Mirrored twice it is the same again.
 */
export const mirroredPlacement = <P extends Pick<Placement, 'passes' | 'carries' | 'lie'>>(
  placement: P,
): P => ({
  ...placement,
  passes: placement.passes.map((pass) => ({ ...pass, from: otherSide(pass.from) })),
  carries: placement.carries.map((carry) => (carry.from ? { ...carry, from: otherSide(carry.from) } : carry)),
  lie: placement.lie === 'over' ? 'under' : placement.lie === 'under' ? 'over' : placement.lie,
});
