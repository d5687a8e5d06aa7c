/** Terms with what they mean, and where they stand in a text. */
import { z } from 'zod';
import { line } from '#lib/thing.ts';

export const explainedTerm = z.object({
  /** As it is written. */
  term: line.min(1),
  /** Other ways of writing it: plurals, spellings, short forms. */
  forms: z.array(line).max(50).default([]),
  /** What it means, in a sentence or two for who meets it for the first time. */
  meaning: z.string().min(1).max(600),
});
export type ExplainedTerm = Readonly<z.infer<typeof explainedTerm>>;

/** Where a term stands: `text.slice(start, end)` is one of its forms. */
export interface TermPlace {
  readonly start: number;
  readonly end: number;
  readonly term: string;
}

type Written = Pick<ExplainedTerm, 'term' | 'forms'>;

/** Letters that are short for something mean it only in capitals: `ID` is no `id`. */
const isShortForm = (form: string): boolean => /^\p{Lu}{2,4}$/u.test(form);

/** Words that count things: `two pairs of pliers` are no pair of rings. */
const COUNTING = new Set(['pair', 'pairs']);
const OF_OTHERS =
  /^\s+of\s(?!\s*(?:the|this|that|each|every|your|my|our)\s)(?!\s*(?:[\p{L}\p{N}'’-]+\s+){0,3}(?:rings?|links?)(?![\p{L}\p{N}]))/iu;

/** Spaces and hyphens stand for each other, as apostrophes do. */
const patternOf = (form: string): string =>
  form
    .trim()
    .replace(/[\\^$.*+?()[\]{}|/]/g, '\\$&')
    .replace(/[\s-]+/g, '[\\s-]+')
    .replace(/['’]/g, "['’]");

/**
 * Makes a finder of these terms: every place in order, none over another; of
 * forms that begin at one place the longest counts (`aspect ratio` before
 * `ratio`), and of terms that are written alike the first.
 */
export function termFinder(terms: readonly Written[]): (text: string) => readonly TermPlace[] {
  const forms = terms
    .flatMap(({ term, forms }) => [term, ...forms].map((form) => ({ term, form: form.trim() })))
    .filter(({ form }) => form !== '')
    .toSorted((one, other) => other.form.length - one.form.length);
  if (forms.length === 0) return () => [];
  const any = new RegExp(
    `(?<![\\p{L}\\p{N}])(?:${forms.map(({ form }) => `(${patternOf(form)})`).join('|')})(?![\\p{L}\\p{N}])`,
    'giu',
  );
  return (text) =>
    [...text.matchAll(any)].flatMap((match) => {
      const found = forms[match.slice(1).findIndex((group) => group !== undefined)];
      const end = match.index + match[0].length;
      if (!found || (isShortForm(found.form) && match[0] !== found.form)) return [];
      if (COUNTING.has(found.form.toLowerCase()) && OF_OTHERS.test(text.slice(end, end + 80))) return [];
      return [{ start: match.index, end, term: found.term }];
    });
}
