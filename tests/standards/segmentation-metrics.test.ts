/**
 * The measures of segmentation against published values: those of the public
 * test-suite of the segeval project (C. Fournier, BSD licence), whose rows
 * with 13 and 21 units go back to Hearst 1997 ("Stargazers", seven people)
 * and Scaiano & Inkpen 2012. Values are given as fractions there.
 */
import { describe, expect, test } from 'vitest';
import {
  boundaryF1,
  boundarySimilarity,
  lengthsOf,
  pk,
  windowDiff,
  windowOf,
} from '#tests/support/segmentation-metrics.ts';

const ones = new Array<number>(13).fill(1);

describe('worked examples of segeval', () => {
  test.each<[proposed: number[], reference: number[], pk: number, windowDiff: number, b: number | null]>([
    [[2, 3, 6], [2, 2, 7], 2 / 9, 2 / 9, 0.75],
    [[2, 3, 6], [5, 6], 0.25, 0.25, 0.5],
    [[2, 3, 6], [2, 3, 3, 3], 0.2222, 0.2222, 0.6667],
    [[2, 3, 6], [1, 1, 3, 1, 5], 0.1111, 0.3333, 0.5],
    [[5, 3, 5], [4, 4, 5], 2 / 11, 2 / 11, 0.75],
    [[5, 3, 5], [5, 1, 2, 5], 1 / 11, 2 / 11, 0.6667],
    [[4, 4, 5], [5, 1, 2, 5], 3 / 11, 3 / 11, 0.5],
    [[13], [4, 4, 5], 0.3636, 0.3636, 0],
    [[4, 4, 5], [13], 1, 1, 0],
    [ones, [4, 4, 5], 0.6364, 1, null],
    [[2, 6, 4, 2, 4, 3], [2, 3, 3, 1, 3, 6, 3], 0.2632, 0.3158, 0.5714],
    [[2, 1, 1, 1, 5, 8, 2, 1], [2, 3, 3, 1, 3, 6, 3], 0.3684, 0.4737, 0.3889],
    [[2, 6, 4, 2, 4, 3], [2, 8, 2, 4, 2, 3], 0.4211, 0.4211, 0.4286],
    [[2, 1, 1, 1, 5, 8, 2, 1], [2, 8, 2, 4, 2, 3], 0.4211, 0.4737, 0.3333],
  ])('%j against %j', (proposed, reference, wantedPk, wantedDiff, wantedB) => {
    expect(pk(proposed, reference)).toBeCloseTo(wantedPk, 4);
    expect(windowDiff(proposed, reference)).toBeCloseTo(wantedDiff, 4);
    if (wantedB !== null) expect(boundarySimilarity(proposed, reference)).toBeCloseTo(wantedB, 4);
  });

  test.each([
    [[12], 3],
    [[5, 7], 2],
    [[1, 5, 6], 1],
    [[5, 1, 1, 5], 5],
  ])('%j against 6,6: %i of 9 windows', (proposed, wrong) => {
    expect(windowDiff(proposed, [6, 6])).toBeCloseTo(wrong / 9, 10);
  });
});

describe('our own reckoning', () => {
  test('the window is half the mean segment, halves to even, at least 2', () => {
    expect([
      windowOf([13]),
      windowOf([5, 6]),
      windowOf([1, 1, 1]),
      windowOf([10, 10]),
      windowOf([9]),
    ]).toEqual([6, 3, 2, 5, 4]);
  });

  test('equal segmentations have nothing wrong', () => {
    expect([pk([3, 4], [3, 4]), windowDiff([3, 4], [3, 4]), boundarySimilarity([7], [7])]).toEqual([0, 0, 1]);
  });

  test('lengths come from starts in any order, each once', () => {
    expect(lengthsOf([5, 0, 2, 5], 9)).toEqual([2, 3, 4]);
    expect(lengthsOf([], 4)).toEqual([4]);
  });

  test('a boundary within reach counts once', () => {
    // One proposed boundary lies near two of the reference; two proposed lie near one.
    expect(boundaryF1([5, 5], [4, 2, 4], 2)).toEqual({ precision: 1, recall: 0.5, f1: 2 / 3 });
    expect(boundaryF1([4, 2, 4], [5, 5], 2)).toEqual({ precision: 0.5, recall: 1, f1: 2 / 3 });
    expect(boundaryF1([10], [5, 5], 2).f1).toBe(0);
  });
});
