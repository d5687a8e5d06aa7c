/** Where exactly one stretch of the old recording ends in the new one, and the next begins. */
import { type Compare, PIECE_STEP } from './likeness.ts';
import type { Line } from './line.ts';

/** What it costs to say that something new lies between, in hundredths of a second of well-heard sound. */
const SOMETHING_NEW_COSTS = 12;
/** Something new that is shorter than this is none, steps of 10 ms. */
const SHORTEST_NEW = 25;
/** Scores closer to the best one than this are as good, in hundredths of a second of well-heard sound. */
const AS_GOOD = 0.5;

/** A stretch of the new recording along a line of the old one. */
export interface Side {
  readonly line: Line;
  /** Correlation below which the new recording does not sound like the old one here. */
  readonly least: number;
}

/** What speaks for the new recording following a side at one place: below 0 where it does not; 0 in silence. */
export function speaksFor(compare: Compare, at: number, { line, least }: Side): number {
  const { correlation, weight } = compare(at, line);
  return weight * (correlation - least) * 2;
}

/** Where the side before ends and the side after begins, samples of the new recording; equal where they meet. */
export interface EditPoint {
  readonly end: number;
  readonly start: number;
}

/**
 * Looks between `from` and `to` (samples of the new recording), of which the
 * first belongs to the side before and the last to the side after. A side that
 * is null is an end of the recording.
 */
export function findEditPoint(
  compare: Compare,
  from: number,
  to: number,
  before: Side | null,
  after: Side | null,
): EditPoint {
  const steps = Math.max(0, Math.floor((to - from) / PIECE_STEP));
  const at = (step: number): number => (step >= steps ? to : from + step * PIECE_STEP);
  /** What speaks for a side up to each step. */
  const sums = (side: Side | null): Float64Array => {
    const sum = new Float64Array(steps + 1);
    for (let step = 0; step < steps; step++) {
      const score = side ? speaksFor(compare, at(step) + PIECE_STEP / 2, side) : 0;
      sum[step + 1] = (sum[step] as number) + score;
    }
    return sum;
  };
  const upTo = sums(before);
  const fromStart = sums(after);
  const whole = fromStart[steps] as number;
  const since = Float64Array.from(fromStart, (sum) => whole - sum);

  const meet = meeting(upTo, since, before !== null, after !== null);
  const apart = parting(upTo, since, before !== null, after !== null);
  if (!apart || apart.score <= meet.score) return { end: at(meet.step), start: at(meet.step) };
  return { end: at(apart.end), start: goOn(apart.start, at, since, before, after, at(apart.end)) };
}

/** The best point for one side to follow the other at once; in a pause the middle of all that are as good. */
function meeting(upTo: Float64Array, after: Float64Array, hasBefore: boolean, hasAfter: boolean) {
  const last = upTo.length - 1;
  if (!hasAfter) return { score: upTo[last] as number, step: last };
  if (!hasBefore) return { score: after[0] as number, step: 0 };
  const scores = Float64Array.from(upTo, (sum, step) => sum + (after[step] as number));
  const best = scores.indexOf(Math.max(...scores));
  const enough = (scores[best] as number) - AS_GOOD;
  let low = best;
  let high = best;
  while (low > 0 && (scores[low - 1] as number) >= enough) low -= 1;
  while (high < last && (scores[high + 1] as number) >= enough) high += 1;
  return { score: scores[best] as number, step: (low + high) >> 1 };
}

/**
 * The best two points with something new between them; null where there is no
 * room for it. The side before goes on as long as it may: silence that both
 * have belongs to it.
 */
function parting(upTo: Float64Array, after: Float64Array, hasBefore: boolean, hasAfter: boolean) {
  const last = upTo.length - 1;
  let found: { readonly score: number; readonly end: number; readonly start: number } | null = null;
  let best = 0;
  for (let start = SHORTEST_NEW; start <= last; start++) {
    const end = start - SHORTEST_NEW;
    if ((upTo[end] as number) > (upTo[best] as number)) best = end;
    if (!hasAfter && start < last) continue;
    const score = (hasBefore ? (upTo[best] as number) : 0) + (after[start] as number) - SOMETHING_NEW_COSTS;
    if (!found || score > found.score) found = { score, end: hasBefore ? best : 0, start };
  }
  return found && hasBefore
    ? { ...found, end: latestAsGood(upTo, found.end, found.start - SHORTEST_NEW) }
    : found;
}

function latestAsGood(upTo: Float64Array, best: number, last: number): number {
  const enough = (upTo[best] as number) - AS_GOOD;
  let latest = best;
  for (let step = best + 1; step <= last && (upTo[step] as number) >= enough - 3 * AS_GOOD; step++) {
    if ((upTo[step] as number) >= enough) latest = step;
  }
  return latest;
}

/**
 * Where the side after begins: of the points as good as the best, the one that
 * goes on where the side before left the old recording, or comes next to it.
 */
function goOn(
  best: number,
  at: (step: number) => number,
  after: Float64Array,
  before: Side | null,
  side: Side | null,
  end: number,
): number {
  if (!before || !side) return at(best);
  const enough = (after[best] as number) - AS_GOOD;
  let low = best;
  let high = best;
  while (low > 0 && (after[low - 1] as number) >= enough) low -= 1;
  while (high < after.length - 1 && (after[high + 1] as number) >= enough) high += 1;
  const wanted = before.line(end);
  const lowest = at(low);
  // Lines run at the same pace but for the drift of two clocks.
  const start = lowest + (wanted - side.line(lowest));
  return Math.round(Math.max(end, Math.min(at(high), Math.max(lowest, start))));
}
