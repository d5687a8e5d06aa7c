/**
 * How far a proposed segmentation lies from a reference one. Both are lists of
 * segment lengths in units (sentences or cues) with the same sum. One variant
 * of each measure, as in its first publication, without padded ends:
 * k is half the mean length of a reference segment, halves to even, at least
 * 2; windows start at each unit i = 1 … N-k and reach to unit i+k.
 */

/** Segment lengths from the indexes of each segment's first unit. */
export function lengthsOf(starts: readonly number[], units: number): readonly number[] {
  const inner = [...new Set(starts)].filter((start) => start > 0 && start < units).sort((a, b) => a - b);
  return [...inner, units].map((end, index) => end - (inner[index - 1] ?? 0));
}

/** Half of the mean reference segment. Halves are rounded to even, as the published values assume. */
export function windowOf(reference: readonly number[]): number {
  const half = sum(reference) / (2 * reference.length);
  const down = Math.floor(half);
  const rounded = half - down === 0.5 ? down + (down % 2) : Math.round(half);
  return Math.max(2, rounded);
}

/** Pk (Beeferman, Berger & Lafferty 1999): the share of windows that disagree whether their ends lie together. */
export const pk = (proposed: readonly number[], reference: readonly number[]): number =>
  shareOfWindows(proposed, reference, (one, other) => one > 0 !== other > 0);

/** WindowDiff (Pevzner & Hearst 2002): the share of windows that disagree about how many boundaries they hold. */
export const windowDiff = (proposed: readonly number[], reference: readonly number[]): number =>
  shareOfWindows(proposed, reference, (one, other) => one !== other);

function shareOfWindows(
  proposed: readonly number[],
  reference: readonly number[],
  differs: (proposed: number, reference: number) => boolean,
): number {
  const units = sum(reference);
  if (sum(proposed) !== units) throw new Error('Both must have the same number of units.');
  const k = windowOf(reference);
  const windows = units - k;
  if (windows <= 0) return 0;
  const ours = segmentOfUnits(proposed);
  const theirs = segmentOfUnits(reference);
  let wrong = 0;
  for (let first = 0; first < windows; first++) {
    const inside = (segments: readonly number[]) => (segments[first + k] ?? 0) - (segments[first] ?? 0);
    if (differs(inside(ours), inside(theirs))) wrong += 1;
  }
  return wrong / windows;
}

/**
 * Boundary similarity B (Fournier 2013): 1 where all boundaries agree, 0
 * where none does. Boundaries one unit apart count half.
 */
export function boundarySimilarity(proposed: readonly number[], reference: readonly number[]): number {
  const ours = boundariesOf(proposed);
  const theirs = boundariesOf(reference);
  const matched = [...ours].filter((one) => theirs.has(one));
  const leftOurs = [...ours].filter((one) => !theirs.has(one));
  const leftTheirs = new Set([...theirs].filter((one) => !ours.has(one)));
  let near = 0;
  for (const one of leftOurs) {
    const partner = [one - 1, one + 1].find((place) => leftTheirs.has(place));
    if (partner === undefined) continue;
    leftTheirs.delete(partner);
    near += 1;
  }
  const alone = leftOurs.length - near + leftTheirs.size;
  const all = alone + near + matched.length;
  return all === 0 ? 1 : 1 - (alone + near / 2) / all;
}

/** Precision, recall and their harmonic mean; each boundary is used once, within so many units. */
export function boundaryF1(proposed: readonly number[], reference: readonly number[], within: number) {
  const ours = [...boundariesOf(proposed)];
  const theirs = [...boundariesOf(reference)];
  // Both are in order, so taking the earliest partner within reach gives the most pairs.
  let pairs = 0;
  let at = 0;
  for (const one of ours) {
    while (at < theirs.length && (theirs[at] ?? 0) < one - within) at += 1;
    if (at < theirs.length && (theirs[at] ?? 0) <= one + within) {
      pairs += 1;
      at += 1;
    }
  }
  const precision = ours.length === 0 ? 0 : pairs / ours.length;
  const recall = theirs.length === 0 ? 0 : pairs / theirs.length;
  return { precision, recall, f1: pairs === 0 ? 0 : (2 * precision * recall) / (precision + recall) };
}

const sum = (lengths: readonly number[]): number => lengths.reduce((all, one) => all + one, 0);

const segmentOfUnits = (lengths: readonly number[]): readonly number[] =>
  lengths.flatMap((length, segment) => new Array<number>(length).fill(segment));

function boundariesOf(lengths: readonly number[]): ReadonlySet<number> {
  let at = 0;
  return new Set(lengths.slice(0, -1).map((length) => (at += length)));
}
