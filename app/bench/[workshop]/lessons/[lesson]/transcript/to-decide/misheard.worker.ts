/**
 * Looks for misheard words beside the page, so that writing stays smooth: the
 * dictionary is large and the search reads the whole transcript. Cues in,
 * suggestions out; nothing leaves the browser.
 */
import { dictionary } from 'cmu-pronouncing-dictionary';
import { glossaryOf, type HeardDecision } from '#lib/glossary/decide.ts';
import { prepareGlossary } from '#lib/glossary/glossary.ts';
import { findMisheard } from '#lib/glossary/misheard.ts';
import { findNumberTraps, type NumberTraps } from '#lib/glossary/number-traps.ts';
import { createPronounce } from '#lib/glossary/spoken-word.ts';
import { TRADE_TERMS } from '#lib/glossary/trade-terms.ts';
import type { Cue } from '#lib/transcript/cue.ts';

export interface MisheardAsked {
  readonly run: number;
  readonly cues: readonly Pick<Cue, 'id' | 'text' | 'startMs' | 'endMs'>[];
  readonly terms: readonly {
    readonly term: string;
    readonly forms: readonly string[];
    readonly sounds: readonly string[];
  }[];
  readonly decisions: readonly HeardDecision[];
  /** Numbers that the kit and the ring kinds state. */
  readonly known: readonly number[];
}

export interface MisheardFound extends NumberTraps {
  readonly run: number;
}

const pronounce = createPronounce((word) => (Object.hasOwn(dictionary, word) ? dictionary[word] : undefined));

self.addEventListener('message', ({ data }: MessageEvent<MisheardAsked>) => {
  const { run, cues, terms, decisions, known } = data;
  const glossary = prepareGlossary(glossaryOf(TRADE_TERMS, terms, decisions), pronounce);
  const traps = findNumberTraps(cues, new Set(known));
  const found: MisheardFound = {
    run,
    suggestions: [...findMisheard(cues, glossary, pronounce), ...traps.suggestions],
    toHear: traps.toHear,
  };
  self.postMessage(found);
});
