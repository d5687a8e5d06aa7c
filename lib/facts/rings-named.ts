/** Which ring kinds the words around a number or a noun name. */
import type { Token } from '#lib/glossary/spoken-number.ts';
import type { Content } from '#lib/lesson/content.ts';
import { describesRings, kindsMeant } from './ring-talk.ts';
import { type Telling, wordAt } from './spoken-fact.ts';

/** What rings are called. */
export const RING_NOUNS = new Set(['ring', 'rings', 'ones']);
/** May stand between a describing word and its noun. */
export const BETWEEN = new Set([
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
/** Kinds that words name with describing words, first or last of several; or null. */
export function ringsNamed(
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

/** Kinds named last before a number, or right behind it; else those that are spoken of. */
export function subjectOf({ tokens, content, subject }: Telling, to: number): readonly string[] {
  return ringsNamed(tokens.slice(0, to + 4), content, 'last') ?? subject;
}
