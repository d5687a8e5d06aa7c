/** A glossary made ready for searching: every way of saying every term, what is right as it stands, and what is known to be misheard. */
import { inOneBreath, type Pronounce } from './spoken-word.ts';
import type { GlossaryTerm } from './term.ts';
import { buildIndex, type Entry, type TermIndex } from './term-index.ts';

/** Fewest sounds of a term that is looked for by sound alone. */
export const FEWEST_SOUNDS = 5;

/** A run of words that is right as it stands. */
interface RightWords {
  readonly words: readonly string[];
  readonly term: number;
}

interface KnownConfusion {
  readonly words: readonly string[];
  readonly term: number;
  readonly after: ReadonlySet<string>;
  readonly before: ReadonlySet<string>;
  readonly near: ReadonlySet<string>;
  /** The form taken before, or null. */
  readonly taken: string | null;
}

export interface Glossary {
  readonly terms: readonly GlossaryTerm[];
  readonly index: TermIndex;
  /** By first word, the longest first. */
  readonly right: ReadonlyMap<string, readonly RightWords[]>;
  readonly confusions: ReadonlyMap<string, readonly KnownConfusion[]>;
  /** How much each term tells that the trade is talked of: 1 for a name of several words, 0.4 for an everyday word. */
  readonly weights: readonly number[];
}

export function prepareGlossary(terms: readonly GlossaryTerm[], pronounce: Pronounce): Glossary {
  const wordsOf = (text: string): readonly string[] => pronounce(text).map(({ word }) => word);
  const entryOf = (term: number, written: string, said: string): Entry => ({
    term,
    written,
    words: wordsOf(written),
    sounds: inOneBreath(pronounce(said)).flatMap(({ sounds }) => sounds),
  });
  const entries = terms.flatMap((each, term) =>
    each.everyday
      ? []
      : withoutAlike(
          [each.term, ...each.forms]
            .map((written) => entryOf(term, written, written))
            .concat(each.sounds.map((said) => entryOf(term, each.term, said)))
            .filter(({ sounds }) => sounds.length >= FEWEST_SOUNDS),
        ),
  );
  const right = byFirstWord(
    terms.flatMap((each, term) =>
      [each.term, ...each.forms].map((written) => ({ words: wordsOf(written), term })),
    ),
  );
  const confusions = byFirstWord(
    terms.flatMap((each, term) =>
      each.confusions.map(({ heard, after, before, near, instead }) => ({
        taken: instead ?? null,
        words: wordsOf(heard),
        term,
        after: new Set(after),
        before: new Set(before),
        near: new Set(near),
      })),
    ),
  );
  const weights = terms.map((each) => (each.everyday ? 0.4 : wordsOf(each.term).length > 1 ? 1 : 0.6));
  return { terms, index: buildIndex(entries), right, confusions, weights };
}

/** Of entries that sound alike the first, so that the term itself is what is offered. */
function withoutAlike(entries: readonly Entry[]): readonly Entry[] {
  const seen = new Set<string>();
  return entries.filter(({ sounds }) => {
    const key = sounds.join();
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

function byFirstWord<T extends { readonly words: readonly string[] }>(
  all: readonly T[],
): ReadonlyMap<string, readonly T[]> {
  const map = new Map<string, T[]>();
  for (const one of all) {
    const first = one.words[0];
    if (first === undefined) continue;
    const list = map.get(first);
    if (list) list.push(one);
    else map.set(first, [one]);
  }
  for (const list of map.values()) list.sort((a, b) => b.words.length - a.words.length);
  return map;
}
