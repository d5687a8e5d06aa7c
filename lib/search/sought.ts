/**
 * What someone looks for: words that must all be said near each other, and
 * words in quotation marks that must be said one after the other. This folder
 * knows lines of text with their times, and no lesson.
 */

/** Longer searches are cut. */
const LONGEST = 200;
const MOST_TERMS = 8;

export interface Sought {
  /** As it was typed, cut and trimmed. */
  readonly typed: string;
  /** Each word once, in small letters, in order. */
  readonly terms: readonly string[];
  /** Words that must follow each other. */
  readonly phrases: readonly (readonly string[])[];
}

/** Reads what was typed; no terms where it holds no word. */
export function readSought(typed: string): Sought {
  const cut = typed.slice(0, LONGEST).trim();
  const phrases = [...cut.matchAll(/["“”„]([^"“”„]+)["“”„]/g)]
    .map((match) => termsOf(match[1] ?? ''))
    .filter((words) => words.length > 1);
  return { typed: cut, terms: [...new Set(termsOf(cut))].slice(0, MOST_TERMS), phrases };
}

/** Words and numbers of a text in small letters; a number keeps its decimal sign. */
export const termsOf = (text: string): readonly string[] =>
  text
    .toLowerCase()
    .replaceAll('’', "'")
    .match(/\d+(?:[.,]\d+)+|[\p{L}\p{N}]+(?:'\p{L}+)*/gu) ?? [];
