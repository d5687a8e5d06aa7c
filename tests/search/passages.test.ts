import { describe, expect, test } from 'vitest';
import { markSought } from '#lib/search/marks.ts';
import { type FoundLine, passagesOf } from '#lib/search/passages.ts';
import { readSought } from '#lib/search/sought.ts';

const cue = (startMs: number, text: string, hits: number[], lessonId = 'a'): FoundLine => ({
  lessonId,
  kind: 'cue',
  id: `at-${startMs}`,
  startMs,
  endMs: startMs + 2_000,
  text,
  hits,
});

describe('what is sought', () => {
  test.each([
    ['  Fold back  ', ['fold', 'back'], []],
    ['1.2 mm wire, wire', ['1.2', 'mm', 'wire'], []],
    ['“lobster clasp” ring', ['lobster', 'clasp', 'ring'], [['lobster', 'clasp']]],
    ['" "', [], []],
    ["Ring’s & | ! ( ' :*", ["ring's"], []],
  ])('%s', (typed, terms, phrases) => {
    expect(readSought(typed)).toMatchObject({ terms, phrases });
  });

  test('is cut where it is long', () => {
    expect(readSought('word '.repeat(5_000)).typed.length).toBeLessThanOrEqual(200);
    expect(readSought('a b c d e f g h i j k l').terms).toHaveLength(8);
  });
});

describe('passages', () => {
  const sought = readSought('fold back pair');
  const all = [0, 1, 2];

  test('hold all that is sought within 20 s, and begin where its first word is said', () => {
    const lines = [
      cue(0, 'Fold it.', [0]),
      cue(40_000, 'Fold the', [0]),
      cue(42_000, 'last pair back.', [1, 2]),
      cue(90_000, 'A pair.', [2]),
    ];
    expect(passagesOf(lines, sought, all)).toEqual([
      {
        lessonId: 'a',
        passages: [{ kind: 'cue', id: 'at-40000', startMs: 40_000, text: 'Fold the last pair back.' }],
      },
    ]);
  });

  test('show what lies between two lines, and are never told twice', () => {
    const lines = [cue(0, 'Fold a pair.', [0, 2]), cue(8_000, 'Back.', [1]), cue(10_000, 'Back again.', [1])];
    const [found] = passagesOf(lines, sought, all);
    expect(found?.passages.map(({ text }) => text)).toEqual(['Fold a pair. … Back.']);
  });

  test('a word that cannot be looked for asks for nothing; with none there is nothing', () => {
    expect(passagesOf([cue(0, 'Fold.', [0])], sought, [0])).toHaveLength(1);
    expect(passagesOf([cue(0, 'Fold.', [0])], sought, [])).toEqual([]);
  });

  test('words in quotation marks must follow each other', () => {
    const quoted = readSought('"fold back"');
    const lines = [
      cue(0, 'Back, then fold.', [0, 1]),
      cue(60_000, 'Fold', [0]),
      cue(62_000, 'back the pair.', [1]),
    ];
    expect(passagesOf(lines, quoted, [0, 1])[0]?.passages.map(({ startMs }) => startMs)).toEqual([60_000]);
  });

  test('a chapter’s title is a passage of its own; the lesson with most of them comes first', () => {
    const title: FoundLine = { ...cue(5_000, 'Fold back the pair', all, 'b'), kind: 'chapter' };
    const lines = [cue(0, 'Fold back the pair.', all), title, cue(5_000, 'Fold back a pair.', all, 'b')];
    const found = passagesOf(lines, sought, all);
    expect(found.map(({ lessonId }) => lessonId)).toEqual(['b', 'a']);
    expect(found[0]?.passages.map(({ kind }) => kind)).toEqual(['chapter', 'cue']);
  });
});

test('words with the same stem are marked; the pieces are the text', () => {
  const pieces = markSought('Folding two folds, <b>1.2 mm</b>', readSought('fold 1.2'));
  expect(pieces.map(({ text }) => text).join('')).toBe('Folding two folds, <b>1.2 mm</b>');
  expect(pieces.filter(({ sought }) => sought).map(({ text }) => text)).toEqual(['Folding', 'folds', '1.2']);
});
