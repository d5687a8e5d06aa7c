/**
 * Facts that are said aloud: sizes, gauges, counts, ratios, with the moment
 * and the words that they were said in. Read from a transcript by the words
 * around a number; what is not plainly said is not guessed.
 */
import { type Sentence, sentencesOf } from '#lib/chapters/sentences.ts';
import { readNumber, type SpokenNumber, type Token, tokensOf } from '#lib/glossary/spoken-number.ts';
import type { Content } from '#lib/lesson/content.ts';
import type { Cue } from '#lib/transcript/cue.ts';
import { describesRings, kindsMeant, strangeWords } from './ring-talk.ts';

export const FACT_KINDS = [
  'wire',
  'inner diameter',
  'aspect ratio',
  'rings',
  'repeats',
  'share prepared',
  'metal or colour',
] as const;
export type FactKind = (typeof FACT_KINDS)[number];

export interface SpokenFact {
  /** The same for the same words in the same sentence. */
  readonly id: string;
  readonly kind: FactKind;
  readonly cueId: string;
  readonly startMs: number;
  readonly endMs: number;
  /** The sentence that it is said in. */
  readonly quote: string;
  /** The number; millimetres where a length was said with its unit. */
  readonly value: number;
  /** As it would be typed: `18 gauge`, `11/64 in`, `44`. */
  readonly stated: string;
  /** System of a gauge, or the unit of a length; null where none was said. */
  readonly system: 'SWG' | 'AWG' | 'mm' | 'in' | null;
  /** Ids of the ring kinds that it may be said of. */
  readonly ringKinds: readonly string[];
  readonly prepared: 'opened' | 'closed' | null;
  /** Name of the size that it is said for, or null. */
  readonly size: string | null;
  /** Whether it is said of one repeat. */
  readonly ofRepeat: boolean;
}

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
const OPENED = new Set(['open', 'opened']);
const CLOSED = new Set(['closed', 'close']);
const RING_NOUNS = new Set(['ring', 'rings', 'ones']);
const BETWEEN = new Set([
  'open',
  'opened',
  'closed',
  'jump',
  'more',
  'of',
  'the',
  'those',
  'these',
  'them',
  'other',
  'new',
]);
const POINTS_AT = new Set([
  'last',
  'first',
  'the',
  'these',
  'those',
  'both',
  'your',
  'next',
  'all',
  'previous',
]);
const NO_COUNT_AFTER = new Set(['one', 'ones', 'this', 'that', 'each', 'every', 'no', 'another', 'number']);

interface Telling {
  readonly sentence: Sentence;
  readonly tokens: readonly Token[];
  /** Words of this sentence and the next: a system is often said after the number. */
  readonly onward: readonly string[];
  readonly content: Pick<Content, 'ringKinds' | 'sizes' | 'chapters'>;
  /** Kinds spoken of, where the sentence itself names none. */
  readonly subject: readonly string[];
}

export function spokenFacts(
  cues: readonly Cue[],
  content: Pick<Content, 'ringKinds' | 'sizes' | 'chapters'>,
): readonly SpokenFact[] {
  const sentences = sentencesOf(cues);
  const facts: SpokenFact[] = [];
  let subject: readonly string[] = [];
  let subjectAt = -9;
  sentences.forEach((sentence, at) => {
    const tokens = tokensOf(sentence.text);
    const named = ringsNamed(tokens, content);
    if (named) {
      if (/\bsame (size|gauge|wire)\b/i.test(sentence.text))
        facts.push(...sameAgain(facts, subject, named, sentence));
      subject = named;
      subjectAt = at;
    }
    const next = sentences[at + 1];
    facts.push(
      ...factsOf({
        sentence,
        tokens,
        onward: [...tokens, ...tokensOf(next?.text ?? '')].map(({ word }) => word),
        content,
        subject: at - subjectAt <= 2 && subject.length > 0 ? subject : content.ringKinds.map(({ id }) => id),
      }),
    );
  });
  return facts;
}

/** Kinds that words name with describing words, first or last of several; or null. */
function ringsNamed(
  tokens: readonly Token[],
  { ringKinds }: Pick<Content, 'ringKinds'>,
  which: 'first' | 'last' = 'first',
): readonly string[] | null {
  let found: readonly string[] | null = null;
  for (let at = 0; at < tokens.length; at += 1) {
    if (!RING_NOUNS.has(tokens[at]?.word ?? '')) continue;
    const meant = kindsBefore(tokens, at, ringKinds);
    if (meant.length > 0) found = meant;
    if (meant.length > 0 && which === 'first') break;
  }
  return found;
}

/** Kinds that the words before a noun name: `large red`, `red and green`. */
function kindsBefore(
  tokens: readonly Token[],
  at: number,
  ringKinds: Content['ringKinds'],
): readonly string[] {
  const groups: string[][] = [[]];
  for (let back = at - 1; back >= Math.max(0, at - 6); back -= 1) {
    const word = wordAt(tokens, back);
    if (describesRings(word, ringKinds)) groups.at(-1)?.unshift(word);
    else if (word === 'and' || word === ',') groups.push([]);
    else if (!BETWEEN.has(word)) break;
  }
  return groups.flatMap((said) => (said.length > 0 ? kindsMeant(said, ringKinds) : []));
}

/** `the blue rings are the same size`: what was said of the former is said of these. */
const sameAgain = (
  facts: readonly SpokenFact[],
  former: readonly string[],
  now: readonly string[],
  sentence: Sentence,
): readonly SpokenFact[] =>
  facts
    .filter(
      ({ kind, ringKinds }) =>
        (kind === 'wire' || kind === 'inner diameter') && ringKinds.join() === former.join(),
    )
    .map((fact) => ({
      ...fact,
      id: `${sentence.cueId} ${sentence.startMs} same ${fact.kind} ${fact.stated}`,
      ringKinds: now,
      cueId: sentence.cueId,
      startMs: sentence.startMs,
      endMs: sentence.endMs,
      quote: sentence.text,
    }));

function factsOf(telling: Telling): readonly SpokenFact[] {
  const facts: SpokenFact[] = [];
  const { tokens } = telling;
  const share = preparedShare(telling);
  if (share) facts.push(share);
  facts.push(...strangeRings(telling));
  for (let at = 0; at < tokens.length; ) {
    const number = readNumber(tokens, at);
    const fact = number && factOf(telling, at, number);
    if (fact) facts.push(fact);
    at = Math.max(at + 1, number?.to ?? 0);
  }
  return facts;
}

function factOf(telling: Telling, at: number, number: SpokenNumber): SpokenFact | null {
  return (
    gaugeFact(telling, at, number) ??
    ratioFact(telling, at, number) ??
    lengthFact(telling, at, number) ??
    countFact(telling, at, number)
  );
}

function made(
  { sentence, content, subject }: Telling,
  kind: FactKind,
  value: number,
  stated: string,
  more: Partial<SpokenFact> = {},
): SpokenFact {
  return {
    id: `${sentence.cueId} ${sentence.startMs} ${kind} ${stated}`,
    kind,
    cueId: sentence.cueId,
    startMs: sentence.startMs,
    endMs: sentence.endMs,
    quote: sentence.text,
    value,
    stated,
    system: null,
    ringKinds: subject,
    prepared: null,
    size: sizeSaid(sentence.text, content.sizes),
    ofRepeat: isOfRepeat(sentence, content.chapters),
    ...more,
  };
}

const wordAt = (tokens: readonly Token[], at: number): string => tokens[at]?.word ?? '';

function gaugeFact(telling: Telling, at: number, number: SpokenNumber): SpokenFact | null {
  const { tokens } = telling;
  const after = wordAt(tokens, number.to);
  const letters = systemOf([after, wordAt(tokens, number.to + 1), wordAt(tokens, number.to + 2)]);
  if (number.kind !== 'whole' || !(GAUGE.has(after) || letters)) return null;
  const from = telling.onward.slice(at, at + 22);
  return made(telling, 'wire', number.value, `${number.figures} gauge`, {
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
    ? made(telling, 'aspect ratio', number.value, number.figures)
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
  return made(telling, role, mm, unit === null ? number.figures : `${number.figures} ${unit}`, {
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

/** Kinds named last before a number, or right behind it; else those that are spoken of. */
function subjectOf({ tokens, content, subject }: Telling, to: number): readonly string[] {
  return ringsNamed(tokens.slice(0, to + 4), content, 'last') ?? subject;
}

function countFact(telling: Telling, at: number, number: SpokenNumber): SpokenFact | null {
  const { tokens, content } = telling;
  if (number.kind !== 'whole' || number.value === 0 || NO_COUNT_AFTER.has(wordAt(tokens, at - 1)))
    return null;
  if (wordAt(tokens, number.to) === 'repeats' || wordAt(tokens, number.to) === 'repeat')
    return number.value > 1 ? made(telling, 'repeats', number.value, number.figures) : null;
  const said: string[] = [];
  let prepared: SpokenFact['prepared'] = null;
  let to = number.to;
  for (; to < number.to + 6; to += 1) {
    const word = wordAt(tokens, to);
    if (OPENED.has(word)) prepared = 'opened';
    else if (CLOSED.has(word)) prepared = 'closed';
    else if (describesRings(word, content.ringKinds)) said.push(word);
    else if (!BETWEEN.has(word)) break;
  }
  const isRings = RING_NOUNS.has(wordAt(tokens, to));
  // `four copper, and two blue`: no noun, but nothing else that is counted either.
  const ends = ['', '.', ',', 'and', ';', ':', '!'].includes(wordAt(tokens, to)) && said.length > 0;
  if (!isRings && !ends) return null;
  const ringKinds =
    said.length > 0 ? kindsMeant(said, content.ringKinds) : content.ringKinds.map(({ id }) => id);
  if (!isCount(telling, at, number.value)) return null;
  return made(telling, 'rings', number.value, number.figures, { prepared, ringKinds });
}

/** Whether rings are counted out; a few rings that are handled, or pointed at, are not. */
function isCount({ tokens, sentence, content }: Telling, at: number, value: number): boolean {
  if (POINTS_AT.has(wordAt(tokens, at - 1))) return false;
  if (sizeSaid(sentence.text, content.sizes) !== null) return true;
  return value >= 5 || /\b(needs?|takes|count(?:ed)?|requires?|repeat|unit|rings?:)/i.test(sentence.text);
}

/** `close half of them`: a share of all rings. */
function preparedShare(telling: Telling): SpokenFact | null {
  const match =
    /\b(open|close)(?:ed|d)?\s+half\b|\bhalf(?: of)?(?: the| them| your| of them)?(?: rings)?(?: are)? (open|close)/i.exec(
      telling.sentence.text,
    );
  if (!match) return null;
  const prepared = (match[1] ?? match[2] ?? '').toLowerCase() === 'open' ? 'opened' : 'closed';
  return made(telling, 'share prepared', 0.5, `half ${prepared}`, {
    prepared,
    ringKinds: telling.content.ringKinds.map(({ id }) => id),
  });
}

/** Rings of a metal or colour that the lesson does not have; in a variation others are meant on purpose. */
function strangeRings(telling: Telling): readonly SpokenFact[] {
  const { tokens, content, sentence } = telling;
  if (content.ringKinds.length === 0 || !MAKES.has(chapterKindAt(sentence, content.chapters) ?? 'materials'))
    return [];
  return tokens.flatMap(({ word }, at) => {
    if (!RING_NOUNS.has(word)) return [];
    const before = tokens.slice(Math.max(0, at - 2), at).map((token) => token.word);
    return strangeWords(before, content.ringKinds).map((strange) =>
      made(telling, 'metal or colour', 0, strange, { ringKinds: [] }),
    );
  });
}

const MAKES: ReadonlySet<string> = new Set(['materials', 'setup', 'repeat unit', 'finishing', 'clasp']);

const chapterKindAt = (sentence: Sentence, chapters: Content['chapters']): string | undefined =>
  chapters.filter(({ startMs }) => startMs <= sentence.startMs + 500).sort((a, b) => b.startMs - a.startMs)[0]
    ?.kind;

/** `for a medium wrist`, `the medium size`: the size that is spoken of. */
function sizeSaid(text: string, sizes: Content['sizes']): string | null {
  const said = sizes.find(({ name }) => {
    const plain = name.trim().replace(/[^\p{L}\d ]/gu, '');
    return (
      plain !== '' &&
      new RegExp(`\\b${plain}(?:-sized?)? (?:wrist|size|one|bracelet|length|ankle|neck)`, 'iu').test(text)
    );
  });
  return said?.name ?? null;
}

function isOfRepeat(sentence: Sentence, chapters: Content['chapters']): boolean {
  if (/\b(repeat|unit)s?\b/i.test(sentence.text)) return true;
  return chapterKindAt(sentence, chapters) === 'repeat unit';
}
