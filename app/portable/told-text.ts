/** Typed text on a page that stands alone: words of hand for both hands, and words of the trade that lead to their meaning. */
import { type ExplainedTerm, termFinder } from '#lib/glossary/explained-term.ts';
import { handSegments } from '#lib/lesson/hand-words.ts';
import { each, html, type Markup, when } from './markup.ts';

export interface Teller {
  /** A text as it was typed; its words of hand turn round with the picture. */
  readonly told: (text: string) => Markup;
  /** The same for texts that are read one after the other: a term leads to its meaning from the first that has it. */
  readonly explained: (texts: readonly string[]) => readonly Markup[];
  /** For what somebody said: its words of hand stay. */
  readonly said: (texts: readonly string[]) => readonly Markup[];
}

const bothHands = (text: string): Markup =>
  each(handSegments(text), (segment) =>
    segment.mirrored === null
      ? html`${segment.text}`
      : html`<span data-hand="shown">${segment.text}</span><span data-hand="mirrored">${segment.mirrored}</span>`,
  );
const asTyped = (text: string): Markup => html`${text}`;

export function tellerOf(terms: readonly ExplainedTerm[]): Teller {
  const find = termFinder(terms);
  const numbers = new Map(terms.map(({ term }, index) => [term, index + 1]));
  const inOrder = (texts: readonly string[], show: (text: string) => Markup): readonly Markup[] => {
    const met = new Set<string>();
    return texts.map((text) => {
      const places = find(text).filter(({ term }) => !met.has(term) && met.add(term));
      const linked = each(places, ({ start, end, term }, index) => {
        const before = text.slice(places[index - 1]?.end ?? 0, start);
        return html`${show(before)}<a class="term" href="${`#word-${numbers.get(term)}`}">${show(text.slice(start, end))}</a>`;
      });
      return html`${linked}${show(text.slice(places.at(-1)?.end ?? 0))}`;
    });
  };
  return {
    told: bothHands,
    explained: (texts) => inOrder(texts, bothHands),
    said: (texts) => inOrder(texts, asTyped),
  };
}

/** Every word of the trade with its meaning. */
export const words = (terms: readonly ExplainedTerm[]): Markup =>
  when(
    terms.length > 0,
    () =>
      html`<section aria-labelledby="words"><h2 id="words" lang="en">Words of the trade</h2><dl class="words">${each(
        terms,
        ({ term, meaning }, index) =>
          html`<div id="${`word-${index + 1}`}"><dt><dfn>${term}</dfn></dt><dd>${bothHands(meaning)}</dd></div>`,
      )}</dl></section>`,
  );
