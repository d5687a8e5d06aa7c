/**
 * Looking for misheard words in 20,000 words with 500 terms: ours beside a
 * plain loop that compares the same windows by letters (a table of
 * Levenshtein distances) and one that compares Double Metaphone codes (npm
 * double-metaphone), in one run. Prints times and ratios; run it with
 * `node tests/bench/misheard.bench.ts`.
 */
import { dictionary } from 'cmu-pronouncing-dictionary';
import { doubleMetaphone } from 'double-metaphone';
import { prepareGlossary } from '#lib/glossary/glossary.ts';
import { findMisheard } from '#lib/glossary/misheard.ts';
import { createPronounce } from '#lib/glossary/spoken-word.ts';
import type { GlossaryTerm } from '#lib/glossary/term.ts';
import { TRADE_TERMS } from '#lib/glossary/trade-terms.ts';
import { readToldLesson, toldLessonNames } from '#tests/support/told-lessons.ts';

const WORDS = 20_000;
const TERMS = 500;

const told = toldLessonNames().flatMap((name) => readToldLesson(name).cues.map(({ text }) => text));
const cues: { id: string; text: string; startMs: number; endMs: number }[] = [];
let words = 0;
for (let at = 0; words < WORDS; at += 1) {
  const text = told[at % told.length] ?? '';
  words += text.split(' ').length;
  cues.push({ id: `${at}`, text, startMs: at * 3_000, endMs: at * 3_000 + 2_900 });
}
const own = Object.keys(dictionary).filter((word, at) => at % 211 === 0 && /^[a-z]{7,}$/.test(word));
const terms: readonly GlossaryTerm[] = [
  ...TRADE_TERMS,
  ...own.map((term) => ({ term, forms: [], sounds: [], confusions: [], everyday: false })),
].slice(0, TERMS);

const pronounce = createPronounce((word) => dictionary[word]);
const glossary = prepareGlossary(terms, pronounce);

const textWords = cues.flatMap(({ text }) => text.toLowerCase().match(/[a-z']+/g) ?? []);
const windows = (): string[] =>
  textWords.flatMap((_, at) => [1, 2, 3].map((length) => textWords.slice(at, at + length).join(' ')));

/** Letters that have to be changed: a plain table, a row at a time. */
function letterDistance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, at) => at);
  for (let i = 1; i <= a.length; i += 1) {
    const next = [i];
    for (let j = 1; j <= b.length; j += 1)
      next.push(
        Math.min(
          (row[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1),
          (row[j] ?? 0) + 1,
          (next[j - 1] ?? 0) + 1,
        ),
      );
    row = next;
  }
  return row[b.length] ?? 0;
}

/** A fiftieth of the text, since the whole takes minutes; told as the whole. */
function plainLoop(): void {
  const some = windows().slice(0, (3 * WORDS) / 50);
  for (const window of some)
    for (const { term } of terms)
      if (Math.abs(term.length - window.length) <= 3) letterDistance(window, term);
}

function byCode(): void {
  const codeOf = (text: string): string =>
    text
      .split(' ')
      .map((word) => doubleMetaphone(word)[0])
      .join('');
  const codes = new Set(terms.map(({ term }) => codeOf(term)));
  for (const window of windows()) codes.has(codeOf(window));
}

function medianMs(runs: number, run: () => void): number {
  const times = Array.from({ length: runs }, () => {
    const before = process.cpuUsage();
    run();
    const { user, system } = process.cpuUsage(before);
    return (user + system) / 1000;
  });
  return times.sort((a, b) => a - b)[Math.floor(runs / 2)] ?? Number.NaN;
}

console.log(
  `${words} words, ${terms.length} terms, ${glossary.index.entries.length} ways of saying them; time of the processor`,
);
const ours = medianMs(5, () => void findMisheard(cues, glossary, pronounce));
const rows: readonly (readonly [string, number])[] = [
  ['ours, by sound', ours],
  ['ours, the glossary made ready', medianMs(5, () => void prepareGlossary(terms, pronounce))],
  ['plain loop over letters, in full', medianMs(1, plainLoop) * 50],
  ['equal Double Metaphone codes', medianMs(3, byCode)],
];
for (const [name, ms] of rows)
  console.log(`${name.padEnd(36)} ${ms.toFixed(0).padStart(8)} ms   ${(ms / ours).toFixed(2)} x ours`);
