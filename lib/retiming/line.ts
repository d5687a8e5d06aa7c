/** A straight line through measured distances: where in the old recording lies what is heard in the new one. */
import type { Measured } from './exact-distance.ts';

/** Gives the sample of the old recording for one of the new. */
export type Line = (at: number) => number;

/** Two clocks that run apart by less than this are told to run alike, samples: half a millisecond over the longest list. */
const LEAST_DRIFT = 4;

/** Pairs of points that lie closer tell nothing about drift, samples (4 s). */
const FAR_APART = 32_000;

/**
 * How much the distance grows a sample: what two clocks run apart, the same in
 * the whole recording. The median of all pairs within each list of points
 * (Theil 1950, Sen 1968), so that some wrong points do no harm.
 */
export function driftOf(lists: readonly (readonly Measured[])[]): number {
  const slopes: number[] = [];
  for (const points of lists) {
    for (const [k, one] of points.entries()) {
      for (const other of points.slice(k + 1)) {
        const apart = other.at - one.at;
        if (apart >= FAR_APART) slopes.push((other.distance - one.distance) / apart);
      }
    }
  }
  const drift = median(slopes);
  const longest = Math.max(0, ...lists.map((points) => (points.at(-1)?.at ?? 0) - (points[0]?.at ?? 0)));
  return Math.abs(drift * longest) < LEAST_DRIFT ? 0 : drift;
}

/**
 * The line of that drift through points that may hold some wrong ones.
 * @param about the distance where nothing was measured.
 */
export function lineThrough(points: readonly Measured[], about: number, drift: number): Line {
  const height =
    points.length === 0 ? about : median(points.map(({ at, distance }) => distance - drift * at));
  return (at) => at + height + drift * at;
}

/** The middle one; 0 of none. */
export function median(values: readonly number[]): number {
  if (values.length === 0) return 0;
  const ordered = values.toSorted((one, other) => one - other);
  const middle = ordered.length >> 1;
  return ordered.length % 2 === 1
    ? (ordered[middle] ?? 0)
    : ((ordered[middle - 1] ?? 0) + (ordered[middle] ?? 0)) / 2;
}
