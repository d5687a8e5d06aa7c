/** Words for kits: their faults, and the working behind every number. */
import type { KitFault, Packs } from '#lib/kit/kit-list.ts';
import type { LengthWorking } from '#lib/kit/length.ts';
import type { Rounding } from '#lib/kit/making.ts';
import type { MaterialLine } from '#lib/kit/material-line.ts';
import { formatMoney } from '#lib/kit/money.ts';
import { formatDecimal } from '#lib/kit/parse-decimal.ts';
import { milliToMinor, type Price, type PriceSum } from '#lib/kit/price.ts';
import type { PartCounts, Prepared } from '#lib/weave/sequence.ts';
import { figure } from './ring-words.ts';

/** Where a fault of a kit is mended: a stage of the bench and a place on it. */
export interface KitFaultWords {
  readonly text: string;
  readonly mend: { readonly screen: 'making' | 'kit'; readonly place: string; readonly label: string } | null;
}

const mm = (n: number): string => `${figure(n, 2)} mm`;

export function kitFaultWords(fault: KitFault): KitFaultWords {
  switch (fault.code) {
    case 'nothing-to-count':
      return {
        text: 'There are no rings in the sequence and no materials yet, so there is nothing to count.',
        mend: { screen: 'making', place: 'sequence', label: 'Describe the ring sequence' },
      };
    case 'no-sample':
      return {
        text: 'How long one repeat comes out is not known yet: a measured sample is needed to tell how many repeats a length takes.',
        mend: { screen: 'making', place: 'sample', label: 'Enter the measured sample' },
      };
    case 'ring-kind-missing':
      return {
        text: 'The sequence uses a ring kind that was taken away. Choose another one for it.',
        mend: { screen: 'making', place: 'sequence', label: 'Go to the ring sequence' },
      };
    case 'not-a-length':
      return { text: `A measure above 0 and up to ${mm(fault.mostMm)} is needed.`, mend: null };
    case 'too-short':
      return {
        text: `${mm(fault.targetMm)} is too short for this piece: its ends take ${mm(fault.endsMm)}, the clasp ${mm(fault.claspMm)}, and one repeat ${mm(fault.perRepeatMm)}. The smallest measure that takes a repeat is ${figure(Math.ceil(fault.shortestBodyMm * 100) / 100, 2)} mm.`,
        mend: null,
      };
  }
}

const ROUNDED: Readonly<Record<Rounding, string>> = {
  up: 'rounded up',
  nearest: 'rounded to the nearest',
  down: 'rounded down',
};

/** `repeat` or `repeats`, with its number. */
const repeatsWord = (n: number): string => `${n} ${n === 1 ? 'repeat' : 'repeats'}`;

/** How a length turned into repeats, one sentence a step. */
export function lengthWords(working: LengthWorking): readonly string[] {
  const { targetMm, endsMm, claspMm, perRepeatMm, repeats, finishedMm, leftoverMm } = working;
  const exact = (targetMm - endsMm - claspMm) / perRepeatMm;
  const over = Math.abs(leftoverMm);
  return [
    `${mm(working.bodyMm)} measured + ${mm(working.easeMm)} ease = ${mm(targetMm)} to be reached.`,
    `(${figure(targetMm, 2)} − ${figure(endsMm, 2)} ends − ${figure(claspMm, 2)} clasp) ÷ ${figure(perRepeatMm, 4)} a repeat = ${figure(exact, 3)}, ${ROUNDED[working.rounding]}: ${repeatsWord(repeats)}.`,
    `${repeats} × ${figure(perRepeatMm, 4)} + ${figure(endsMm, 2)} + ${figure(claspMm, 2)} = ${mm(finishedMm)} finished, ${leftoverMm === 0 ? 'exactly as asked' : `${mm(over)} ${leftoverMm > 0 ? 'longer' : 'shorter'} than asked`}.`,
  ];
}

/** `36 opened = 17 × 2 in the repeat + 2 to finish`; parts that add nothing are left out. */
export function countWords(parts: PartCounts, repeats: number, total: Prepared, of: keyof Prepared): string {
  const terms = [
    parts.start[of] > 0 ? `${parts.start[of]} to start` : '',
    parts.repeat[of] > 0 ? `${repeats} × ${parts.repeat[of]} in the repeat` : '',
    parts.finishing[of] > 0 ? `${parts.finishing[of]} to finish` : '',
  ].filter((term) => term !== '');
  return terms.length === 0 ? `none ${of}` : `${total[of]} ${of} = ${terms.join(' + ')}`;
}

/** `78 × 110 % = 85.8, rounded up on this line: 86 (8 spare)`. */
export function spareWords(net: number, issued: number, percent: number): string {
  if (percent === 0) return `${net}, no spare`;
  const exact = formatDecimal(net * (100 + percent), 2);
  return `${net} × ${100 + percent} % = ${exact}${exact === String(issued) ? '' : `, rounded up: ${issued}`} (${issued - net} spare)`;
}

export const packsWords = ({ packs, packCount, over }: Packs): string =>
  `${packs} × ${packCount}${over === 0 ? '' : `, ${over} over`}`;

/** `0.432 m`, `1 piece`, `3 pieces`. */
export function quantityWords(milli: number, unit: string): string {
  const plural = milli !== 1000 && /^(piece|pair|bead|drop)$/i.test(unit) ? `${unit}s` : unit;
  return `${formatDecimal(milli, 3)} ${plural}`;
}

export function materialWords({ working, material, needMilli }: MaterialLine): string {
  const each = quantityWords(working.quantityMilli, material.unit);
  const need = quantityWords(needMilli, material.unit);
  switch (working.per) {
    case 'lesson':
      return `${need} for the piece`;
    case 'repeat':
      return `${working.repeats} repeats × ${each} = ${need}`;
    case 'length':
      return `${each} per 100 mm × ${mm(working.finishedMm)} = ${need}`;
  }
}

/** `4.80 EUR`; nothing known is said as such. */
export const priceWords = (price: Price | null, currency: string): string =>
  price ? formatMoney(price.packsMinor, currency) : 'no price';

export const proRataWords = (price: Price, currency: string): string =>
  formatMoney(milliToMinor(price.proRataMilli), currency);

/** What a sum leaves out, or empty. */
export const unpricedWords = ({ unpriced }: PriceSum): string =>
  unpriced === 0
    ? ''
    : `${unpriced} ${unpriced === 1 ? 'line has' : 'lines have'} no price and ${unpriced === 1 ? 'is' : 'are'} not in the sum.`;

export const massWords = (grams: number | null): string => (grams === null ? '–' : `${grams.toFixed(2)} g`);
