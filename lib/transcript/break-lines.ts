/** Parts the words of one caption into lines: as few as fit, of like length, broken where it reads well. */
import { lengthOf } from './caption-faults.ts';
import { cheapestParts } from './cheapest-parts.ts';
import { breakCost, gluedPlaces, wordsOf } from './word-breaks.ts';

/**
 * The text on lines of at most `longest` characters. Words are never changed
 * or parted, a number is not parted from its unit; what cannot fit so stands
 * on a longer line.
 */
export function breakLines(text: string, longest: number): string {
  const words = wordsOf(text);
  const whole = words.join(' ');
  if (lengthOf(whole) <= longest) return whole;
  const glued = gluedPlaces(words);
  const measure = runLengths(words);
  const wanted = lengthOf(whole) / Math.ceil(lengthOf(whole) / longest);
  const starts = cheapestParts({
    count: words.length,
    mayBegin: (at) => !glued[at - 1],
    isTooLong: (from, end) => measure(from, end) > longest * 2,
    costOf: (from, end) => {
      const length = measure(from, end);
      const broken = from === 0 ? 0 : 12 + breakCost(words, from) * 2;
      return Math.max(0, length - longest) * 100 + broken + ((length - wanted) / 6) ** 2;
    },
  });
  return starts.map((start, at) => words.slice(start, starts[at + 1]).join(' ')).join('\n');
}

/** Lengths of runs of words with the spaces between them, characters. */
export function runLengths(words: readonly string[]): (from: number, end: number) => number {
  const sums = [0];
  for (const word of words) sums.push((sums.at(-1) ?? 0) + lengthOf(word) + 1);
  return (from, end) => (sums[end] ?? 0) - (sums[from] ?? 0) - 1;
}
