/**
 * The words of speech that tell what it is about: without the words that
 * stand in every sentence, and with their endings taken off, so that `rings`
 * and `ring` count as one.
 */
import { stemmer } from 'stemmer';

/** Words of grammar and of easy speech in English; they hold a sentence together and name nothing. */
const EMPTY_WORDS = new Set(
  `a about above actually after again against ah all almost alright also although always am among an and another
  any anything anyway are around as at away back basically be became because been before being below between both
  but by came can cannot come could did do does doing done down during each either else enough er even ever every
  everything few first for from further get gets getting give given go goes going gonna gone got had has have
  having he her here hers herself him himself his hmm how however i if in into is it its itself just keep kind know
  last least less let like little look lot made make makes many may maybe me might mine more most much must my
  myself need never next no nor not nothing now of off often oh ok okay on once one ones only onto or other others
  our ours ourselves out over own people perhaps please pretty put quite rather really right said same say see seem
  seems shall she should since so some someone something sometimes sort still such take than that the their theirs
  them themselves then there therefore these they thing things think this those though through thus to together
  too took toward towards two uh um under until up upon us use used very want was way we well went were what
  whatever when where whether which while who whole whom whose why will with within without would yeah yes yet you
  your yours yourself yourselves`.split(/\s+/),
);

/** The words of a text in small letters, in order, apostrophes kept inside them. */
export const wordsOf = (text: string): readonly string[] =>
  text
    .toLowerCase()
    .replaceAll('’', "'")
    .match(/[\p{L}\p{N}]+(?:'\p{L}+)*/gu) ?? [];

/** Whether a word names something; `word` as `wordsOf` gives it. */
export const namesSomething = (word: string): boolean => {
  const bare = withoutEnding(word);
  return bare.length > 2 && !EMPTY_WORDS.has(bare) && !EMPTY_WORDS.has(word);
};

/** What words with different endings have in common (Porter 1980, by the package `stemmer`). */
export const stemOf = (word: string): string => stemmer(withoutEnding(word));

/**
 * Stems of the words that name something, in order, as often as they stand.
 * `known` keeps what was found out about a word; pass one map for a whole text.
 */
export function contentStems(
  words: readonly string[],
  known = new Map<string, string | null>(),
): readonly string[] {
  const stems: string[] = [];
  for (const word of words) {
    let stem = known.get(word);
    if (stem === undefined) {
      stem = namesSomething(word) ? stemOf(word) : null;
      known.set(word, stem);
    }
    if (stem !== null) stems.push(stem);
  }
  return stems;
}

/** `don't` is `don`, `ring's` is `ring`: what stands behind an apostrophe names nothing. */
const withoutEnding = (word: string): string => {
  const at = word.indexOf("'");
  return at < 0 ? word : word.slice(0, word.startsWith("n't", at - 1) ? at - 1 : at);
};
