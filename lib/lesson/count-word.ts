/** Counts as they are said in a sentence. */

const NUMBERS = [
  'no',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
];

/** `two` up to twelve, figures above. */
export const countWord = (count: number): string => NUMBERS[count] ?? String(count);
