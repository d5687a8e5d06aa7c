import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { countWords } from '#app/words/kit-words.ts';
import { kitFor } from '#lib/kit/kit-list.ts';
import type { Making } from '#lib/kit/making.ts';
import type { Run } from '#lib/weave/placement.ts';
import { turnsOf } from '#lib/weave/walk.ts';
import { aPlacement, aRingKind, aSample, someRules } from '#tests/support/a-making.ts';

const run = (over: Partial<Run> & { readonly id: string }): Run => ({
  unit: '',
  repeats: null,
  swaps: [],
  ...over,
});

/** A chain of single rings, 10 mm a repeat of two: one opened that carries one closed. */
const chain = (over: Partial<Making> = {}): Making => ({
  ringKinds: [aRingKind({ id: 'copper' }), aRingKind({ id: 'silver' }), aRingKind({ id: 'large' })],
  start: [],
  repeat: [aPlacement({ opened: 'copper', carries: [{ ringKind: 'copper', count: 1 }] })],
  finishing: [aPlacement({ opened: 'copper' })],
  sample: aSample({ perRepeatMm: 10 }),
  kitRules: someRules({ easeMm: 0, sparePercent: 0 }),
  materials: [],
  currency: 'EUR',
  ...over,
});

const kitOf = (making: Making, bodyMm: number) => {
  const kit = kitFor(making, bodyMm);
  if (!kit.ok) throw new Error(kit.fault.code);
  return kit.value;
};

const counts = (making: Making, bodyMm: number) =>
  Object.fromEntries(
    kitOf(making, bodyMm).rings.map((line) => [line.ringKind.id, [line.opened, line.closed]]),
  );

const toSilver = [{ ringKind: 'copper', by: 'silver' }];

describe('runs of repeats in a kit', () => {
  // By hand: 5 copper, 3 silver, 5 copper is 13 repeats; at 2 rings each and 1 to finish 21 copper, 6 silver.
  test('5 copper, 3 silver, 5 copper', () => {
    const runs = [
      run({ id: 'a', repeats: 5 }),
      run({ id: 'b', repeats: 3, swaps: toSilver }),
      run({ id: 'c', repeats: 5 }),
    ];
    expect(counts(chain({ runs }), 130)).toEqual({ copper: [11, 10], silver: [3, 3] });
    const line = kitOf(chain({ runs }), 130).rings[0];
    expect(line && countWords(line.terms, ['a', 'b', 'c'], line, 'opened')).toBe(
      '11 opened = 5 × 1 in the repeat of run 1 + 5 × 1 in the repeat of run 3 + 1 to finish',
    );
  });

  test('a motif in the middle keeps its count, and what the length leaves lies to both sides', () => {
    const runs = [run({ id: 'a' }), run({ id: 'b', repeats: 3, swaps: toSilver }), run({ id: 'c' })];
    for (const mm of [100, 150, 205])
      expect(counts(chain({ runs }), mm)['silver'], `${mm} mm`).toEqual([3, 3]);
    const short = kitOf(chain({ runs }), 20);
    expect(short.length?.cutRepeats).toBe(1);
  });

  // By hand: small 10 mm, large 14 mm: 6 x 14 = 84 in the middle, and the rest of 184 in tens: 100 = 5 + 5.
  test('a piece that grows to the centre: every run has its own length', () => {
    const runs = [
      run({ id: 'a' }),
      run({ id: 'b', repeats: 6, swaps: [{ ringKind: 'copper', by: 'large' }] }),
      run({ id: 'c' }),
    ];
    const sample = aSample({ perRepeatMm: 10, runs: [{ run: 'b', perRepeatMm: 14, overRepeats: null }] });
    const kit = kitOf(chain({ runs, sample }), 184);
    expect(kit.length).toMatchObject({
      repeats: 16,
      finishedMm: 184,
      stretches: [
        { repeats: 5, perRepeatMm: 10 },
        { repeats: 6, perRepeatMm: 14 },
        { repeats: 5, perRepeatMm: 10 },
      ],
    });
    expect(counts(chain({ runs, sample }), 184)).toEqual({ copper: [11, 10], large: [6, 6] });
  });

  test('ends in the middle of a repeat where the finishing asks for it', () => {
    const first = aPlacement({ id: 'first', opened: 'silver' });
    const making = chain({
      repeat: [first, aPlacement({ id: 'second', opened: 'copper' })],
      finishing: [],
      endsAfter: 'first',
    });
    expect(counts(making, 100)).toEqual({ copper: [10, 0], silver: [11, 0] });
  });
});

describe('properties of runs', () => {
  const lengths = fc.integer({ min: 1, max: 300 });
  const runsOf = fc.array(
    fc.record({ repeats: fc.option(fc.integer({ min: 1, max: 9 })), mm: lengths, silver: fc.boolean() }),
    {
      minLength: 1,
      maxLength: 5,
    },
  );
  const made = runsOf.map((runs) =>
    chain({
      runs: runs.map(({ repeats, silver }, i) => run({ id: `${i}`, repeats, swaps: silver ? toSilver : [] })),
      sample: aSample({
        perRepeatMm: 10,
        endsMm: 3,
        runs: runs.map(({ mm }, i) => ({ run: `${i}`, perRepeatMm: mm / 10, overRepeats: null })),
      }),
    }),
  );

  test('counts equal the walk, turn by turn', () => {
    fc.assert(
      fc.property(made, fc.integer({ min: 40, max: 400 }), (making, bodyMm) => {
        const kit = kitOf(making, bodyMm);
        const walked = new Map<string, number>();
        const put = (kind: string, n: number) => walked.set(kind, (walked.get(kind) ?? 0) + n);
        for (const { placement } of turnsOf(making, kit.repeats)) {
          if (placement.opened) put(placement.opened, 1);
          for (const { ringKind, count } of placement.carries) put(ringKind, count);
        }
        expect(new Map(kit.rings.map((line) => [line.ringKind.id, line.net]))).toEqual(
          new Map([...walked].sort()),
        );
      }),
      { numRuns: 60 },
    );
  });

  test('rounded up is the first count that is long enough, rounded down the last that is not too long', () => {
    fc.assert(
      fc.property(made, fc.integer({ min: 40, max: 400 }), (making, bodyMm) => {
        const at = (rounding: 'up' | 'down' | 'nearest') =>
          kitOf({ ...making, kitRules: { ...making.kitRules, rounding } }, bodyMm).length;
        const [up, down, nearest] = [at('up'), at('down'), at('nearest')];
        expect(up?.leftoverMm).toBeGreaterThanOrEqual(0);
        expect(down?.leftoverMm).toBeLessThanOrEqual(0);
        expect((up?.repeats ?? 0) - (down?.repeats ?? 0)).toBe(up?.leftoverMm === 0 ? 0 : 1);
        expect(Math.abs(nearest?.leftoverMm ?? 1e9)).toBe(
          Math.min(Math.abs(up?.leftoverMm ?? 0), Math.abs(down?.leftoverMm ?? 0)),
        );
      }),
      { numRuns: 60 },
    );
  });
});
