/**
 * Money: whole minor units with an ISO 4217 code. How many minor units make
 * one differs (none for the yen, a thousand for the Kuwaiti dinar); Intl knows.
 */
import { ok, type Result } from '#lib/result.ts';
import { type DecimalFault, parseDecimal } from './parse-decimal.ts';

const styleOf = (currency: string): Intl.NumberFormat =>
  new Intl.NumberFormat('en', { style: 'currency', currency, currencyDisplay: 'code' });

/** ISO 4217 exponent: decimal places of the minor unit. 2 where the code is unknown. */
export const minorPlaces = (currency: string): number =>
  styleOf(currency).resolvedOptions().maximumFractionDigits ?? 2;

/** `12.50`, `12,5`, `EUR 12.50`, `€12.50` in minor units. */
export function parseMoney(text: string, currency: string): Result<number, DecimalFault> {
  const bare = text.replace(new RegExp(`\\b${currency}\\b`, 'i'), '').replace(/\p{Sc}/u, '');
  const read = parseDecimal(bare, minorPlaces(currency));
  return read.ok ? ok(read.value) : read;
}

/** `12.50`: the number alone, all its places, for a field that names its currency. */
export function formatAmount(minor: number, currency: string): string {
  const places = minorPlaces(currency);
  const digits = String(Math.abs(minor)).padStart(places + 1, '0');
  const at = digits.length - places;
  return `${minor < 0 ? '−' : ''}${digits.slice(0, at)}${places > 0 ? `.${digits.slice(at)}` : ''}`;
}

/** `12.50 EUR`. The code and not a sign: there are two dozen kinds of dollar. */
export const formatMoney = (minor: number, currency: string): string =>
  `${formatAmount(minor, currency)} ${currency}`;
