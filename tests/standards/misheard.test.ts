/**
 * Misheard terms, measured: on mishearings that were written before the search
 * was, and on speech about other things by people who never heard of us
 * (physics and computing lectures, cooking; ../shared/suites). Beside each
 * figure stands what the Double Metaphone code (npm double-metaphone) finds
 * in the same text by equal codes.
 */
import { dictionary } from 'cmu-pronouncing-dictionary';
import { doubleMetaphone } from 'double-metaphone';
import { describe, expect, it } from 'vitest';
import { soundsByRule } from '#lib/glossary/letter-sounds.ts';
import { soundDistance, soundsOf } from '#lib/glossary/phonemes.ts';
import { TRADE_TERMS } from '#lib/glossary/trade-terms.ts';
import {
  BEFORE,
  measurePairs,
  misheardIn,
  type Surroundings,
  soundsIn,
} from '#tests/glossary/measure-misheard.ts';
import { HELD_OUT } from '#tests/glossary/misheard-held-out.ts';
import { SEEN } from '#tests/glossary/misheard-seen.ts';
import { haveOutsideCases, outsideText } from '#tests/support/outside-cases.ts';

const COLLECTIONS = ['lect_physics_manual', 'lect_ai_manual', 'cooking_steps'] as const;
/** Documents of each collection; MISHEARD_DOCUMENTS reads more. */
const DOCUMENTS = Number(process.env.MISHEARD_DOCUMENTS ?? 2);

const shares = (pairs: typeof HELD_OUT, where: Surroundings) => {
  const { right, wrong } = measurePairs(pairs, where);
  return { recall: right / pairs.length, precision: right / (right + wrong) };
};

describe('misheard terms', () => {
  const long = HELD_OUT.filter(({ right }) => soundsIn(right) >= 5);

  it.each(['lesson', 'sentence', 'alone'] as const)('finds those of five sounds and more: %s', (where) => {
    const { recall, precision } = shares(long, where);
    console.log(
      `held-out mishearings (${where}): recall ${recall.toFixed(2)}, precision ${precision.toFixed(2)}; equal Double Metaphone codes: recall ${metaphoneRecall(long).toFixed(2)}`,
    );
    expect(precision).toBeGreaterThanOrEqual(0.85);
    // Without a sentence around it less is believed.
    expect(recall).toBeGreaterThanOrEqual(where === 'alone' ? 0.65 : 0.7);
  });

  it('finds those that it was tried on while it was made', () => {
    const { recall, precision } = shares(SEEN, 'lesson');
    expect(precision).toBeGreaterThanOrEqual(0.9);
    expect(recall).toBeGreaterThanOrEqual(0.9);
  });

  it('says nothing about right speech of a lesson', () => {
    expect(misheardIn(...BEFORE)).toEqual([]);
  });

  it('makes at most one wrong suggestion in 2,000 words about other things', () => {
    if (!haveOutsideCases('segmentation')) return;
    for (const collection of COLLECTIONS) {
      const documents = outsideText(`segmentation/${collection}.jsonl`)
        .split('\n')
        .filter((line) => line !== '')
        .slice(0, DOCUMENTS)
        .map((line) => (JSON.parse(line) as { sents: string[] }).sents);
      const words = documents.flat().join(' ').split(/\s+/).length;
      const wrong = documents.reduce((sum, sentences) => sum + misheardIn(...sentences).length, 0);
      const byCode = documents.reduce((sum, sentences) => sum + metaphoneHits(sentences.join(' ')), 0);
      const perThousand = (1000 * wrong) / words;
      console.log(
        `${collection}: ${words} words, ${perThousand.toFixed(2)} wrong a thousand; equal Double Metaphone codes: ${((1000 * byCode) / words).toFixed(1)}`,
      );
      expect(perThousand).toBeLessThanOrEqual(0.5);
    }
  });
});

describe('sounds by rule', () => {
  it('come near to the CMU dictionary on words that it has', () => {
    const words = Object.keys(dictionary).filter((word, at) => at % 97 === 0 && /^[a-z]{3,}$/.test(word));
    const distances = words.map((word) => {
      const [rule, book] = [soundsOf(soundsByRule(word)), soundsOf(dictionary[word] ?? '')];
      return soundDistance(rule, book) / Math.max(rule.length, book.length);
    });
    const mean = distances.reduce((sum, distance) => sum + distance, 0) / distances.length;
    const shuffled =
      words.reduce((sum, word, at) => {
        const [rule, book] = [
          soundsOf(soundsByRule(word)),
          soundsOf(dictionary[words.at(at - 1) ?? ''] ?? ''),
        ];
        return sum + soundDistance(rule, book) / Math.max(rule.length, book.length);
      }, 0) / words.length;
    console.log(
      `sounds by rule against the CMU dictionary, ${words.length} words: mean distance ${mean.toFixed(3)}; of a wrong word ${shuffled.toFixed(3)}`,
    );
    expect(mean).toBeLessThan(0.15);
    expect(mean * 3).toBeLessThan(shuffled);
  });
});

const codeOf = (text: string): string =>
  text
    .split(/[^a-z0-9']+/i)
    .map((word) => doubleMetaphone(word)[0])
    .join('');

const TERM_CODES = new Set(
  TRADE_TERMS.filter(({ everyday }) => !everyday)
    .flatMap(({ term, sounds }) => [term, ...sounds])
    .map(codeOf)
    .filter((code) => code.length >= 3),
);

function metaphoneHits(text: string): number {
  const words = text.split(/\s+/);
  let hits = 0;
  words.forEach((_, at) => {
    for (let length = 1; length <= 3; length += 1)
      if (TERM_CODES.has(codeOf(words.slice(at, at + length).join(' ')))) hits += 1;
  });
  return hits;
}

const metaphoneRecall = (pairs: typeof HELD_OUT): number =>
  pairs.filter(({ heard, right }) => codeOf(heard) === codeOf(right)).length / pairs.length;
