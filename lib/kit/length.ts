/**
 * How many repeats a finished length takes: L(n) = n x perRepeat + ends +
 * clasp (where runs differ in length, the sum of theirs in place of the first
 * product), reckoned in whole ten-thousandths of a millimetre, so that a
 * ratio that lands on a whole number stays whole.
 */
import { failed, ok, type Result } from '#lib/result.ts';
import type { Run } from '#lib/weave/placement.ts';
import { fixedRepeats, planRuns } from '#lib/weave/runs.ts';
import type { KitRules, Rounding, Sample } from './making.ts';
import { type Certainty, certaintyOf, type MeasuredStretch } from './sample-fit.ts';
import { toMm, toTicks } from './ticks.ts';
import { divide } from './whole.ts';

/** Longest body measure or length taken, mm. */
export const LONGEST_MM = 10_000;

/** What makes a finished length of a body measure; all mm. */
export interface TargetWorking {
  readonly bodyMm: number;
  readonly easeMm: number;
  /** Thickness of the piece where the ease leaves it out, and what it adds once round: pi x thickness. */
  readonly thickness: { readonly mm: number; readonly roundMm: number } | null;
  /** Body + ease + once round the thickness. */
  readonly targetMm: number;
}

/** So many repeats, each of one length. */
export interface StretchLength {
  readonly repeats: number;
  readonly perRepeatMm: number;
}

/** The numbers behind a count of repeats; all mm. */
export interface LengthWorking extends TargetWorking {
  /** What one repeat adds, where a run says nothing else. */
  readonly perRepeatMm: number;
  readonly endsMm: number;
  readonly claspMm: number;
  readonly measured: Sample['measured'];
  readonly rounding: Rounding;
  readonly repeats: number;
  /** Runs in order; one stretch where all repeats are alike. */
  readonly stretches: readonly StretchLength[];
  /** Repeats that runs of a stated number ask for and the length does not hold; 0 where all fit. */
  readonly cutRepeats: number;
  readonly finishedMm: number;
  /** Finished - target: above 0 is longer than asked for. */
  readonly leftoverMm: number;
  /** Null where the sample does not say how surely it was read. */
  readonly certainty: (Certainty & { readonly leastRepeats: number; readonly mostRepeats: number }) | null;
}

export type LengthFault =
  | { readonly code: 'not-a-length'; readonly bodyMm: number; readonly mostMm: number }
  /** Not one repeat goes into the target; `shortestBodyMm` is the smallest body measure that takes one. */
  | {
      readonly code: 'too-short';
      readonly targetMm: number;
      readonly endsMm: number;
      readonly claspMm: number;
      readonly perRepeatMm: number;
      readonly shortestBodyMm: number;
    };

type Allowance = Pick<KitRules, 'easeMm' | 'thicknessMm'>;

/** What the thickness of a piece adds once round a body: its middle line runs half of it further out. */
const roundOf = (thicknessMm: number): number => toMm(toTicks(Math.PI * thicknessMm));

/** What is added to a body measure to get the finished length, mm: ease, and the thickness where the ease leaves it out. */
export const allowanceMm = ({ easeMm, thicknessMm }: Allowance): number =>
  toMm(toTicks(easeMm) + (thicknessMm === null ? 0 : toTicks(roundOf(thicknessMm))));

/** The finished length asked for, in mm; or a fault where the body measure is no length. */
export function targetOf(bodyMm: number, rules: Allowance): Result<TargetWorking, LengthFault> {
  if (!Number.isFinite(bodyMm) || toTicks(bodyMm) <= 0 || bodyMm > LONGEST_MM)
    return failed({ code: 'not-a-length', bodyMm, mostMm: LONGEST_MM });
  const { easeMm, thicknessMm } = rules;
  return ok({
    bodyMm,
    easeMm,
    thickness: thicknessMm === null ? null : { mm: thicknessMm, roundMm: roundOf(thicknessMm) },
    targetMm: toMm(toTicks(bodyMm) + toTicks(allowanceMm(rules))),
  });
}

/** Repeats for a body measure in mm by a measured sample, with the working. */
export function repeatsFor(
  bodyMm: number,
  sample: Sample,
  rules: Allowance & Pick<KitRules, 'rounding'>,
  runs: readonly Run[] = [],
): Result<LengthWorking, LengthFault> {
  const target = targetOf(bodyMm, rules);
  if (!target.ok) return target;
  const targetTicks = toTicks(target.value.targetMm);
  const fixed = toTicks(sample.endsMm) + toTicks(sample.claspMm);
  const { rounding } = rules;
  const growth = growthOf(sample, runs);
  const repeats = growth.repeatsFor(targetTicks - fixed, rounding);
  if (repeats < 1) {
    // The least x = target - fixed that the rounding turns into 1 repeat.
    const step = growth.ticksOf(1);
    const least = rounding === 'down' ? step : rounding === 'up' ? 1 : Math.ceil(step / 2);
    return failed({
      code: 'too-short',
      targetMm: target.value.targetMm,
      endsMm: sample.endsMm,
      claspMm: sample.claspMm,
      perRepeatMm: sample.perRepeatMm,
      shortestBodyMm: toMm(Math.max(1, fixed + least - toTicks(allowanceMm(rules)))),
    });
  }
  const finished = fixed + growth.ticksOf(repeats);
  const stretches = growth.stretchesOf(repeats);
  const certainty = certaintyOf(sample, stretches);
  const off = certainty ? toTicks(certainty.errorMm) : 0;
  return ok({
    ...target.value,
    perRepeatMm: sample.perRepeatMm,
    endsMm: sample.endsMm,
    claspMm: sample.claspMm,
    measured: sample.measured,
    rounding,
    repeats,
    stretches: stretches.map(({ repeats: times, ticks }) => ({
      repeats: times,
      perRepeatMm: toMm(ticks),
    })),
    cutRepeats: Math.max(0, fixedRepeats(runs) - repeats),
    finishedMm: toMm(finished),
    leftoverMm: toMm(finished - targetTicks),
    certainty: certainty && {
      ...certainty,
      leastRepeats: Math.max(0, growth.repeatsFor(targetTicks - fixed - off, rounding)),
      mostRepeats: growth.repeatsFor(targetTicks - fixed + off, rounding),
    },
  });
}

interface Growth {
  /** What so many repeats add, in order. */
  readonly stretchesOf: (repeats: number) => readonly (MeasuredStretch & { readonly ticks: number })[];
  /** Ticks that so many repeats add together. */
  readonly ticksOf: (repeats: number) => number;
  /** Repeats that so many ticks take, rounded as said; may be below 1. */
  readonly repeatsFor: (ticks: number, rounding: Rounding) => number;
}

/** How a piece grows with its repeats: evenly, or run by run where theirs differ. */
function growthOf(sample: Sample, runs: readonly Run[]): Growth {
  const step = Math.max(1, toTicks(sample.perRepeatMm));
  const own = new Map(sample.runs.map(({ run, perRepeatMm }) => [run, Math.max(1, toTicks(perRepeatMm))]));
  if (!runs.some(({ id }) => own.has(id)))
    return {
      stretchesOf: (repeats) => [{ run: null, repeats, ticks: step }],
      ticksOf: (repeats) => repeats * step,
      repeatsFor: (ticks, rounding) => divide(ticks, step, rounding),
    };
  const stretchesOf = (repeats: number) =>
    planRuns(runs, repeats).map(({ run, repeats: times }) => ({
      run: run?.id ?? null,
      repeats: times,
      ticks: (run && own.get(run.id)) ?? step,
    }));
  const ticksOf = (repeats: number): number =>
    stretchesOf(repeats).reduce((sum, stretch) => sum + stretch.repeats * stretch.ticks, 0);
  const least = Math.min(step, ...own.values());
  return {
    stretchesOf,
    ticksOf,
    repeatsFor: (ticks, rounding) => {
      const below = mostWithin(ticks, Math.floor(ticks / least), ticksOf);
      if (rounding === 'down' || ticks < 0) return below;
      const rest = ticks - ticksOf(below);
      if (rest === 0) return below;
      return rounding === 'up' || 2 * rest >= ticksOf(below + 1) - ticksOf(below) ? below + 1 : below;
    },
  };
}

/** The most repeats, up to so many, whose ticks are within the given: more repeats are always longer, so the span is halved. */
function mostWithin(ticks: number, most: number, ticksOf: (repeats: number) => number): number {
  let low = 0;
  let high = Math.max(0, most);
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (ticksOf(middle) <= ticks) low = middle;
    else high = middle - 1;
  }
  return low;
}
