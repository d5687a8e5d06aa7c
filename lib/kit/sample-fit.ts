/**
 * The length of a repeat and of the ends from measured pieces, and how sure
 * that is. L(n) = n x perRepeat + ends; several pieces are combined by least
 * squares, in whole numbers until the one rounding to ten-thousandths of a mm.
 */
import { failed, ok, type Result } from '#lib/result.ts';
import type { Sample, SamplePiece } from './making.ts';
import { toMm, toTicks } from './ticks.ts';

export interface SampleFit {
  readonly perRepeatMm: number;
  readonly endsMm: number;
}

export type SampleFault =
  /** One piece tells the length of a repeat only together with that of the ends; several need different counts. */
  | { readonly code: 'pieces-too-few' }
  /** A longer piece came out shorter, or the ends below nothing. */
  | { readonly code: 'pieces-disagree'; readonly perRepeatMm: number; readonly endsMm: number };

/** Rounded to the nearest, a half away from nothing; `by` above 0. */
function ratio(a: bigint, by: bigint): number {
  const half = (2n * (a < 0n ? -a : a) + by) / (2n * by);
  return Number(a < 0n ? -half : half);
}

/**
 * Two pieces give the line through both: g = (L(b) - L(a))/(b - a), ends =
 * L(a) - a x g. More are combined by least squares. One piece takes the ends
 * as they are stated.
 */
export function fitSample(pieces: readonly SamplePiece[], statedEndsMm = 0): Result<SampleFit, SampleFault> {
  const [first] = pieces;
  if (!first) return failed({ code: 'pieces-too-few' });
  if (pieces.length === 1) {
    const grown = toTicks(first.mm) - toTicks(statedEndsMm);
    return checked(ratio(BigInt(grown), BigInt(first.repeats)), toTicks(statedEndsMm));
  }
  const points = pieces.map(({ repeats, mm }) => [BigInt(repeats), BigInt(toTicks(mm))] as const);
  const sum = (of: (x: bigint, y: bigint) => bigint): bigint =>
    points.reduce((n, [x, y]) => n + of(x, y), 0n);
  const k = BigInt(points.length);
  const x = sum((n) => n);
  const y = sum((_, mm) => mm);
  const spread = k * sum((n) => n * n) - x * x;
  if (spread === 0n) return failed({ code: 'pieces-too-few' });
  const grown = k * sum((n, mm) => n * mm) - x * y;
  return checked(ratio(grown, spread), ratio(y * spread - grown * x, k * spread));
}

const checked = (perRepeat: number, ends: number): Result<SampleFit, SampleFault> => {
  const fit = { perRepeatMm: toMm(perRepeat), endsMm: toMm(ends) };
  return perRepeat > 0 && ends >= 0 ? ok(fit) : failed({ code: 'pieces-disagree', ...fit });
};

/** How sure a length of so many repeats is. */
export interface Certainty {
  /** ± mm. */
  readonly errorMm: number;
  readonly pieces: number;
  /** Over how many repeats each run of a length of its own was measured, in the order of the piece. */
  readonly runsOver: readonly number[];
  readonly readingMm: number;
  /** Typical distance of the pieces from the line that the sample states, mm, where it is more than the reading; null else. */
  readonly scatterMm: number | null;
}

/** So many repeats of a run; of no run, or of one without a length of its own, they are as long as the sample says. */
export interface MeasuredStretch {
  readonly run: string | null;
  readonly repeats: number;
}

/**
 * How far off a piece may come out. What the pieces were measured for follows
 * the rule of propagation for a line of least squares: e x sqrt(1/k + (n -
 * mean)^2 / sum of (n_i - mean)^2), independent readings of ± e each; of one
 * piece e x n/n_1. How far the pieces lie off the stated line tells too, and
 * the larger of both counts. A run of its own length, measured over m of its
 * repeats, adds e x n/m. Independent errors add by their squares.
 * @returns null where no reading is stated, or repeats are there that nobody said how they were measured
 */
export function certaintyOf(sample: Sample, stretches: readonly MeasuredStretch[]): Certainty | null {
  const { pieces, readingMm } = sample;
  if (readingMm === null) return null;
  const own = ownRuns(sample, stretches);
  const all = stretches.reduce((sum, one) => sum + one.repeats, 0);
  const even = all - own.reduce((sum, { repeats }) => sum + repeats, 0);
  const line = lineErrorOf(sample, readingMm, even);
  // Without a measured piece the ends are as stated; repeats cannot be.
  if (!line && (even > 0 || own.length === 0)) return null;
  const runsOver = own.flatMap(({ overRepeats }) => overRepeats ?? []);
  if (runsOver.length < own.length) return null;
  const squares = own.map(({ repeats }, index) => ((readingMm * repeats) / (runsOver[index] ?? 1)) ** 2);
  return {
    errorMm: Math.sqrt(squares.reduce((sum, one) => sum + one, (line?.errorMm ?? 0) ** 2)),
    pieces: pieces.length,
    runsOver,
    readingMm,
    scatterMm: line?.scatterMm ?? null,
  };
}

/** Runs of a length of their own that the piece has, each with its repeats in all stretches. */
const ownRuns = ({ runs }: Sample, stretches: readonly MeasuredStretch[]) =>
  runs
    .map(({ run, overRepeats }) => ({
      overRepeats,
      repeats: stretches.reduce((sum, one) => sum + (one.run === run ? one.repeats : 0), 0),
    }))
    .filter(({ repeats }) => repeats > 0);

function lineErrorOf(
  { pieces, perRepeatMm, endsMm }: Sample,
  readingMm: number,
  n: number,
): Pick<Certainty, 'errorMm' | 'scatterMm'> | null {
  const [first] = pieces;
  if (!first) return null;
  const k = pieces.length;
  if (k === 1) return { errorMm: (readingMm * n) / first.repeats, scatterMm: null };
  const mean = pieces.reduce((sum, p) => sum + p.repeats, 0) / k;
  const spread = pieces.reduce((sum, p) => sum + (p.repeats - mean) ** 2, 0);
  if (spread === 0) return null;
  const off = pieces.reduce((sum, p) => sum + (p.mm - p.repeats * perRepeatMm - endsMm) ** 2, 0);
  const scatter = Math.sqrt(off / Math.max(1, k - 2));
  return {
    errorMm: Math.max(readingMm, scatter) * Math.sqrt(1 / k + (n - mean) ** 2 / spread),
    scatterMm: scatter > readingMm ? scatter : null,
  };
}
