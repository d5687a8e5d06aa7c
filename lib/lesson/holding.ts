/** Where playing stops by itself: at the next step, or at the end of a looped chapter. Times in ms. */

export interface Stop {
  readonly id: string;
  readonly atMs: number;
}

/**
 * The first stop that playing has just come over: `fromMs < at <= toMs`. Null
 * where none was, where time went backwards, and where it jumped further than
 * playing could have brought it.
 */
export function stopCrossed<T extends Stop>(
  stops: readonly T[],
  fromMs: number,
  toMs: number,
  furthestMs = 1_500,
): T | null {
  if (toMs <= fromMs || toMs - fromMs > furthestMs) return null;
  const crossed = stops.filter((stop) => stop.atMs > fromMs && stop.atMs <= toMs);
  return crossed.toSorted((one, other) => one.atMs - other.atMs)[0] ?? null;
}
