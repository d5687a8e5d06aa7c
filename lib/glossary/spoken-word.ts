/**
 * A text as a run of words with their sounds and their places. A hyphen parts
 * words, since a recogniser that hears `twist-tie` and one that hears `twist
 * die` should meet; figures are taken as they are said.
 */
import { soundsByRule } from './letter-sounds.ts';
import { sayNumber } from './number-words.ts';
import { isSwallowed, type Sounds, soundsOf } from './phonemes.ts';

/** ARPAbet of a word in small letters, or undefined where it is not in the dictionary. */
export type LookUp = (word: string) => string | undefined;

export interface SpokenWord {
  /** In small letters, without signs around it. */
  readonly word: string;
  readonly sounds: Sounds;
  /** Whether a dictionary knows it. */
  readonly known: boolean;
  /** Where it stands in the text. */
  readonly start: number;
  readonly end: number;
}

/** Words as a recogniser writes them: letters with an apostrophe inside, or figures. */
const WORD = /\p{L}+(?:['’]\p{L}+)*|\d+/gu;

export type Pronounce = (text: string) => readonly SpokenWord[];

/** A pronouncing ear over a dictionary; every word is looked up once. */
export function createPronounce(lookUp: LookUp): Pronounce {
  const heard = new Map<string, { readonly sounds: Sounds; readonly known: boolean }>();
  const hear = (word: string) => {
    const before = heard.get(word);
    if (before) return before;
    const said = saidAs(word).split(' ');
    const parts = said.map((part) => inDictionary(lookUp, part));
    const fresh = {
      sounds: parts.flatMap((part, at) => soundsOf(part ?? soundsByRule(said[at] ?? ''))),
      known: parts.every((part) => part !== undefined),
    };
    heard.set(word, fresh);
    return fresh;
  };
  return (text) =>
    [...text.matchAll(WORD)].map((match) => {
      const written = match[0].replaceAll('’', "'");
      const word = written.toLowerCase();
      const heardAs = /^\p{Lu}{2,4}$/u.test(written) ? written : word;
      return { word, ...hear(heardAs), start: match.index, end: match.index + match[0].length };
    });
}

/** Figures as a number, a short run of capitals letter by letter, else the word. */
function saidAs(word: string): string {
  if (/^\d/.test(word)) return sayNumber(Number(word.slice(0, 15)));
  return /^\p{Lu}{2,4}$/u.test(word) ? [...word.toLowerCase()].join(' ') : word;
}

/** British spellings that the dictionary has in the American way. */
const RESPELLINGS: readonly (readonly [RegExp, string])[] = [
  [/is(e|ed|es|er|ing|ation)$/, 'iz$1'],
  [/our(ed|s|ing)?$/, 'or$1'],
  [/tre(s?)$/, 'ter$1'],
  [/ll(ed|ing|ers?)$/, 'l$1'],
];

/** The word itself, or one that it is made from by an ending that English puts on anything. */
function inDictionary(lookUp: LookUp, word: string): string | undefined {
  const whole = lookUp(word);
  if (whole !== undefined) return whole;
  for (const [british, american] of RESPELLINGS) {
    const found = british.test(word) ? lookUp(word.replace(british, american)) : undefined;
    if (found !== undefined) return found;
  }
  const bare = word.replace(/'s$/, '');
  if (bare !== word) return plural(lookUp(bare));
  if (/[^s]s$/.test(word)) return plural(lookUp(word.slice(0, -1)));
  return compound(lookUp, word);
}

/** `springback` as `spring` and `back`. */
function compound(lookUp: LookUp, word: string): string | undefined {
  for (let at = word.length - 3; at >= 4; at -= 1) {
    const [one, other] = [lookUp(word.slice(0, at)), lookUp(word.slice(at))];
    if (one !== undefined && other !== undefined) return `${one} ${other}`;
  }
  return undefined;
}

const plural = (said: string | undefined): string | undefined => {
  if (said === undefined) return undefined;
  if (/ (S|Z|SH|ZH|CH|JH)$/.test(said)) return `${said} AH0 Z`;
  return / (P|T|K|F|TH)$/.test(said) ? `${said} S` : `${said} Z`;
};

/** Words as they are said in one breath: what is swallowed between two of them is left out. */
export function inOneBreath<T extends SpokenWord>(words: readonly T[]): readonly T[] {
  return words.map((word, at) =>
    isSwallowed(words[at - 1]?.sounds.at(-1), word.sounds[0]) && word.sounds.length > 1
      ? { ...word, sounds: word.sounds.slice(1) }
      : word,
  );
}
