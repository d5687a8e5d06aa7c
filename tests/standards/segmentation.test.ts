/**
 * How well proposed boundaries agree with those that people set, in texts that
 * nobody here wrote. Beside every figure stand the rows that need no reading
 * (none, equal, random) and what published methods reach: for Choi's set, his
 * own table of 2000 (C99, number of parts known: Pk .12); for the lectures,
 * Malioutov & Barzilay 2006 as recalled (about .30 and .37, number known).
 */
import { describe, expect, test } from 'vitest';
import { type Boundaries, findBoundaries } from '#lib/chapters/boundaries.ts';
import { haveOutsideCases } from '#tests/support/outside-cases.ts';
import {
  PLAIN_ROWS,
  printScores,
  readSegmentedTexts,
  type Score,
  type SegmentedText,
  scoreOf,
} from '#tests/support/segmentation-cases.ts';

const present = haveOutsideCases('segmentation');

function measure(name: string) {
  const texts = readSegmentedTexts(name);
  const found = new Map<SegmentedText, Boundaries>(texts.map((text) => [text, findBoundaries(text.units)]));
  const startsOf = (text: SegmentedText, count: (found: Boundaries) => number) => {
    const boundaries = found.get(text);
    return boundaries ? boundaries.startsFor(count(boundaries)) : [];
  };
  const rows: Record<'none' | 'equal' | 'random' | 'known' | 'automatic', Score> = {
    ...(Object.fromEntries(PLAIN_ROWS.map(([row, parting]) => [row, scoreOf(texts, parting)])) as Record<
      'none' | 'equal' | 'random',
      Score
    >),
    known: scoreOf(texts, (text) => startsOf(text, () => text.starts.length)),
    automatic: scoreOf(texts, (text) => startsOf(text, (boundaries) => boundaries.suggested)),
  };
  printScores(`${name} (${texts.length} texts)`, Object.entries(rows));
  return rows;
}

describe.runIf(present)('proposed boundaries against those set by people', () => {
  test('joined texts, number of parts known: Pk at most .11', () => {
    const { known, equal, none } = measure('choi_3-11');
    expect(known.pk).toBeLessThanOrEqual(0.11);
    expect(known.pk).toBeLessThan(Math.min(equal.pk, none.pk));
  });

  test('physics lectures, number not known: Pk at most .34', () => {
    const { automatic, none } = measure('lect_physics_manual');
    expect(automatic.pk).toBeLessThanOrEqual(0.34);
    expect(automatic.windowDiff).toBeLessThan(none.windowDiff);
  });

  test('lectures on artificial intelligence, number not known: Pk at most .33', () => {
    const { automatic, none } = measure('lect_ai_manual');
    expect(automatic.pk).toBeLessThanOrEqual(0.33);
    expect(automatic.windowDiff).toBeLessThan(none.windowDiff);
  });

  test('steps of cooking, number known: F1 above .65 and above equal parts', () => {
    const { known, equal, none } = measure('cooking_steps');
    expect(known.f1).toBeGreaterThan(0.65);
    expect(known.f1).toBeGreaterThan(equal.f1);
    expect(known.pk).toBeLessThan(none.pk);
  });
});
