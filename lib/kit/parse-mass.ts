/** Masses as people type them, kept as whole nanograms: packs are sold by the gram, the ounce, the troy ounce, the pound. */
import { failed, ok, type Result } from '#lib/result.ts';
import type { StatedMass } from '#lib/thing.ts';
import { multiplyDivide } from './whole.ts';

export type MassFault =
  | { readonly code: 'mass-empty' }
  | { readonly code: 'mass-not-read'; readonly text: string }
  /** A number without its unit, or an ounce that may be either; `choices` are what it can mean. */
  | { readonly code: 'mass-needs-unit'; readonly text: string; readonly choices: readonly StatedMass[] }
  | { readonly code: 'mass-out-of-range' };

/**
 * Nanograms of one unit. The pound is 453.59237 g (international yard and
 * pound agreement, 1959), the ounce 1/16 of it; the troy ounce is 480 of the
 * pound's 7000 grains: 31.1034768 g.
 */
const NANOGRAMS = {
  g: 1_000_000_000,
  kg: 1_000_000_000_000,
  'oz av': 28_349_523_125,
  ozt: 31_103_476_800,
  lb: 453_592_370_000,
} as const;
type Unit = keyof typeof NANOGRAMS;

const UNITS: readonly (readonly [RegExp, readonly Unit[]])[] = [
  [/^(g|gr?ams?|grammes?)$/, ['g']],
  [/^(kg|kilos?|kilograms?)$/, ['kg']],
  [/^(ozt|oz t|t oz|oz troy|troy oz|troy ounces?)$/, ['ozt']],
  [/^(oz av|oz avdp|avoirdupois ounces?)$/, ['oz av']],
  [/^(oz|ounces?)$/, ['oz av', 'ozt']],
  [/^(lbs?|pounds?)$/, ['lb']],
  [/^$/, ['g', 'ozt', 'oz av', 'lb']],
];

const HEAVIEST = 9_000_000_000_000_000;

/**
 * Reads `50 g`, `1 ozt`, `½ lb`, `1 1/2 oz av`, `0,25 kg`. An ounce that does
 * not say which (the troy ounce is a tenth heavier) and a bare number are asked back.
 */
export function parseMass(text: string): Result<StatedMass, MassFault> {
  const typed = text
    .replace('½', ' 1/2')
    .replace('¼', ' 1/4')
    .replace('¾', ' 3/4')
    .replace(/(\d),(\d)/g, '$1.$2')
    .replace(/[\s\u00a0\u202f]+/g, ' ')
    .trim()
    .toLowerCase();
  if (typed === '') return failed({ code: 'mass-empty' });
  const match = /^(?:(\d{1,6})\.?(\d{0,6})|(?:(\d{1,4}) )?(\d{1,4})\/(\d{1,4})) ?([a-z ]*)\.?$/.exec(typed);
  const units = UNITS.find(([pattern]) => pattern.test(match?.[6]?.trim() ?? '?'))?.[1];
  const amount = match && amountOf(match);
  if (!amount || !units) return failed({ code: 'mass-not-read', text: text.trim() });
  const choices = units.map((unit) => ({
    stated: `${amount.written} ${unit}`,
    nanograms: multiplyDivide(NANOGRAMS[unit], amount.top, amount.bottom, 'nearest'),
  }));
  if (choices.some(({ nanograms }) => nanograms < 1 || nanograms > HEAVIEST))
    return failed({ code: 'mass-out-of-range' });
  const [only] = choices;
  return choices.length === 1 && only
    ? ok(only)
    : failed({ code: 'mass-needs-unit', text: text.trim(), choices });
}

interface Amount {
  readonly written: string;
  readonly top: number;
  readonly bottom: number;
}

function amountOf([, whole, decimals = '', mixed = '0', top, bottom]: RegExpExecArray): Amount | null {
  if (whole !== undefined) {
    const kept = decimals.replace(/0+$/, '');
    return {
      written: `${Number(whole)}${kept === '' ? '' : `.${kept}`}`,
      top: Number(whole + kept),
      bottom: 10 ** kept.length,
    };
  }
  const [w, t, b] = [Number(mixed), Number(top), Number(bottom)];
  return b === 0 ? null : { written: `${w > 0 ? `${w} ` : ''}${t}/${b}`, top: w * b + t, bottom: b };
}

/** Grams of a stated mass, for the eye. */
export const gramsOf = (mass: StatedMass): number => mass.nanograms / NANOGRAMS.g;

/** A mass in grams as the whole nanograms that packs are counted by. */
export const toNanograms = (g: number): number => Math.max(1, Math.round(g * NANOGRAMS.g));
