/** Counts of right and wrong suggestions on pairs, and of wrong ones on speech about something else. */
import { dictionary } from 'cmu-pronouncing-dictionary';
import { prepareGlossary } from '#lib/glossary/glossary.ts';
import { findMisheard } from '#lib/glossary/misheard.ts';
import { findNumberTraps } from '#lib/glossary/number-traps.ts';
import { createPronounce } from '#lib/glossary/spoken-word.ts';
import type { Suggestion } from '#lib/glossary/suggestion.ts';
import { TRADE_TERMS } from '#lib/glossary/trade-terms.ts';
import type { MisheardPair } from './misheard-held-out.ts';

const pronounce = createPronounce((word) => dictionary[word]);
const glossary = prepareGlossary(TRADE_TERMS, pronounce);

/** One cue a line; terms and numbers. */
export function misheardIn(...lines: readonly string[]): readonly Suggestion[] {
  const cues = lines.map((text, at) => ({ id: `${at}`, text, startMs: at * 3000, endMs: at * 3000 + 2900 }));
  return [...findMisheard(cues, glossary, pronounce), ...findNumberTraps(cues, new Set()).suggestions];
}

/** Sounds of a term. */
export const soundsIn = (text: string): number =>
  pronounce(text).reduce((sum, { sounds }) => sum + sounds.length, 0);

/** Texts that are said alike, but for a plural, count as the same: `18 gauge` and `eighteen gauge`. */
const plain = (text: string): string =>
  pronounce(text.replace(/s$/, ''))
    .flatMap(({ sounds }) => sounds)
    .join(' ');

export interface Measured {
  readonly right: number;
  readonly wrong: number;
  readonly missed: readonly string[];
  readonly mistaken: readonly string[];
}

/** What a teacher of an invented lesson said before, word for word right. */
export const BEFORE = [
  'hello and welcome to the workshop where we work with rings of wire',
  'you need some patience, a tray, two pairs of pliers and a good light',
  'go through the pair, pick up the next ring and close it so that nothing catches',
  'then turn the chain over in your hand and look at the weave from the other face',
  'and then you can see the fold, so we add one more pair and close both rings gently',
  'if the chain feels loose the rings are too wide for the wire that you have used',
  'leave a little room on both sides and pull it once so that everything lies straight',
];

export type Surroundings = 'alone' | 'sentence' | 'lesson';

/** Each pair in its own transcript: quite alone, with its sentence, or after some sentences of a lesson. */
export function measurePairs(pairs: readonly MisheardPair[], where: Surroundings): Measured {
  const alone = where === 'alone';
  const measured: { right: number; wrong: number; missed: string[]; mistaken: string[] } = {
    right: 0,
    wrong: 0,
    missed: [],
    mistaken: [],
  };
  for (const { heard, right: wanted, sentence } of pairs) {
    const text = alone ? heard : sentence.replace('_', heard);
    const mended = plain(alone ? wanted : sentence.replace('_', wanted));
    const before = where === 'lesson' ? BEFORE : [];
    const judged = misheardIn(...before, text).map((one) => {
      const part = one.parts[0];
      const here = part?.cueId === `${before.length}`;
      const after = plain(`${text.slice(0, part?.start)}${one.instead}${text.slice(part?.end)}`);
      return { one, isRight: here && (after === mended || plain(one.instead) === plain(wanted)) };
    });
    const wrong = judged.filter(({ isRight }) => !isRight);
    measured.wrong += wrong.length;
    measured.mistaken.push(...wrong.map(({ one }) => `${one.heard} -> ${one.instead} (${wanted})`));
    if (wrong.length < judged.length) measured.right += 1;
    else measured.missed.push(`${heard} -> ${wanted}`);
  }
  return measured;
}
