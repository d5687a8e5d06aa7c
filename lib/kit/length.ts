/**
 * How many repeats a finished length takes: L(n) = n x perRepeat + ends +
 * clasp, reckoned in whole ten-thousandths of a millimetre, so that a ratio
 * that lands on a whole number stays whole.
 */
import { failed, ok, type Result } from '#lib/result.ts';
import type { KitRules, Rounding, Sample } from './making.ts';
import { type Certainty, certaintyOf } from './sample-fit.ts';
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

/** The numbers behind a count of repeats; all mm. */
export interface LengthWorking extends TargetWorking {
  readonly perRepeatMm: number;
  readonly endsMm: number;
  readonly claspMm: number;
  readonly measured: Sample['measured'];
  readonly rounding: Rounding;
  readonly repeats: number;
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
): Result<LengthWorking, LengthFault> {
  const target = targetOf(bodyMm, rules);
  if (!target.ok) return target;
  const targetTicks = toTicks(target.value.targetMm);
  const fixed = toTicks(sample.endsMm) + toTicks(sample.claspMm);
  const step = Math.max(1, toTicks(sample.perRepeatMm));
  const { rounding } = rules;
  const repeats = divide(targetTicks - fixed, step, rounding);
  if (repeats < 1) {
    // The least x = target - fixed that the rounding turns into 1 repeat.
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
  const finished = fixed + repeats * step;
  const certainty = certaintyOf(sample, repeats);
  const off = certainty ? toTicks(certainty.errorMm) : 0;
  return ok({
    ...target.value,
    perRepeatMm: sample.perRepeatMm,
    endsMm: sample.endsMm,
    claspMm: sample.claspMm,
    measured: sample.measured,
    rounding,
    repeats,
    finishedMm: toMm(finished),
    leftoverMm: toMm(finished - targetTicks),
    certainty: certainty && {
      ...certainty,
      leastRepeats: Math.max(0, divide(targetTicks - fixed - off, step, rounding)),
      mostRepeats: divide(targetTicks - fixed + off, step, rounding),
    },
  });
}
