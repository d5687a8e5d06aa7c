/** Where terms stand in a transcript as they should. */
import type { Glossary } from './glossary.ts';
import type { SpokenWord } from './spoken-word.ts';

export interface HeardWord extends SpokenWord {
  readonly cue: number;
}

/** For each word the term that stands there rightly and how many words of it there are; else null. */
export type RightAt = readonly ({
  readonly term: number;
  readonly from: number;
  readonly to: number;
} | null)[];

export function findRight(words: readonly HeardWord[], glossary: Glossary): RightAt {
  const found = new Array<RightAt[number]>(words.length).fill(null);
  for (let from = 0; from < words.length; from += 1) {
    const match = glossary.right
      .get(words[from]?.word ?? '')
      ?.find((one) => one.words.every((word, at) => words[from + at]?.word === word));
    if (!match) continue;
    const to = from + match.words.length;
    const place = { term: match.term, from, to };
    for (let at = from; at < to; at += 1) if ((found[at]?.to ?? 0) < to) found[at] ??= place;
  }
  return found;
}
