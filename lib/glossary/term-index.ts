/**
 * Finds the places of a text that sound like one of many terms. Every word of
 * the text may begin one, so what is nothing like it has to be told at once:
 * first by the pairs of consonants that follow each other (a handful of bits
 * for each place and each term), and only then sound by sound.
 */
import {
  CONSONANT_CLASSES,
  consonantClass,
  GAP,
  SOUND_COUNT,
  type Sounds,
  SUBSTITUTION,
} from './phonemes.ts';

/** A way of saying a term. */
export interface Entry {
  /** Index of the term in the glossary. */
  readonly term: number;
  /** What is written where it is taken. */
  readonly written: string;
  readonly words: readonly string[];
  readonly sounds: Sounds;
}

/** A place that sounds like an entry: the words up to, not including, `to`. */
export interface Hit {
  readonly entry: number;
  readonly to: number;
  /** Cost of the difference in sound; 0 for the same sounds. */
  readonly cost: number;
}

export interface TermIndex {
  readonly entries: readonly Entry[];
  /** Places that begin at the word `from` and end where a word ends; `widest` is the share of a term's sounds that may differ. */
  readonly hitsAt: (text: SoundedText, from: number, widest: number) => readonly Hit[];
}

/** A text as one run of sounds, with where each word begins; one more place for the end. */
export interface SoundedText {
  readonly sounds: Uint8Array;
  readonly begins: Int32Array;
  /** Index of the word that ends just before this sound, plus one; 0 where none does. */
  readonly endsAt: Int32Array;
}

/** Longest entry, in sounds; longer ones are cut. */
const LONGEST = 48;
/** More sounds than a term has that a place may have. */
const OVER = 4;
const FAR = 1e6;

/** Sounds listened to ahead, for terms up to these lengths. */
const TIERS = [5, 6, 7, 8, 9, 10, 12, 14, 17, 22, LONGEST] as const;
const HEARD_AHEAD = TIERS.map((most) => most + OVER);
/** Share of a term's pairs of consonants that has to be there. */
const PAIRS_NEEDED = 0.5;

/** Sounds of words one after another. */
export function soundText(words: readonly { readonly sounds: Sounds }[]): SoundedText {
  const total = words.reduce((sum, word) => sum + word.sounds.length, 0);
  const sounds = new Uint8Array(total);
  const begins = new Int32Array(words.length + 1);
  const endsAt = new Int32Array(total + 1);
  let at = 0;
  words.forEach((word, index) => {
    begins[index] = at;
    sounds.set(word.sounds, at);
    at += word.sounds.length;
    endsAt[at] = index + 1;
  });
  begins[words.length] = at;
  return { sounds, begins, endsAt };
}

/**
 * Bits of the pairs of consonants that follow each other from a place on, as
 * they stand once each of `ends` sounds were heard.
 * @param apart whether a pair may have one consonant between
 */
function pairBits(
  sounds: ArrayLike<number>,
  from: number,
  ends: readonly number[],
  apart: boolean,
  low: Int32Array,
  high: Int32Array,
): void {
  const bits: [number, number] = [0, 0];
  let [last, former] = [-1, -1];
  let at = from;
  for (let tier = 0; tier < ends.length; tier += 1) {
    const end = Math.min(sounds.length, from + (ends[tier] as number));
    for (; at < end; at += 1) {
      const now = consonantClass(sounds[at] as number);
      if (now < 0) continue;
      addPair(bits, last, now);
      if (apart) addPair(bits, former, now);
      former = last;
      last = now;
    }
    [low[tier], high[tier]] = bits;
  }
}

function addPair(bits: [number, number], first: number, second: number): void {
  if (first < 0) return;
  const pair = first * CONSONANT_CLASSES + second;
  if (pair < 32) bits[0] |= 1 << pair;
  else bits[1] |= 1 << (pair - 32);
}

/** Bits of the first few consonants of a stretch. */
function firstBits(sounds: ArrayLike<number>, from: number, to: number, count: number): number {
  let bits = 0;
  let seen = 0;
  for (let at = from; at < to && seen < count; at += 1) {
    const now = consonantClass(sounds[at] as number);
    if (now < 0) continue;
    bits |= 1 << now;
    seen += 1;
  }
  return bits;
}

function bitCount(bits: number): number {
  let n = bits - ((bits >>> 1) & 0x55555555);
  n = (n & 0x33333333) + ((n >>> 2) & 0x33333333);
  return (((n + (n >>> 4)) & 0x0f0f0f0f) * 0x01010101) >>> 24;
}

export function buildIndex(given: readonly Entry[]): TermIndex {
  const entries = given.map((entry) => ({ ...entry, sounds: entry.sounds.slice(0, LONGEST) }));
  const count = entries.length;
  const pairsLow = new Int32Array(count);
  const pairsHigh = new Int32Array(count);
  const needed = new Uint8Array(count);
  const firsts = new Uint8Array(count);
  const tier = new Uint8Array(count);
  const sounds = entries.map((entry) => Uint8Array.from(entry.sounds));
  sounds.forEach((run, at) => {
    pairBits(run, 0, [run.length], false, pairsLow.subarray(at), pairsHigh.subarray(at));
    needed[at] = Math.ceil(
      PAIRS_NEEDED * (bitCount(pairsLow[at] as number) + bitCount(pairsHigh[at] as number)),
    );
    firsts[at] = firstBits(run, 0, run.length, 2);
    tier[at] = TIERS.findIndex((most) => run.length <= most);
  });

  // Two rows of costs, kept from call to call: this is the inner loop of the whole search.
  let row = new Float64Array(LONGEST + OVER + 1);
  let former = new Float64Array(LONGEST + OVER + 1);
  const low = new Int32Array(TIERS.length);
  const high = new Int32Array(TIERS.length);

  /** Lengths of the place that may still come to something, after the sounds of a term looked at so far. */
  let liveFrom = 0;
  let liveTo = 0;

  /** Costs of one more sound of a term, against those lengths that may still come to something within `most`. */
  const addSound = (heard: Uint8Array, start: number, sound: number, length: number, most: number): void => {
    const gap = GAP[sound] as number;
    const costs = sound * SOUND_COUNT;
    let from = -1;
    let to = -1;
    let before = FAR;
    let at = liveFrom;
    for (; at <= length; at += 1) {
      // Beyond what lives only sounds too many can follow.
      if (at > liveTo + 1 && before > most) break;
      let cost = at <= liveTo ? (former[at] as number) + gap : FAR;
      if (at > 0) {
        const there = heard[start + at - 1] as number;
        if (at > liveFrom && at <= liveTo + 1) {
          const met = (former[at - 1] as number) + (SUBSTITUTION[costs + there] as number);
          if (met < cost) cost = met;
        }
        const extra = before + (GAP[there] as number);
        if (extra < cost) cost = extra;
      }
      row[at] = cost;
      before = cost;
      if (cost <= most) {
        if (from < 0) from = at;
        to = at;
      }
    }
    liveFrom = from;
    liveTo = to;
  };

  const compare = (text: SoundedText, from: number, entry: number, widest: number, hits: Hit[]): void => {
    const run = sounds[entry] as Uint8Array;
    const start = text.begins[from] as number;
    const length = Math.min(run.length + OVER, text.sounds.length - start);
    const bound = widest * (run.length + 1);
    // What is far off early is hardly ever near in the end.
    const early = 0.25 + bound * 0.45;
    const each = (bound * 0.55) / run.length;
    former[0] = 0;
    liveFrom = 0;
    liveTo = 0;
    for (let at = 1; at <= Math.min(length, OVER); at += 1) {
      former[at] = (former[at - 1] as number) + (GAP[text.sounds[start + at - 1] as number] as number);
      if ((former[at] as number) > early) break;
      liveTo = at;
    }
    for (let said = 1; said <= run.length; said += 1) {
      addSound(text.sounds, start, run[said - 1] as number, length, early + each * said);
      if (liveFrom < 0) return;
      const spare = row;
      row = former;
      former = spare;
    }
    for (let at = Math.max(1, liveFrom); at <= liveTo; at += 1) {
      const to = text.endsAt[start + at] as number;
      const cost = former[at] as number;
      if (to > from && cost <= widest * Math.max(run.length, at)) hits.push({ entry, to, cost });
    }
  };

  return {
    entries,
    hitsAt(text, from, widest) {
      const start = text.begins[from] as number;
      const { length } = text.sounds;
      pairBits(text.sounds, start, HEARD_AHEAD, true, low, high);
      const begun = firstBits(text.sounds, start, length, 3);
      const hits: Hit[] = [];
      for (let entry = 0; entry < count; entry += 1) {
        if (firsts[entry] !== 0 && ((firsts[entry] as number) & begun) === 0) continue;
        const t = tier[entry] as number;
        const there =
          bitCount((pairsLow[entry] as number) & (low[t] as number)) +
          bitCount((pairsHigh[entry] as number) & (high[t] as number));
        if (there >= (needed[entry] as number)) compare(text, from, entry, widest, hits);
      }
      return hits;
    },
  };
}
