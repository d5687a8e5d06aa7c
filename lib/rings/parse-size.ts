/**
 * Reads a size as people type it. The answer is millimetres and a text that
 * says its system, or a question: the same number means different wires in
 * different systems, so a bare number is never taken silently.
 */
import { failed, ok, type Result } from '#lib/result.ts';
import {
  formatGauge,
  GAUGE_SYSTEMS,
  type GaugeSystem,
  gaugeToMm,
  inchFractionToMm,
  MM_PER_INCH,
  toTenThousandths,
} from './gauges.ts';
import type { StatedSize } from './ring-kind.ts';

/** What the size is of; decides which answers to a bare number make sense. */
export type SizeOf = 'inner diameter' | 'wire' | 'length';

export type SizeFault =
  | { readonly code: 'size-empty' }
  | { readonly code: 'size-not-read'; readonly text: string }
  /** A number without its system; `choices` are what it can mean, likeliest first. */
  | { readonly code: 'size-needs-system'; readonly text: string; readonly choices: readonly StatedSize[] }
  | { readonly code: 'gauge-not-known'; readonly system: GaugeSystem; readonly number: number }
  | {
      readonly code: 'size-out-of-range';
      readonly mm: number;
      readonly leastMm: number;
      readonly mostMm: number;
    };

/** Widest sizes taken, mm: beyond any ring or body, and small enough to catch a slipped point. */
const RANGE: Readonly<Record<SizeOf, readonly [number, number]>> = {
  'inner diameter': [0.3, 300],
  wire: [0.05, 20],
  length: [0.01, 10_000],
};

/** The widest size that a bare number is offered as; keeps silly choices away. */
const LIKELY_MM: Readonly<Record<SizeOf, readonly [number, number]>> = {
  'inner diameter': [0.8, 80],
  wire: [0.2, 8],
  length: [1, 3_000],
};

const NUMBER = String.raw`(\d{1,6}(?:\.\d{1,6})?|\.\d{1,6})`;
const FRACTION = String.raw`(?:(\d{1,3})[\s-]+)?(\d{1,4})\s*/\s*(\d{1,4})`;
const INCH = String.raw`(?:in|ins|inch|inches|")\.?`;
const SYSTEM = String.raw`(s\.?w\.?g\.?|a\.?w\.?g\.?|b\s*&\s*s)`;
const GAUGE = String.raw`(?:no\.?|#)?\s*(\d{1,2}(?:/0)?|0{2,4})\s*(?:-?\s*(?:gauge|gage|ga|g)\.?)?`;

const VULGAR: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
  '⁄': '/',
};

function normalise(text: string): string {
  return text
    .replace(/[½¼¾⅛⅜⅝⅞⁄]/g, (sign) => (sign === '⁄' ? '/' : ` ${VULGAR[sign]}`))
    .replace(/[”“″]|''/g, '"')
    .replace(/[\s\u00a0\u202f]+/g, ' ')
    .replace(/(\d),(\d)/g, '$1.$2')
    .trim()
    .toLowerCase();
}

/** `1.2`, not `1.200000`; 4 decimals at most. */
const plain = (n: number): string => String(toTenThousandths(n));

const mmSize = (mm: number): StatedSize => ({ stated: `${plain(mm)} mm`, mm: toTenThousandths(mm) });
const inchSize = (inches: number): StatedSize => ({
  stated: `${String(Number(inches.toFixed(6)))} in`,
  mm: toTenThousandths(inches * MM_PER_INCH),
});

function fractionSize(whole: string | undefined, top: string, bottom: string): StatedSize | null {
  const w = Number(whole ?? 0);
  const n = Number(top);
  const d = Number(bottom);
  if (d === 0 || n === 0) return null;
  const written = `${w > 0 ? `${w} ` : ''}${n}/${d} in`;
  return { stated: written, mm: inchFractionToMm(w * d + n, d) };
}

function gaugeNumber(written: string): number {
  const zeros = /^(\d)\/0$/.exec(written);
  if (zeros) return 1 - Number(zeros[1]);
  return /^0+$/.test(written) ? 1 - written.length : Number(written);
}

function gaugeSize(system: GaugeSystem, written: string): Result<StatedSize, SizeFault> {
  const number = gaugeNumber(written);
  const mm = gaugeToMm(system, number);
  if (mm === null) return failed({ code: 'gauge-not-known', system, number });
  return ok({ stated: formatGauge(system, number), mm });
}

const systemOf = (written: string): GaugeSystem => (written.startsWith('s') ? 'SWG' : 'AWG');

function gaugeChoices(number: number): readonly StatedSize[] {
  return GAUGE_SYSTEMS.flatMap((system) => {
    const mm = gaugeToMm(system, number);
    return mm === null ? [] : [{ stated: formatGauge(system, number), mm }];
  });
}

function bareChoices(number: number, of: SizeOf): readonly StatedSize[] {
  const [least, most] = LIKELY_MM[of];
  const likely = (s: StatedSize): boolean => s.mm >= least && s.mm <= most;
  const gauges = of === 'wire' && Number.isInteger(number) && number >= 4 ? gaugeChoices(number) : [];
  return [...gauges, ...[mmSize(number), inchSize(number)].filter(likely)];
}

/**
 * Reads `18 SWG`, `18swg`, `SWG 18`, `4/0 AWG`, `1/4"`, `1 1/4 in`, `¼ in`,
 * `0.047 in`, `47 thou`, `6.35mm`, `6,35 mm`.
 *
 * Text without a system (`18`, `18 gauge`, `1/4`, `1.2`, and `47 mil`, which
 * is said of thousandths of an inch and of millimetres) is answered with
 * `size-needs-system` and what it can mean.
 *
 * @returns the millimetres to 4 decimals and the text to keep, or a fault.
 */
export function parseSize(text: string, of: SizeOf): Result<StatedSize, SizeFault> {
  const read = readSize(normalise(text), text, of);
  if (!read.ok) return read;
  const [leastMm, mostMm] = RANGE[of];
  const { mm } = read.value;
  if (mm < leastMm || mm > mostMm) return failed({ code: 'size-out-of-range', mm, leastMm, mostMm });
  return read;
}

/** What a pattern's groups say: a size, what the number could mean, or nothing sensible. */
type Reading = Result<StatedSize, SizeFault> | readonly StatedSize[] | null;
type Read = (groups: readonly (string | undefined)[], of: SizeOf) => Reading;

const asInches = ([whole, top = '', bottom = '']: readonly (string | undefined)[]): StatedSize | null =>
  fractionSize(whole, top, bottom);

/** Every way of writing a size; no text fits two of them. Those that end in a list ask. */
const WRITINGS: readonly (readonly [RegExp, Read])[] = [
  [
    new RegExp(`^${NUMBER}\\s*(mm|millimet(?:re|er)s?|cm|centimet(?:re|er)s?)\\.?$`),
    ([n, unit]) => ok(mmSize(Number(n) * (unit?.startsWith('c') ? 10 : 1))),
  ],
  [new RegExp(`^${NUMBER}\\s*${INCH}$`), ([n]) => ok(inchSize(Number(n)))],
  [new RegExp(`^${NUMBER}\\s*thou$`), ([n]) => ok(inchSize(Number(n) / 1000))],
  [
    new RegExp(`^${FRACTION}\\s*${INCH}$`),
    (groups) => {
      const size = asInches(groups);
      return size && ok(size);
    },
  ],
  [new RegExp(`^${GAUGE}\\s*${SYSTEM}$`), ([n = '', system = '']) => gaugeSize(systemOf(system), n)],
  [new RegExp(`^${SYSTEM}\\s*${GAUGE}$`), ([system = '', n = '']) => gaugeSize(systemOf(system), n)],
  [
    /^(?:(?:no\.?|#)\s*(\d{1,2})|(\d{1,2})\s*-?\s*(?:gauge|gage|ga|g)\.?)$/,
    ([a, b]) => gaugeChoices(Number(a ?? b)),
  ],
  [new RegExp(`^${NUMBER}\\s*mils?$`), ([n]) => [inchSize(Number(n) / 1000), mmSize(Number(n))]],
  [
    new RegExp(`^${FRACTION}$`),
    (groups) => {
      const size = asInches(groups);
      return size && [size];
    },
  ],
  [new RegExp(`^${NUMBER}$`), ([n], of) => bareChoices(Number(n), of)],
];

function readSize(typed: string, original: string, of: SizeOf): Result<StatedSize, SizeFault> {
  if (typed === '') return failed({ code: 'size-empty' });
  const text = original.trim();
  for (const [pattern, read] of WRITINGS) {
    const match = pattern.exec(typed);
    const reading = match && read(match.slice(1), of);
    if (!reading) continue;
    if ('ok' in reading) return reading;
    if (reading.length > 0) return failed({ code: 'size-needs-system', text, choices: reading });
  }
  return failed({ code: 'size-not-read', text });
}

/** `18 SWG (1.2192 mm)`; a size stated in mm is not said twice. */
export const formatSize = (size: StatedSize): string =>
  /\bmm$/.test(size.stated) ? size.stated : `${size.stated} (${plain(size.mm)} mm)`;

/** Whether a stated text names its system; sizes brought in from elsewhere may not. */
export const namesSystem = (stated: string): boolean => /(mm|in|swg|awg)$/i.test(stated.trim());
