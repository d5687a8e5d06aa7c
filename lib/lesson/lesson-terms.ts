/**
 * The terms that a lesson uses, with what they mean: frozen into a revision,
 * so that its page explains them for ever as it did when it was published.
 */
import { type ExplainedTerm, termFinder } from '#lib/glossary/explained-term.ts';
import { EXPLAINED_TRADE_TERMS } from '#lib/glossary/trade-meanings.ts';
import { TRADE_TERMS } from '#lib/glossary/trade-terms.ts';
import type { Cue } from '#lib/transcript/cue.ts';
import { cautionWords } from './cautions.ts';
import type { Content } from './content.ts';
import { ringFacts } from './making-words.ts';
import { pageSteps } from './page-steps.ts';

/** Where a page explains terms: where it shows what was typed or said. */
const textsOf = (content: Content, cues: readonly Pick<Cue, 'text'>[]): readonly string[] => [
  content.weave,
  content.summary,
  ...content.ringKinds.map((kind) => `${kind.name}, ${ringFacts(kind)}`),
  ...content.materials.map(({ name }) => name),
  ...content.cautions.map((caution) => cautionWords(caution).text),
  ...pageSteps(content).map(({ sentence }) => sentence),
  ...cues.map(({ text }) => text),
];

const sortKey = (term: string): string => term.replace(/^(?:the|an?) /i, '');
const tradeForms = (term: string): readonly string[] =>
  TRADE_TERMS.find((trade) => trade.term.toLowerCase() === term.toLowerCase())?.forms ?? [];

/** A workshop's own meaning of a term goes before the trade's, which is written in English and offered to English lessons alone. */
export function lessonTerms(
  content: Content,
  own: readonly ExplainedTerm[],
  cues: readonly Pick<Cue, 'text'>[] = [],
): readonly ExplainedTerm[] {
  const written = new Set(own.map(({ term }) => term.toLowerCase()));
  const known = [
    ...own.map((one) => ({ ...one, forms: [...one.forms, ...tradeForms(one.term)] })),
    ...(/^en\b/i.test(content.language)
      ? EXPLAINED_TRADE_TERMS.filter(({ term }) => !written.has(term.toLowerCase()))
      : []),
  ];
  const find = termFinder(known);
  const used = new Set(textsOf(content, cues).flatMap((text) => find(text).map(({ term }) => term)));
  return known
    .filter(({ term }) => used.has(term))
    .toSorted((one, other) => sortKey(one.term).localeCompare(sortKey(other.term), 'en'));
}
