/** Decimal numbers as people type them, kept whole: the number in units of its last place. */
import { failed, ok, type Result } from '#lib/result.ts';

export type DecimalFault =
  | { readonly code: 'number-empty' }
  | { readonly code: 'number-not-read'; readonly text: string }
  | { readonly code: 'number-too-fine'; readonly places: number }
  | { readonly code: 'number-too-large' };

/**
 * Reads `12`, `12.5`, `12,50`, `.5`, `1 234.5` as a whole number of 10^-places;
 * point and comma both part the decimals. `1,234` with two places is refused
 * rather than taken for 1234 or 1.234. Nothing below 0.
 * @example parseDecimal('12,5', 2) // 1250
 */
export function parseDecimal(text: string, places: number): Result<number, DecimalFault> {
  const typed = text.replace(/[\s\u00a0\u202f]/g, '');
  if (typed === '') return failed({ code: 'number-empty' });
  const match = /^(\d*)(?:[.,](\d*))?$/.exec(typed);
  const [, whole = '', fraction = ''] = match ?? [];
  if (!match || whole + fraction === '') return failed({ code: 'number-not-read', text: text.trim() });
  const kept = fraction.replace(/0+$/, '');
  // `1,234` of something with two places: a thousand and more, or one and a bit?
  if (kept.length > places || (fraction.length > places && fraction.length === 3))
    return failed({ code: 'number-too-fine', places });
  const value = Number(whole + kept.padEnd(places, '0'));
  return Number.isSafeInteger(value) ? ok(value) : failed({ code: 'number-too-large' });
}

/** `12.5` for 1250 in 10^-2; no needless zeros. */
export function formatDecimal(value: number, places: number): string {
  const digits = String(Math.abs(value)).padStart(places + 1, '0');
  const whole = digits.slice(0, digits.length - places);
  const fraction = digits.slice(digits.length - places).replace(/0+$/, '');
  return `${value < 0 ? '−' : ''}${whole}${fraction === '' ? '' : `.${fraction}`}`;
}
