/**
 * The order in which a piece's repeats are made: which unit, in which rings,
 * how often. Every count and every walk of a piece goes by this one plan.
 */
import type { Piece, Placement, Run } from './placement.ts';

/** So many repeats of one unit; `run` is null where the piece has no runs. */
export interface Stretch {
  readonly run: Run | null;
  readonly repeats: number;
}

/** Placements of one unit of the repeat, in order. */
export const unitOf = (piece: Pick<Piece, 'repeat'>, unit: string): readonly Placement[] =>
  piece.repeat.filter((placement) => (placement.unit ?? '') === unit);

/** Names of the units that the repeat holds, in the order in which they first appear. */
export const unitsOf = (piece: Pick<Piece, 'repeat'>): readonly string[] => [
  ...new Set(piece.repeat.map((placement) => placement.unit ?? '')),
];

/** Repeats of a run without a number, and of a piece without runs, where a piece is looked at as a whole. */
const REPEATS_SHOWN = 8;

/** How many repeats show a whole piece: every run once, and ends that do not touch each other. */
export const repeatsShowing = ({ runs = [] }: Pick<Piece, 'runs'>): number =>
  runs.length === 0
    ? REPEATS_SHOWN
    : fixedRepeats(runs) + REPEATS_SHOWN * runs.filter((each) => each.repeats === null).length;

/** Repeats that runs of a fixed length take together. */
export const fixedRepeats = (runs: readonly Run[]): number =>
  runs.reduce((sum, each) => sum + (each.repeats ?? 0), 0);

/**
 * `repeats` (whole, 0 or more) dealt out to the runs, in order. Runs without
 * a number share what is left, so that a motif between two of them stands in
 * the middle; an odd one goes to the first of them. Where every run has a
 * number and the piece is longer, the runs go round again. What does not fit
 * is cut off at the end. Stretches without repeats are left out.
 */
export function planRuns(runs: readonly Run[], repeats: number): readonly Stretch[] {
  if (runs.length === 0) return repeats > 0 ? [{ run: null, repeats }] : [];
  const open = runs.filter((each) => each.repeats === null).length;
  const left = Math.max(0, repeats - fixedRepeats(runs));
  let filled = 0;
  const shares = runs.map((each) => {
    if (each.repeats !== null) return each.repeats;
    const share = Math.floor(left / open) + (filled < left % open ? 1 : 0);
    filled += 1;
    return share;
  });
  const stretches: Stretch[] = [];
  for (let done = 0, at = 0; done < repeats; at += 1) {
    const index = at % runs.length;
    const run = runs[index];
    const length = Math.min(shares[index] ?? 0, repeats - done);
    if (run && length > 0) stretches.push({ run, repeats: length });
    done += length;
  }
  return stretches;
}

/** The ring kind that a run takes in place of the one that the placement names. */
export const standsFor = (run: Run | null, ringKind: string): string =>
  run?.swaps.find((swap) => swap.ringKind === ringKind)?.by ?? ringKind;

/** A placement with the rings of a run in it; the same placement where nothing is swapped. */
export const inRun = <P extends Pick<Placement, 'opened' | 'carries'>>(placement: P, run: Run | null): P =>
  run === null || run.swaps.length === 0
    ? placement
    : {
        ...placement,
        opened: placement.opened === null ? null : standsFor(run, placement.opened),
        carries: placement.carries.map((carry) => ({ ...carry, ringKind: standsFor(run, carry.ringKind) })),
      };

/** The unfinished repeat that the finishing follows: its placements, and the run that it belongs to. */
export interface Ending {
  readonly placements: readonly Placement[];
  readonly run: Run | null;
}

/**
 * What is made of one more repeat before the finishing. Empty where the piece
 * ends after whole repeats, also where `endsAfter` names the last placement
 * of a unit, or none that the last unit has.
 */
export function endingOf(piece: Piece, repeats: number): Ending {
  const run = planRuns(piece.runs ?? [], repeats).at(-1)?.run ?? piece.runs?.[0] ?? null;
  const unit = unitOf(piece, run?.unit ?? '');
  const at = unit.findIndex((placement) => placement.id === piece.endsAfter);
  return { placements: at === unit.length - 1 ? [] : unit.slice(0, at + 1), run };
}
