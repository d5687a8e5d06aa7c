/** Words for packs and what they cost. */
import type { PackChoice } from '#lib/kit/choose-packs.ts';
import { formatMoney } from '#lib/kit/money.ts';
import { formatDecimal } from '#lib/kit/parse-decimal.ts';
import { milliToMinor, type Price, type PriceSum, type Purchase } from '#lib/kit/price.ts';
import type { Offer } from '#lib/thing.ts';

/** `2 × 100 + 1 × 25, 4 over`; packs by mass with what they hold. */
export function packsWords({ picked, over }: PackChoice, unitsPer = 1): string {
  if (picked.length === 0) return 'none';
  const packs = picked.map(({ pack, holds, times }) =>
    pack.by === 'count'
      ? `${times} × ${pack.count}`
      : `${times} × ${pack.mass.stated} (about ${formatDecimal(holds, unitsPer === 1 ? 0 : 3)})`,
  );
  return `${packs.join(' + ')}${over === 0 ? '' : `, ${formatDecimal(over, unitsPer === 1 ? 0 : 3)} over`}`;
}

/** `1 ring over a full pack: with 1 spare fewer, 4.80 EUR less`; empty where there is nothing to save. */
export function hintWords({ hint }: PackChoice, currency: string): string {
  if (!hint) return '';
  const fewer = `${hint.fewer} ${hint.fewer === 1 ? 'ring' : 'rings'}`;
  const saved =
    hint.savesMinor === null
      ? `${hint.packsLess} ${hint.packsLess === 1 ? 'pack' : 'packs'} less`
      : `${formatMoney(hint.savesMinor, currency)} less`;
  return `Only ${fewer} over what smaller packs hold: with ${hint.fewer} spare fewer, ${saved}.`;
}

/** How the packs came about: what they hold, and that no cheaper ones cover the need. */
export function packsWorking(
  choice: PackChoice,
  need: number,
  unitsPer: number,
  offer: Offer | null,
): readonly string[] {
  const of = (units: number): string => formatDecimal(units, unitsPer === 1 ? 0 : 3);
  const held = choice.picked.map(({ holds, times }) => `${times} × ${of(holds)}`).join(' + ');
  const all = choice.picked.reduce((sum, { holds, times }) => sum + holds * times, 0);
  const several = (offer?.packs.length ?? 0) > 1;
  return [
    choice.picked.length === 0 ? '' : `${held} = ${of(all)}; ${of(need)} needed, ${of(choice.over)} over.`,
    several
      ? choice.priceMinor === null
        ? 'Of all packs these leave the least over.'
        : 'No cheaper packs cover it.'
      : '',
    choice.picked.some(({ pack }) => pack.by === 'mass')
      ? 'How many a pack by mass holds is its mass divided by that of one, whole ones; wire a little thicker or thinner makes it about 3 % fewer or more (common practice).'
      : '',
  ];
}

/** `1 × 4.80 EUR + 1 × 2.90 EUR = 7.70 EUR`. */
export function priceWorking({ picked, priceMinor }: PackChoice, currency: string): string {
  const terms = picked.map(({ pack, times }) => `${times} × ${formatMoney(pack.priceMinor ?? 0, currency)}`);
  return `${terms.join(' + ') || 'nothing needed'} = ${formatMoney(priceMinor ?? 0, currency)}`;
}

/** `86 ÷ 100 in the packs × 4.80 EUR = 4.13 EUR`. */
export function proRataWorking(
  { rate, price }: Purchase,
  need: number,
  unitsPer: number,
  currency: string,
): string {
  const of = (units: number): string => formatDecimal(units, unitsPer === 1 ? 0 : 3);
  return rate && price
    ? `${of(need)} ÷ ${of(rate.holds)} in the packs × ${formatMoney(rate.priceMinor, currency)} = ${proRataWords(price, currency)}`
    : '';
}

/** `4.80 EUR`; nothing known is said as such. */
export const priceWords = (price: Price | null, currency: string): string =>
  price ? formatMoney(price.packsMinor, currency) : 'no price';

/** The same for a sum: where no line states a price, nothing is known of it. */
export const sumWords = (sum: PriceSum, currency: string): string =>
  priceWords(sum.priced === 0 && sum.unpriced > 0 ? null : sum, currency);

export const proRataWords = (price: Price, currency: string): string =>
  formatMoney(milliToMinor(price.proRataMilli), currency);

/** What a sum leaves out, or empty. */
export const unpricedWords = ({ priced, unpriced }: PriceSum): string =>
  unpriced === 0 || priced === 0
    ? ''
    : `${unpriced} ${unpriced === 1 ? 'line has' : 'lines have'} no price and ${unpriced === 1 ? 'is' : 'are'} not in the sum.`;
