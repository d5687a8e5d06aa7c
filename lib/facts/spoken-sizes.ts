/** Sizes that are said aloud: gauges with their system, aspect ratios, lengths of wire and opening. */
import type { SpokenNumber, Token } from '#lib/glossary/spoken-number.ts';
import { subjectOf } from './rings-named.ts';
import { factSaid, type SpokenFact, type Telling, wordAt } from './spoken-fact.ts';

const MM_PER = { mm: 1, cm: 10, in: 25.4 } as const;
const UNITS: ReadonlyMap<string, keyof typeof MM_PER> = new Map([
  ...['mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters', 'mil', 'mils'].map(
    (w) => [w, 'mm'] as const,
  ),
  ...['cm', 'centimetre', 'centimetres', 'centimeter', 'centimeters'].map((w) => [w, 'cm'] as const),
  ...['inch', 'inches', '"', '″', '”'].map((w) => [w, 'in'] as const),
]);
const GAUGE = new Set(['gauge', 'gauges', 'gage', 'ga']);
const INNER = new Set(['inside', 'inner', 'internal', 'id']);
const WIRE = new Set(['wire', 'thick', 'gauge', 'gage']);
const ELSEWISE = new Set([
  'outside',
  'outer',
  'wrist',
  'long',
  'length',
  'measure',
  'measures',
  'wide',
  'repeats',
  'cord',
]);
/** The size that a number tells, if it tells one. */
export const sizeFact = (telling: Telling, at: number, number: SpokenNumber): SpokenFact | null =>
  gaugeFact(telling, at, number) ?? ratioFact(telling, at, number) ?? lengthFact(telling, at, number);

function gaugeFact(telling: Telling, at: number, number: SpokenNumber): SpokenFact | null {
  const { tokens } = telling;
  const after = wordAt(tokens, number.to);
  const letters = systemOf([after, wordAt(tokens, number.to + 1), wordAt(tokens, number.to + 2)]);
  if (number.kind !== 'whole' || !(GAUGE.has(after) || letters)) return null;
  const from = telling.onward.slice(at, at + 22);
  return factSaid(telling, 'wire', number.value, `${number.figures} gauge`, {
    system: letters ?? systemOf(from),
    ringKinds: subjectOf(telling, number.to),
  });
}

/** The system that words name: `SWG`, `s w g`, `British`, `American`; null where none. */
function systemOf(said: readonly string[]): 'SWG' | 'AWG' | null {
  const text = ` ${said.join(' ')} `;
  if (/ (swg|s w g|british|imperial) /.test(text) || / standard wire /.test(text)) return 'SWG';
  if (/ (awg|a w g|american) /.test(text)) return 'AWG';
  return null;
}

function ratioFact(telling: Telling, at: number, number: SpokenNumber): SpokenFact | null {
  const before = telling.tokens.slice(Math.max(0, at - 6), at).map(({ word }) => word);
  const isRatio = before.includes('ratio') || (before.at(-1) === 'of' && before.at(-2) === 'ar');
  return isRatio && number.value >= 1.5 && number.value < 15
    ? factSaid(telling, 'aspect ratio', number.value, number.figures)
    : null;
}

function lengthFact(telling: Telling, at: number, number: SpokenNumber): SpokenFact | null {
  const { tokens } = telling;
  const skipped = wordAt(tokens, number.to) === 'of' ? 2 : 0;
  const unit = UNITS.get(wordAt(tokens, number.to + skipped)) ?? null;
  if (unit === null && number.kind === 'whole') return null;
  const to = number.to + (unit === null ? 0 : skipped + 1);
  const role = roleOf(tokens, at, to);
  if (role === null) return null;
  const mm = unit === null ? number.value : number.value * MM_PER[unit];
  if (mm > (role === 'wire' ? 8 : 60)) return null;
  return factSaid(telling, role, mm, unit === null ? number.figures : `${number.figures} ${unit}`, {
    system: unit === null ? null : unit === 'in' ? 'in' : 'mm',
    ringKinds: subjectOf(telling, to),
  });
}

/** What a length is of, by the nearest word that tells; null where something else is measured. */
function roleOf(tokens: readonly Token[], from: number, to: number): 'wire' | 'inner diameter' | null {
  let best: { readonly role: 'wire' | 'inner diameter' | null; readonly away: number } | null = null;
  tokens.forEach(({ word }, at) => {
    const role = INNER.has(word)
      ? 'inner diameter'
      : WIRE.has(word)
        ? 'wire'
        : ELSEWISE.has(word)
          ? null
          : undefined;
    if (role === undefined) return;
    // What stands behind a number belongs to it more than what stands before.
    const between = tokens.slice(Math.min(at, to), Math.max(at, from));
    const commas = between.filter(({ word: sign }) => sign === ',').length;
    const away = (at >= to ? at - to : (from - at) * 1.2 + 0.5) + 3 * commas;
    if (away <= 8 && (best === null || away < best.away)) best = { role, away };
  });
  return (best as { readonly role: 'wire' | 'inner diameter' | null } | null)?.role ?? null;
}
