import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { kitFor } from '#lib/kit/kit-list.ts';
import { repeatsFor } from '#lib/kit/length.ts';
import { certaintyOf, fitSample } from '#lib/kit/sample-fit.ts';
import { aSample, byzantineMaking, someRules } from '#tests/support/a-making.ts';

describe('measured pieces', () => {
  test('of an exact line give that line, however many there are', () => {
    const line = fc.record({
      g: fc.integer({ min: 1, max: 500_000 }),
      f: fc.integer({ min: 0, max: 500_000 }),
    });
    const counts = fc.uniqueArray(fc.integer({ min: 1, max: 200 }), { minLength: 2, maxLength: 8 });
    fc.assert(
      fc.property(line, counts, ({ g, f }, repeats) => {
        const pieces = repeats.map((n) => ({ repeats: n, mm: (n * g + f) / 10_000 }));
        expect(fitSample(pieces)).toEqual({
          ok: true,
          value: { perRepeatMm: g / 10_000, endsMm: f / 10_000 },
        });
      }),
    );
  });

  // By hand: x = 5, 10, 15; y = 49.6, 92.6, 135.3. Sxx = 50, Sxy = 428.5, g = 8.57, ends = 92.5 - 85.7 = 6.8.
  // Off the line: -0.05, 0.1, -0.05: s = sqrt(0.015/1) = 0.1225.
  test('three that do not quite agree are combined by least squares, and their scatter is carried', () => {
    const pieces = [
      { repeats: 5, mm: 49.6 },
      { repeats: 10, mm: 92.6 },
      { repeats: 15, mm: 135.3 },
    ];
    expect(fitSample(pieces)).toEqual({ ok: true, value: { perRepeatMm: 8.57, endsMm: 6.8 } });
    const sample = aSample({ perRepeatMm: 8.57, endsMm: 6.8, pieces, readingMm: 0.1 });
    const certainty = certaintyOf(sample, [{ run: null, repeats: 20 }]);
    expect(certainty?.scatterMm).toBeCloseTo(0.1225, 4);
    expect(certainty?.errorMm).toBeCloseTo(0.1225 * Math.sqrt(1 / 3 + 100 / 50), 4);
  });

  test('one piece takes the stated ends, and its error grows with the repeats', () => {
    expect(fitSample([{ repeats: 10, mm: 92.6 }], 6.6)).toEqual({
      ok: true,
      value: { perRepeatMm: 8.6, endsMm: 6.6 },
    });
    const sample = aSample({
      perRepeatMm: 8.6,
      endsMm: 6.6,
      pieces: [{ repeats: 10, mm: 92.6 }],
      readingMm: 0.5,
    });
    expect(certaintyOf(sample, [{ run: null, repeats: 20 }])?.errorMm).toBeCloseTo(1);
  });

  test('nothing is claimed where no reading is stated, or no piece', () => {
    expect(certaintyOf(aSample({}), [{ run: null, repeats: 10 }])).toBeNull();
    expect(
      certaintyOf(aSample({ pieces: [{ repeats: 5, mm: 50 }] }), [{ run: null, repeats: 10 }]),
    ).toBeNull();
    expect(certaintyOf(aSample({ readingMm: 1 }), [{ run: null, repeats: 10 }])).toBeNull();
  });

  // By hand, each length read to ± 0.5 mm: the line through 8 and 13 repeats at 10 gives 0.5 x sqrt(1/2 + 0.5^2/12.5)
  // = 0.3606; 6 repeats of a run measured over 4: 0.75; together sqrt(0.3606^2 + 0.75^2) = 0.8322.
  test('a run of its own length adds its own error, whichever stretches it is in', () => {
    const pieces = [
      { repeats: 8, mm: 80 },
      { repeats: 13, mm: 130 },
    ];
    const runs = [{ run: 'motif', perRepeatMm: 14, overRepeats: 4 }];
    const sample = aSample({ perRepeatMm: 10, endsMm: 0, pieces, runs, readingMm: 0.5 });
    const stretches = [
      { run: 'before', repeats: 5 },
      { run: 'motif', repeats: 3 },
      { run: 'after', repeats: 5 },
      { run: 'motif', repeats: 3 },
    ];
    expect(certaintyOf(sample, stretches)).toMatchObject({ pieces: 2, runsOver: [4] });
    expect(certaintyOf(sample, stretches)?.errorMm).toBeCloseTo(0.8322, 3);
    const unsaid = { ...sample, runs: [{ run: 'motif', perRepeatMm: 14, overRepeats: null }] };
    expect(certaintyOf(unsaid, stretches)).toBeNull();
    expect(certaintyOf(unsaid, [{ run: 'before', repeats: 10 }])?.errorMm).toBeCloseTo(0.3606, 3);
    // Runs alone, all measured: no piece is needed; what is not of them needs one.
    const alone = { ...sample, pieces: [] };
    expect(certaintyOf(alone, [{ run: 'motif', repeats: 6 }])?.errorMm).toBeCloseTo(0.75);
    expect(certaintyOf(alone, stretches)).toBeNull();
  });

  // By hand: pieces of 8 and 13 read to ± 1: at 19, 1 x sqrt(1/2 + 8.5^2/12.5) = 2.506 mm. Target 185: x = 18.419,
  // so 158.4 - 2.506 = 155.894 (18.13, up: 19) and 160.906 (18.71, up: 19). At 167: 162.906 is 18.94 and 165.. 19.2.
  test('the error of the sample is carried through to the repeats', () => {
    const pieces = [
      { repeats: 8, mm: 75.4 },
      { repeats: 13, mm: 118.4 },
    ];
    const sample = aSample({ perRepeatMm: 8.6, endsMm: 6.6, claspMm: 20, pieces, readingMm: 1 });
    const at = (bodyMm: number) => {
      const length = repeatsFor(bodyMm, sample, someRules({}));
      if (!length.ok) throw new Error(length.fault.code);
      const { repeats, certainty } = length.value;
      return [repeats, certainty?.leastRepeats, certainty?.mostRepeats];
    };
    expect(at(165)).toEqual([19, 19, 19]);
    expect(at(169)).toEqual([19, 19, 20]);
    expect(at(171)).toEqual([20, 19, 20]);
  });
});

describe('thickness', () => {
  // Pi x T by hand: T 5.0 adds 15.7 mm, 6.6 adds 20.7, 9.2 adds 28.9.
  test.each([
    [5, 15.7],
    [6.6, 20.7],
    [9.2, 28.9],
  ])('of %f mm adds %f mm once round, beside the ease', (thicknessMm, adds) => {
    const making = { ...byzantineMaking(), kitRules: someRules({ easeMm: 10, thicknessMm }) };
    const kit = kitFor(making, 165);
    if (!kit.ok) throw new Error(kit.fault.code);
    expect(kit.value.length?.thickness?.roundMm).toBeCloseTo(adds, 1);
    expect(kit.value.length?.targetMm).toBeCloseTo(165 + 10 + adds, 1);
  });

  test('that the ease includes is added once', () => {
    const kit = kitFor(byzantineMaking(), 165);
    expect(kit.ok && kit.value.length?.targetMm).toBe(185);
  });
});
