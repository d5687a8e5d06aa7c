/**
 * Whether a place that sounds like a term is believed to be one. The less it
 * differs the better; how much may differ grows with the length of the term,
 * with words that no dictionary knows, and with talk of the trade around it,
 * and shrinks for everyday words. The numbers were set on mishearings and on
 * speech about other things that tests/glossary names, not on the pairs that
 * they are judged by.
 */
import { isCommonWord } from './common-words.ts';
import { numberWordValue } from './number-words.ts';
import { type Sounds, soundDistance } from './phonemes.ts';
import type { SpokenWord } from './spoken-word.ts';

interface Said {
  readonly words: readonly string[];
  readonly sounds: Sounds;
}

/** Little words that a term seldom begins or ends with. */
const EDGES = new Set(
  'and is of i to in it or for at on if was be that as s so but with we you they do'.split(' '),
);
const isNumber = (word: string): boolean => /^\d+$/.test(word) || numberWordValue(word) !== undefined;

/** The largest share of differing sounds that could be believed at all. */
export const widestAt = (talk: number): number => 0.23 + (talk > 0 ? 0.02 : 0.08) * talk;

/**
 * Room left under the limit; below 0 the place is not believed.
 * @param distance share of the sounds that differ
 * @param talk from -1 (something else is talked of) to 1 (the trade is)
 */
export function roomFor(here: readonly SpokenWord[], entry: Said, distance: number, talk: number): number {
  if (isSameStem(here, entry.words) || (saysNumber(here) && !entry.words.some(isNumber))) return -1;
  if (isLetters(entry.words)) return 0.05 + 0.05 * talk - distance;
  if (entry.words.every((word) => isNumber(word) || word === 'in')) return linksRoom(here, distance, talk);
  const rest = restOf(here, entry);
  if (rest !== null) return restRoom(rest, talk, distance);
  return limitFor(here, entry, talk) - distance;
}

/** A number of more than two, in words or figures: hardly ever a piece of a misheard name. */
const saysNumber = (here: readonly SpokenWord[]): boolean =>
  here.some(({ word }) => (/^\d/.test(word) ? Number(word) : (numberWordValue(word) ?? 0)) > 2);

/** `four and one`: without talk of weaves, two numbers have to be said very plainly. */
function linksRoom(here: readonly SpokenWord[], distance: number, talk: number): number {
  const saysNumbers = isNumber(here[0]?.word ?? '') && isNumber(here.at(-1)?.word ?? '');
  return (saysNumbers ? 0.075 + 0.05 * talk : 0.02) - distance;
}

function limitFor(here: readonly SpokenWord[], entry: Said, talk: number): number {
  const count = entry.sounds.length;
  let limit = count >= 12 ? 0.185 : count >= 9 ? 0.17 : count >= 7 ? 0.15 : 0.12;
  if (here.some(({ known }) => !known)) limit += 0.05;
  if (here.every(({ word }) => isCommonWord(word))) limit -= 0.05;
  if (here.length === 1 && here[0]?.known && count < 9) limit -= 0.02;
  if (EDGES.has(here[0]?.word ?? '') || EDGES.has(here.at(-1)?.word ?? '')) limit -= 0.04;
  return limit + (talk > 0 ? 0.025 : 0.08) * talk;
}

const isLetters = (words: readonly string[]): boolean => words.length === 1 && (words[0]?.length ?? 0) <= 3;

/** `connected` is no mishearing of `connector`, and `starting` none of `starting unit`. */
function isSameStem(here: readonly SpokenWord[], written: readonly string[]): boolean {
  const [one, first] = [here[0], written[0]];
  if (here.length !== 1 || !one?.known || !first) return false;
  const stem = Math.max(5, Math.ceil(first.length * 0.6));
  return (
    one.word.length >= stem && first.length >= 5 && one.word.slice(0, stem - 1) === first.slice(0, stem - 1)
  );
}

interface Rest {
  /** Share of the sounds of the words in question that differ. */
  readonly distance: number;
  readonly sounds: number;
  /** Whether as many words were heard as were wanted. */
  readonly asMany: boolean;
  readonly common: boolean;
  readonly strange: boolean;
}

/** Where words of the term stand there rightly, only the others are in question; null where none does. */
function restOf(here: readonly SpokenWord[], entry: Said): Rest | null {
  const heard = here.map(({ word }) => word);
  let front = 0;
  while (front < heard.length && front < entry.words.length && heard[front] === entry.words[front])
    front += 1;
  let back = 0;
  while (
    back < heard.length - front &&
    back < entry.words.length - front &&
    heard[heard.length - 1 - back] === entry.words[entry.words.length - 1 - back]
  )
    back += 1;
  const same = [...heard.slice(0, front), ...heard.slice(heard.length - back)];
  if (!same.some((word) => word.length > 2)) return null;
  const others = here.slice(front, here.length - back);
  const said = others.flatMap(({ sounds }) => [...sounds]);
  const from = here.slice(0, front).reduce((sum, { sounds }) => sum + sounds.length, 0);
  const to = here.slice(here.length - back).reduce((sum, { sounds }) => sum + sounds.length, 0);
  const wanted = entry.sounds.slice(from, back === 0 ? undefined : entry.sounds.length - to);
  const longest = Math.max(said.length, wanted.length);
  return {
    distance:
      longest === 0 || said.length === 0 || wanted.length === 0 ? 1 : soundDistance(said, wanted) / longest,
    sounds: wanted.length,
    asMany: heard.length === entry.words.length,
    common: others.every(({ word }) => isCommonWord(word)),
    strange: others.some(({ known }) => !known),
  };
}

/** Room by the words in question alone, told on the scale of the whole. */
function restRoom(rest: Rest, talk: number, distance: number): number {
  let limit = 0.29 - (rest.asMany ? 0 : 0.05);
  if (rest.common) limit -= 0.1;
  if (rest.strange) limit += 0.06;
  limit += (talk > 0 ? 0.03 : 0.1) * talk;
  return rest.distance > limit ? -1 : Math.max(0.01, 0.17 - distance);
}
