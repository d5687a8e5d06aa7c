/** Parts a row of things into runs at the least cost: lines of a caption, captions of a passage. */

export interface Parting {
  readonly count: number;
  /** Whether a run may begin at an index; the first always may. */
  readonly mayBegin: (at: number) => boolean;
  /** What the run from `from` to before `end` costs, 0 or more. */
  readonly costOf: (from: number, end: number) => number;
  /** Whether a run is so long that longer ones need not be looked at. */
  readonly isTooLong: (from: number, end: number) => boolean;
}

/**
 * Where each run begins. A run is too long only where it cannot be shorter.
 * Takes time in proportion to the count times the longest run.
 */
export function cheapestParts({ count, mayBegin, costOf, isTooLong }: Parting): readonly number[] {
  const costs = [0];
  const froms = [0];
  for (let end = 1; end <= count; end += 1) {
    let cost = Number.POSITIVE_INFINITY;
    let best = end - 1;
    for (let from = end - 1; from >= 0; from -= 1) {
      if (Number.isFinite(cost) && isTooLong(from, end)) break;
      const before = costs[from] ?? Number.POSITIVE_INFINITY;
      if ((from > 0 && !mayBegin(from)) || before >= cost) continue;
      const whole = before + costOf(from, end);
      if (whole < cost) [cost, best] = [whole, from];
    }
    costs.push(cost);
    froms.push(best);
  }
  const starts: number[] = [];
  for (let end = count; end > 0; end = froms[end] ?? 0) starts.unshift(froms[end] ?? 0);
  return starts;
}
