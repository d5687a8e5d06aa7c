import { describe, expect, test } from 'vitest';
import { termFinder } from '#lib/glossary/explained-term.ts';
import { EXPLAINED_TRADE_TERMS, MEANINGS } from '#lib/glossary/trade-meanings.ts';
import { TRADE_TERMS } from '#lib/glossary/trade-terms.ts';
import { lessonTerms } from '#lib/lesson/lesson-terms.ts';
import { freezeRevision, revision } from '#lib/lesson/revision.ts';
import { aContent } from '#tests/support/a-content.ts';

const found = (text: string) =>
  termFinder(EXPLAINED_TRADE_TERMS)(text).map(({ start, end }) => text.slice(start, end));

describe('terms in a text', () => {
  test.each([
    ['Open the ring at its seam.', ['Open the ring', 'seam']],
    ['Seams and the Aspect  Ratio.', ['Seams', 'Aspect  Ratio']],
    ['Seamless repeats.', []],
    ['Fold-back the pair, then look for the eyes.', ['Fold-back', 'pair', 'the eyes']],
    ['Good light helps your eyes.', []],
    ['An ID of 4 mm; no id at all.', ['ID']],
    ['Jewellers’ bronze', ['Jewellers’ bronze']],
    ['Use chain-nose pliers.', ['chain-nose pliers']],
    // Counted things are no pair of rings, as the trade means it.
    ['Two pairs of pliers make a pair of earrings.', []],
    ['A pair of closed blue rings, then the next pair of the chain.', ['pair', 'pair']],
  ])('%s', (text, terms) => {
    expect(found(text)).toEqual(terms);
  });

  test('signs in a term of a workshop are signs, and other scripts have words too', () => {
    const terms = [
      { term: 'C++ (loop)', forms: [], meaning: 'x' },
      { term: 'кольцо', forms: ['кольца'], meaning: 'x' },
    ];
    expect(termFinder(terms)('A c++ (loop) and Кольца, no кольцами.')).toEqual([
      { start: 2, end: 12, term: 'C++ (loop)' },
      { start: 17, end: 23, term: 'кольцо' },
    ]);
  });
});

test('every meaning is that of a term, and is a sentence', () => {
  const terms = new Set(TRADE_TERMS.map(({ term }) => term));
  expect(Object.keys(MEANINGS).filter((term) => !terms.has(term))).toEqual([]);
  for (const { term, meaning } of EXPLAINED_TRADE_TERMS) {
    expect(meaning, term).toMatch(/^[A-Z].*\.$/);
    expect(meaning.length, term).toBeLessThan(240);
  }
});

describe('terms of a lesson', () => {
  const content = aContent({ weave: 'Byzantine', summary: 'Close the ring flush. Mind the loopet.' });
  const own = [{ term: 'loopet', forms: [], meaning: 'What we call a spare ring.' }];

  test('are those that it uses, its workshop’s among them', () => {
    expect(lessonTerms(content, own).map(({ term }) => term)).toEqual([
      // What is said of ring kinds, and a caution's words, count as well.
      'aspect ratio',
      'byzantine',
      'close the ring',
      'inner diameter',
      'loopet',
    ]);
    const said = [{ text: 'Mind the seam of every jump ring.' }];
    expect(lessonTerms(content, own, said).map(({ term }) => term)).toEqual(
      expect.arrayContaining(['loopet', 'seam']),
    );
  });

  test('mean what its workshop says, in the trade’s forms too', () => {
    const terms = lessonTerms(aContent({ summary: 'Look at both seams.', weave: '' }), [
      { term: 'Seam', forms: [], meaning: 'Ours.' },
    ]);
    expect(terms.find(({ term }) => term.toLowerCase() === 'seam')).toMatchObject({
      term: 'Seam',
      meaning: 'Ours.',
    });
  });

  test('are not explained in English to who reads another language', () => {
    const german = { ...content, language: 'de', summary: 'Byzantine, seam, Loopet.' };
    expect(lessonTerms(german, own).map(({ term }) => term)).toEqual(['loopet']);
  });

  test('are frozen with a revision; one from before there were any still reads', () => {
    const frozen = freezeRevision({
      number: 1,
      publishedAt: new Date('2026-03-01T10:00:00Z'),
      workshop: { name: 'Kettle Row Rings', slug: 'kettle-row' },
      content,
      cues: [],
      recording: null,
      stillKeys: new Map(),
      terms: own,
      published: [],
    });
    expect(frozen.terms).toHaveLength(5);
    const { terms: _, ...before } = frozen;
    expect(revision.parse(before).terms).toEqual([]);
  });
});
