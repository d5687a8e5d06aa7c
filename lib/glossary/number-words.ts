/** Numbers as they are said: `18` is `eighteen`, `4-in-1` is `four in one`. */

const ONES = [
  'zero',
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
  'thirteen',
  'fourteen',
  'fifteen',
  'sixteen',
  'seventeen',
  'eighteen',
  'nineteen',
];
const TENS = ['', '', 'twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'];

/** A whole number from 0 to 999,999 in words; larger ones digit by digit. */
export function sayNumber(n: number): string {
  if (n < 20) return ONES[n] ?? '';
  if (n < 100) return `${TENS[Math.floor(n / 10)]}${n % 10 === 0 ? '' : ` ${ONES[n % 10]}`}`;
  if (n < 1000) {
    const rest = n % 100;
    return `${ONES[Math.floor(n / 100)]} hundred${rest === 0 ? '' : ` and ${sayNumber(rest)}`}`;
  }
  if (n < 1_000_000) {
    const rest = n % 1000;
    return `${sayNumber(Math.floor(n / 1000))} thousand${rest === 0 ? '' : ` ${sayNumber(rest)}`}`;
  }
  return [...String(n)].map((digit) => ONES[Number(digit)] ?? '').join(' ');
}

const VALUES: ReadonlyMap<string, number> = new Map([
  ...ONES.map((word, value) => [word, value] as const),
  ...TENS.flatMap((word, ten) => (word === '' ? [] : [[word, ten * 10] as const])),
  ['hundred', 100],
  ['thousand', 1000],
  ['nought', 0],
  ['oh', 0],
]);

/** The value of one number word (`eighteen`, `forty`, `hundred`), or undefined. */
export const numberWordValue = (word: string): number | undefined => VALUES.get(word);
