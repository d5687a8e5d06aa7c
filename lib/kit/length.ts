/**
 * How many repeats a finished length takes: L(n) = n x perRepeat + ends +
 * clasp, reckoned in whole ten-thousandths of a millimetre, so that a ratio
 * that lands on a whole number stays whole.
 */
import { failed, ok, type Result } from '#lib/result.ts';
import type { KitRules, Rounding, Sample } from './making.ts';
import { divide } from './whole.ts';

/** Ten-thousandths of a millimetre in one millimetre. */
export const TICKS_PER_MM = 10_000;

export const toTicks = (mm: number): number => Math.round(mm * TICKS_PER_MM);
export const toMm = (ticks: number): number => ticks / TICKS_PER_MM;

/** Longest body measure or length taken, mm. */
export const LONGEST_MM = 10_000;

/** The numbers behind a count of repeats; all mm. */
export interface LengthWorking {
  readonly bodyMm: number;
  readonly easeMm: number;
  /** Body + ease. */
  readonly targetMm: number;
  readonly perRepeatMm: number;
  readonly endsMm: number;
  readonly claspMm: number;
  readonly rounding: Rounding;
  readonly repeats: number;
  readonly finishedMm: number;
  /** Finished - target: above 0 is longer than asked for. */
  readonly leftoverMm: number;
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

/** The finished length asked for: body measure + ease, in mm; or a fault where it is no length. */
export function targetOf(bodyMm: number, easeMm: number): Result<number, LengthFault> {
  if (!Number.isFinite(bodyMm) || bodyMm <= 0 || bodyMm > LONGEST_MM)
    return failed({ code: 'not-a-length', bodyMm, mostMm: LONGEST_MM });
  return ok(toMm(toTicks(bodyMm) + toTicks(easeMm)));
}

/** Repeats for a body measure in mm by a measured sample, with the working. */
export function repeatsFor(
  bodyMm: number,
  sample: Sample,
  rules: KitRules,
): Result<LengthWorking, LengthFault> {
  const target = targetOf(bodyMm, rules.easeMm);
  if (!target.ok) return target;
  const targetTicks = toTicks(target.value);
  const fixed = toTicks(sample.endsMm) + toTicks(sample.claspMm);
  const step = Math.max(1, toTicks(sample.perRepeatMm));
  const repeats = divide(targetTicks - fixed, step, rules.rounding);
  if (repeats < 1) {
    // The least x = target - fixed that the rounding turns into 1 repeat.
    const least = rules.rounding === 'down' ? step : rules.rounding === 'up' ? 1 : Math.ceil(step / 2);
    return failed({
      code: 'too-short',
      targetMm: target.value,
      endsMm: sample.endsMm,
      claspMm: sample.claspMm,
      perRepeatMm: sample.perRepeatMm,
      shortestBodyMm: toMm(Math.max(1, fixed + least - toTicks(rules.easeMm))),
    });
  }
  const finished = fixed + repeats * step;
  return ok({
    bodyMm,
    easeMm: rules.easeMm,
    targetMm: target.value,
    perRepeatMm: sample.perRepeatMm,
    endsMm: sample.endsMm,
    claspMm: sample.claspMm,
    rounding: rules.rounding,
    repeats,
    finishedMm: toMm(finished),
    leftoverMm: toMm(finished - targetTicks),
  });
}

/**
 * Length per repeat and of both ends from two measured pieces of the same
 * weave, without clasp: g = (L(b) - L(a))/(b - a), ends = L(a) - a x g. The
 * ends cancel in g. Null unless the longer piece has more repeats, is longer,
 * and the ends come out at 0 or more.
 */
export function sampleOfTwo(
  shorter: { readonly repeats: number; readonly mm: number },
  longer: { readonly repeats: number; readonly mm: number },
): { readonly perRepeatMm: number; readonly endsMm: number } | null {
  const between = longer.repeats - shorter.repeats;
  const grown = toTicks(longer.mm) - toTicks(shorter.mm);
  if (!(between > 0) || !(grown > 0)) return null;
  const perRepeat = Math.round(grown / between);
  const ends = toTicks(shorter.mm) - Math.round((shorter.repeats * grown) / between);
  return perRepeat > 0 && ends >= 0 ? { perRepeatMm: toMm(perRepeat), endsMm: toMm(ends) } : null;
}
