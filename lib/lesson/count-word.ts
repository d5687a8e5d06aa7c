/** Counts as they are said in a sentence. */
import { sayNumber } from '#lib/glossary/number-words.ts';

/** `no` for nought, `two` up to twelve, figures above. */
export function countWord(count: number): string {
  if (count === 0) return 'no';
  return Number.isInteger(count) && count > 0 && count <= 12 ? sayNumber(count) : String(count);
}
