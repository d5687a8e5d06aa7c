/**
 * The measure that a pupil asks a kit for, as it stands in a page's address:
 * `?measure=165&unit=mm&of=wrist`. The same reading serves the page without
 * script and the one with it.
 */
import { allowanceMm, LONGEST_MM } from '#lib/kit/length.ts';
import type { KitRules } from '#lib/kit/making.ts';
import { failed, ok, type Result } from '#lib/result.ts';
import { MM_PER_INCH, toTenThousandths } from '#lib/rings/gauges.ts';
import { parseSize } from '#lib/rings/parse-size.ts';
import { LONGEST_MS } from '#lib/time/longest-time.ts';
import { type Fragment, readFragment } from '#lib/time/media-fragment.ts';
import type { Content } from './content.ts';

export const MEASURE_UNITS = ['mm', 'in'] as const;
export type MeasureUnit = (typeof MEASURE_UNITS)[number];
/** `wrist`: what the tape shows round the body. `length`: the finished piece, clasp closed. */
export const MEASURES_OF = ['wrist', 'length'] as const;
export type MeasureOf = (typeof MEASURES_OF)[number];

/** As typed; nothing is lost when it cannot be read. */
export interface AskedMeasure {
  readonly text: string;
  readonly unit: MeasureUnit;
  readonly of: MeasureOf;
}

export type MeasureFault =
  | { readonly code: 'measure-not-read'; readonly text: string }
  | { readonly code: 'measure-out-of-range'; readonly mostMm: number }
  /** A finished length that is not longer than what is added to the body measure. */
  | { readonly code: 'length-within-ease'; readonly allowanceMm: number };

/**
 * Millimetres of the asked measure as a body measure, which is what kits are
 * reckoned for: a finished length is its body measure plus ease and thickness.
 * Takes `165`, `16.5`, `6 1/2`, `6½`; a unit in the text wins over the chosen one.
 */
export function bodyMmOf(
  asked: AskedMeasure,
  rules: Pick<KitRules, 'easeMm' | 'thicknessMm'>,
): Result<number, MeasureFault> {
  const text = asked.text.trim();
  const stated = parseSize(text, 'length');
  const read = stated.ok ? stated : parseSize(`${text} ${asked.unit}`, 'length');
  if (!read.ok)
    return failed(
      read.fault.code === 'size-out-of-range'
        ? { code: 'measure-out-of-range', mostMm: LONGEST_MM }
        : { code: 'measure-not-read', text },
    );
  if (asked.of === 'wrist') return ok(read.value.mm);
  const added = allowanceMm(rules);
  const bodyMm = toTenThousandths(read.value.mm - added);
  return bodyMm > 0 ? ok(bodyMm) : failed({ code: 'length-within-ease', allowanceMm: added });
}

type Query = Readonly<Record<string, string | readonly string[] | undefined>>;

const one = (query: Query, name: string): string | undefined => {
  const value = query[name];
  return typeof value === 'string' ? value : value?.[0];
};

/** The measure that an address asks for; without one, the lesson's first size in mm; null where it has none. */
export function measureOfQuery(query: Query, content: Pick<Content, 'sizes'>): AskedMeasure | null {
  const text = one(query, 'measure')?.slice(0, 40);
  const unit = one(query, 'unit') === 'in' ? 'in' : 'mm';
  const of = one(query, 'of') === 'length' ? 'length' : 'wrist';
  if (text !== undefined && text.trim() !== '') return { text, unit, of };
  const first = content.sizes[0];
  return first ? { text: String(first.bodyMm), unit: 'mm', of: 'wrist' } : null;
}

/** The revision that a kit holder names (`?held=1`), or null. */
export function heldOfQuery(query: Query): number | null {
  const text = one(query, 'held') ?? '';
  return /^[1-9]\d{0,5}$/.test(text) ? Number(text) : null;
}

/** What an address names of the recording, as media fragments do (`?t=62.5`, `?t=01:02.5,01:20`); null where nothing is named. */
export function fragmentOfQuery(query: Query): Fragment | null {
  const named = readFragment(`t=${encodeURIComponent(one(query, 't') ?? '')}`);
  return named && named.startMs <= LONGEST_MS ? named : null;
}

/** Seconds for an address: `62.5`, `62`. */
export const secondsOf = (ms: number): string => String(ms / 1000);

/** A length for the eye: `165 mm`, `6.5 in`; inches to two places. */
export const formatMeasure = (mm: number, unit: MeasureUnit): string =>
  unit === 'mm'
    ? `${String(Math.round(mm * 10) / 10)} mm`
    : `${String(Math.round((mm / MM_PER_INCH) * 100) / 100)} in`;

/** A size as a heading names it: `medium (150 mm)`, or its measure alone where it has no name. */
export function sizeWords({ name, bodyMm }: Content['sizes'][number]): string {
  const measure = formatMeasure(bodyMm, 'mm');
  return name.trim() === '' ? measure : `${name.trim()} (${measure})`;
}
