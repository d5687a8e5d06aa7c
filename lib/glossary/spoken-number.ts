/**
 * Reads numbers as they are said or as a recogniser writes them: `eighteen`,
 * `one point two`, `eleven sixty-fourths`, `three quarters`, `six and a half`,
 * `18`, `1.2`, `11/64`. Numbers are taken from words; what they count is for
 * others to say.
 */
import { numberWordValue } from './number-words.ts';

/** A word, figure or sign of a text and where it stands. */
export interface Token {
  readonly word: string;
  readonly start: number;
  readonly end: number;
}

export interface SpokenNumber {
  readonly value: number;
  readonly kind: 'whole' | 'decimal' | 'fraction';
  /** As it is typed in figures: `18`, `1.2`, `11/64`, `1 1/4`. */
  readonly figures: string;
  /** Index of the token behind it. */
  readonly to: number;
}

const TOKEN = /\d+(?:[.,]\d+)?|\p{L}+(?:['’]\p{L}+)*|[½¼¾⅛⅜⅝⅞/"″“”.,!?;:]/gu;

/** Words, figures and the signs that mean something; small letters. A hyphen parts words. */
export const tokensOf = (text: string): readonly Token[] =>
  [...text.matchAll(TOKEN)].map((match) => ({
    word: match[0].toLowerCase().replaceAll('’', "'"),
    start: match.index,
    end: match.index + match[0].length,
  }));

const VULGAR: Readonly<Record<string, readonly [number, number]>> = {
  '½': [1, 2],
  '¼': [1, 4],
  '¾': [3, 4],
  '⅛': [1, 8],
  '⅜': [3, 8],
  '⅝': [5, 8],
  '⅞': [7, 8],
};

/** Words that part a whole, with how many parts it has. */
const PARTS: ReadonlyMap<string, number> = new Map(
  [
    ['half', 2],
    ['third', 3],
    ['quarter', 4],
    ['fourth', 4],
    ['fifth', 5],
    ['sixth', 6],
    ['eighth', 8],
    ['tenth', 10],
    ['twelfth', 12],
    ['sixteenth', 16],
    ['hundredth', 100],
    ['thousandth', 1000],
  ].flatMap(([word, parts]) => [
    [`${word}`, Number(parts)],
    [word === 'half' ? 'halves' : `${word}s`, Number(parts)],
  ]),
);
/** Parts of two words: `thirty-seconds`, `sixty-fourths`. */
const LONG_PARTS: Readonly<Record<string, number>> = {
  'thirty second': 32,
  'thirty seconds': 32,
  'sixty fourth': 64,
  'sixty fourths': 64,
};

type Tokens = readonly Token[];
const wordAt = (tokens: Tokens, at: number): string => tokens[at]?.word ?? '';

/** The number that begins at a token, or null. */
export function readNumber(tokens: Tokens, at: number): SpokenNumber | null {
  const vulgar = VULGAR[wordAt(tokens, at)];
  if (vulgar) return fraction(0, vulgar[0], vulgar[1], at + 1);
  if (/^\d/.test(wordAt(tokens, at))) return readFigures(tokens, at);
  return readArticlePart(tokens, at) ?? readWords(tokens, at);
}

const whole = (value: number, to: number): SpokenNumber => ({
  value,
  kind: 'whole',
  figures: String(value),
  to,
});

function fraction(wholes: number, top: number, bottom: number, to: number): SpokenNumber {
  return {
    value: wholes + top / bottom,
    kind: 'fraction',
    figures: `${wholes > 0 ? `${wholes} ` : ''}${top}/${bottom}`,
    to,
  };
}

function readFigures(tokens: Tokens, at: number): SpokenNumber | null {
  const text = wordAt(tokens, at).replace(',', '.');
  const value = Number(text);
  if (text.includes('.')) return { value, kind: 'decimal', figures: text, to: at + 1 };
  if (wordAt(tokens, at + 1) === '/' && /^\d+$/.test(wordAt(tokens, at + 2)))
    return fraction(0, value, Number(wordAt(tokens, at + 2)) || 1, at + 3);
  const vulgar = VULGAR[wordAt(tokens, at + 1)];
  if (vulgar) return fraction(value, vulgar[0], vulgar[1], at + 2);
  if (
    /^\d+$/.test(wordAt(tokens, at + 1)) &&
    wordAt(tokens, at + 2) === '/' &&
    /^\d+$/.test(wordAt(tokens, at + 3))
  )
    return fraction(value, Number(wordAt(tokens, at + 1)), Number(wordAt(tokens, at + 3)) || 1, at + 4);
  return withParts(tokens, value, at + 1);
}

/** `a half`, `a quarter`, `half`. */
function readArticlePart(tokens: Tokens, at: number): SpokenNumber | null {
  const first = wordAt(tokens, at);
  const place = first === 'a' || first === 'an' ? at + 1 : first === 'half' ? at : -1;
  if (place < 0) return first === 'quarter' ? fraction(0, 1, 4, at + 1) : null;
  const parts = PARTS.get(wordAt(tokens, place));
  if (parts !== undefined) return fraction(0, 1, parts, place + 1);
  if (wordAt(tokens, place) === 'hundred') return readWords(tokens, place);
  return null;
}

function readWords(tokens: Tokens, at: number): SpokenNumber | null {
  const read = readWhole(tokens, at);
  if (!read) return readPoint(tokens, at, 0);
  return readPoint(tokens, read.to, read.value) ?? withParts(tokens, read.value, read.to);
}

/** A whole number in words; ten to nineteen and single figures end it. */
function readWhole(tokens: Tokens, at: number): { readonly value: number; readonly to: number } | null {
  let [total, part, to] = [0, 0, at];
  let last = Number.POSITIVE_INFINITY;
  for (;;) {
    if (joinsHundreds(tokens, to, last)) to += 1;
    const value = to === at && wordAt(tokens, to) === 'oh' ? undefined : numberWordValue(wordAt(tokens, to));
    if (value === undefined) break;
    if (value === 1000) {
      total += (part || 1) * 1000;
      part = 0;
    } else if (value === 100) part = (part || 1) * 100;
    else if (to === at || mayFollow(value, last)) part += value;
    else break;
    last = value;
    to += 1;
  }
  return to === at ? null : { value: total + part, to };
}

/** The `and` of `two hundred and ten`. */
function joinsHundreds(tokens: Tokens, at: number, last: number): boolean {
  const follows = numberWordValue(wordAt(tokens, at + 1));
  const hundreds = last === 100 || last === 1000;
  return wordAt(tokens, at) === 'and' && hundreds && follows !== undefined && follows < 100;
}

/** `four` behind `forty`, anything behind `hundred`. */
const mayFollow = (value: number, last: number): boolean =>
  last >= 100 || (last >= 20 && value < 10 && value > 0);

/** `point two five` behind a whole number, or alone. */
function readPoint(tokens: Tokens, at: number, wholes: number): SpokenNumber | null {
  if (wordAt(tokens, at) !== 'point') return null;
  let digits = '';
  let to = at + 1;
  for (; digits.length < 4; to += 1) {
    const word = wordAt(tokens, to);
    const value = /^\d$/.test(word) ? Number(word) : numberWordValue(word);
    if (value === undefined || value > 9) break;
    digits += value;
  }
  const teens = numberWordValue(wordAt(tokens, to));
  if (digits === '' && teens !== undefined && teens < 100) {
    digits = String(teens);
    to += 1;
  }
  if (digits === '') return null;
  const figures = `${wholes}.${digits}`;
  return { value: Number(figures), kind: 'decimal', figures, to };
}

/** `eleven sixty-fourths`, `three quarters`, `six and a half`, or the whole number itself. */
function withParts(tokens: Tokens, value: number, at: number): SpokenNumber {
  const long = LONG_PARTS[`${wordAt(tokens, at)} ${wordAt(tokens, at + 1)}`];
  if (long !== undefined) return fraction(0, value, long, at + 2);
  const parts = PARTS.get(wordAt(tokens, at));
  if (parts !== undefined && value < parts) return fraction(0, value, parts, at + 1);
  if (wordAt(tokens, at) === 'and') {
    const more = readNumber(tokens, at + 1);
    if (more?.kind === 'fraction' && more.value < 1) {
      const [top = '1', bottom = '2'] = more.figures.split('/');
      return fraction(value, Number(top), Number(bottom), more.to);
    }
  }
  return whole(value, at);
}
