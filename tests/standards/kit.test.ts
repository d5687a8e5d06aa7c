import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { batchOf } from '#lib/kit/kit-batch.ts';
import { differenceOf } from '#lib/kit/kit-difference.ts';
import { type KitList, kitFor } from '#lib/kit/kit-list.ts';
import type { Making } from '#lib/kit/making.ts';
import { fitSample } from '#lib/kit/sample-fit.ts';
import { withSpare } from '#lib/kit/whole.ts';
import {
  anOffer,
  aPlacement,
  aRingKind,
  aSample,
  byzantineMaking,
  someRules,
} from '#tests/support/a-making.ts';

const kitOf = (making: Making, bodyMm: number): KitList => {
  const kit = kitFor(making, bodyMm);
  if (!kit.ok) throw new Error(kit.fault.code);
  return kit.value;
};

// Worked by hand, every size, price and sample invented: n repeats of 4 copper (2 opened, 2 closed) and 2
// aluminium opened; finishing 2 copper and 2 small opened. Length 8.60 n + 6.60 + 20.00 for wrist + 20.00.
// Copper 4n+2, aluminium 2n, small 2; rings 0.1719111, 0.0506524 and 0.0884317 g (Pappus, handbook densities).
describe('a byzantine bracelet, worked by hand', () => {
  const making = byzantineMaking();

  test.each([
    {
      wrist: 150,
      n: 17,
      finished: 172.8,
      over: 2.8,
      cu: [70, 36, 34],
      al: 34,
      total: 106,
      open: 72,
      closed: 34,
    },
    { wrist: 165, n: 19, finished: 190, over: 5, cu: [78, 40, 38], al: 38, total: 118, open: 80, closed: 38 },
    {
      wrist: 180,
      n: 21,
      finished: 207.2,
      over: 7.2,
      cu: [86, 44, 42],
      al: 42,
      total: 130,
      open: 88,
      closed: 42,
    },
  ])('wrist $wrist takes $n repeats', ({ wrist, n, finished, over, cu, al, total, open, closed }) => {
    const kit = kitOf(making, wrist);
    expect(kit.repeats).toBe(n);
    expect(kit.length).toMatchObject({ targetMm: wrist + 20, finishedMm: finished, leftoverMm: over });
    const [copper, aluminium, small] = kit.rings;
    expect([copper?.net, copper?.opened, copper?.closed]).toEqual(cu);
    expect([aluminium?.net, aluminium?.opened, aluminium?.closed]).toEqual([al, al, 0]);
    expect([small?.net, small?.opened]).toEqual([2, 2]);
    expect([kit.totals.net, kit.totals.opened, kit.totals.closed]).toEqual([total, open, closed]);
  });

  test.each([
    { wrist: 150, issued: [77, 38, 3], net: [12.034, 1.722, 0.177], rings: 13.93, clasp: 15.43, all: 15.43 },
    { wrist: 165, issued: [86, 42, 3], net: [13.409, 1.925, 0.177], rings: 15.51, clasp: 17.01, all: 17.18 },
    { wrist: 180, issued: [95, 47, 3], net: [14.784, 2.127, 0.177], rings: 17.09, clasp: 18.59, all: 18.98 },
  ])(
    'wrist $wrist: spare of 10 % up per line, packs and masses',
    ({ wrist, issued, net, rings, clasp, all }) => {
      const kit = kitOf(making, wrist);
      expect(kit.rings.map((r) => r.issued)).toEqual(issued);
      expect(kit.rings.map((r) => r.packs?.packs)).toEqual([1, 1, 1]);
      kit.rings.forEach((line, i) => {
        expect(line.netG).toBeCloseTo(net[i] ?? 0, 3);
      });
      expect(kit.totals.ringsNetG).toBeCloseTo(rings, 2);
      expect((kit.totals.ringsNetG ?? 0) + kit.totals.materialsG).toBeCloseTo(clasp, 2);
      expect(kit.totals.ringsIssuedG).toBeCloseTo(all, 2);
    },
  );

  test('bought alone every size costs 12.70; pro rata 7.036, 7.612 and 8.224', () => {
    const prices = [150, 165, 180].map((wrist) => kitOf(making, wrist).totals.price);
    expect(prices.map((p) => p.packsMinor)).toEqual([1270, 1270, 1270]);
    expect(prices.map((p) => p.proRataMilli)).toEqual([703_600, 761_200, 822_400]);
    expect(prices.map((p) => p.unpriced)).toEqual([0, 0, 0]);
  });

  test.each([
    [150, 17, 2.8],
    [165, 18, -3.6],
    [180, 20, -1.4],
  ])('rounded to the nearest, wrist %i takes %i repeats and is off by %f mm', (wrist, n, over) => {
    const kit = kitOf({ ...making, kitRules: { ...making.kitRules, rounding: 'nearest' } }, wrist);
    expect([kit.repeats, kit.length?.leftoverMm]).toEqual([n, over]);
  });

  test('a class of two small, three medium and one large: rounded per kit, then added', () => {
    const batch = batchOf([
      { kit: kitOf(making, 150), times: 2 },
      { kit: kitOf(making, 165), times: 3 },
      { kit: kitOf(making, 180), times: 1 },
    ]);
    expect(batch.kits).toBe(6);
    expect(batch.rings.map((r) => r.issued)).toEqual([507, 249, 18]);
    expect(batch.rings.map((r) => r.packs?.packs)).toEqual([6, 3, 1]);
    expect(batch.materials.map((m) => m.needMilli)).toEqual([6000]);
    expect(batch.price.packsMinor).toBe(5340);
  });

  // The same class, pooled: 460, 224 and 12 rings first, then 10 % on the sums: 506, 246.4 up to 247, 13.2 up to 14.
  test('the class with its spare pooled: added first, then rounded', () => {
    const batch = batchOf(
      [
        { kit: kitOf(making, 150), times: 2 },
        { kit: kitOf(making, 165), times: 3 },
        { kit: kitOf(making, 180), times: 1 },
      ],
      'pooled',
    );
    expect(batch.rings.map((r) => r.net)).toEqual([460, 224, 12]);
    expect(batch.rings.map((r) => r.issued)).toEqual([506, 247, 14]);
    expect(batch.rings.map((r) => r.packs?.packs)).toEqual([6, 3, 1]);
    expect(batch.price.packsMinor).toBe(5340);
  });

  test('too short for one repeat is a fault with the smallest wrist that works, and that one works', () => {
    const fault = kitFor(making, 6);
    expect(fault).toMatchObject({
      ok: false,
      fault: { code: 'too-short', targetMm: 26, shortestBodyMm: 6.6001 },
    });
    for (const rounding of ['up', 'nearest', 'down'] as const) {
      const ruled = { ...making, kitRules: { ...making.kitRules, rounding } };
      const short = kitFor(ruled, 1);
      if (short.ok || short.fault.code !== 'too-short') throw new Error('expected too-short');
      expect(kitOf(ruled, short.fault.shortestBodyMm).repeats).toBe(1);
      expect(kitFor(ruled, short.fault.shortestBodyMm - 0.0001).ok).toBe(false);
    }
  });
});

// ceil(count * 1.1) in binary fractions gives 56, 100, 111 and 122; right is 55, 99, 110 and 121.
test.each([
  [50, 55],
  [90, 99],
  [100, 110],
  [110, 121],
  [2, 3],
  [0, 0],
])('%i rings with 10 %% spare are %i', (count, issued) => {
  expect(withSpare(count, 10)).toBe(issued);
});

// (T - f - c)/g = 18 exactly: 154.8/8.6 comes out as 18.000000000000004 in binary fractions.
test('a length that is a whole number of repeats takes no repeat more', () => {
  expect(kitOf(byzantineMaking(), 26.6 - 20 + 154.8).repeats).toBe(18);
});

// g = (L(b) - L(a))/(b - a), f = L(a) - a g, by hand: (118.4 - 75.4)/5 = 8.6; 75.4 - 8 x 8.6 = 6.6.
test('two samples give the length per repeat and of the ends', () => {
  const fitted = (...pieces: readonly (readonly [number, number])[]) =>
    fitSample(pieces.map(([repeats, mm]) => ({ repeats, mm })));
  expect(fitted([8, 75.4], [13, 118.4])).toEqual({ ok: true, value: { perRepeatMm: 8.6, endsMm: 6.6 } });
  expect(fitted([13, 118.4], [8, 75.4])).toEqual(fitted([8, 75.4], [13, 118.4]));
  expect(fitted([8, 75.4], [13, 75.4])).toMatchObject({ ok: false, fault: { code: 'pieces-disagree' } });
  expect(fitted([8, 20], [13, 118.4])).toMatchObject({ ok: false, fault: { code: 'pieces-disagree' } });
  expect(fitted([8, 75.4], [8, 75.6])).toMatchObject({ ok: false, fault: { code: 'pieces-too-few' } });
});

// Common practice (no source): half Persian 3-in-1 in two sizes. Three closed rings (large, small, large) begin; each
// placement opens one ring of one size, carries one closed of the other, and ends with an opened large one alone:
// about half the rings are opened, half closed beforehand.
test('a two-size half Persian piece opens and closes about half of its rings', () => {
  const large = aRingKind({ id: 'large', innerDiameter: { stated: '1/4 in', mm: 6.35 } });
  const small = aRingKind({ id: 'small', innerDiameter: { stated: '3/16 in', mm: 4.7625 } });
  const passes = [{ from: 'front' }, { from: 'front' }, { from: 'back' }] as const;
  const making: Making = {
    ...byzantineMaking(),
    ringKinds: [large, small],
    materials: [],
    start: [
      aPlacement({
        carries: [
          { ringKind: 'large', count: 2 },
          { ringKind: 'small', count: 1 },
        ],
      }),
    ],
    repeat: [
      aPlacement({ opened: 'small', carries: [{ ringKind: 'large', count: 1 }], passes }),
      aPlacement({ opened: 'large', carries: [{ ringKind: 'small', count: 1 }], passes }),
    ],
    finishing: [aPlacement({ opened: 'large', passes })],
  };
  const kit = kitOf(making, 150);
  const n = kit.repeats;
  expect(kit.rings.map((r) => [r.opened, r.closed])).toEqual([
    [n + 1, n + 2],
    [n, n + 1],
  ]);
  expect(Math.abs(kit.totals.opened - kit.totals.closed)).toBeLessThanOrEqual(2);
});

/** Rings of one kind, met one by one. */
function walk(placements: Making['start'], id: string): { opened: number; closed: number } {
  let opened = 0;
  let closed = 0;
  for (const placement of placements) {
    if (placement.opened === id) opened += 1;
    for (const carry of placement.carries) if (carry.ringKind === id) closed += carry.count;
  }
  return { opened, closed };
}

describe('properties', () => {
  const count = fc.integer({ min: 0, max: 5 });
  const placements = fc.array(
    fc.record({
      opened: fc.constantFrom('a', 'b', null),
      carries: fc.array(
        fc.record({ ringKind: fc.constantFrom('a', 'b'), count: fc.integer({ min: 1, max: 4 }) }),
        { maxLength: 3 },
      ),
    }),
    { minLength: 1, maxLength: 6 },
  );
  const makings = fc
    .record({
      start: placements,
      repeat: placements,
      finishing: placements,
      spare: fc.integer({ min: 0, max: 100 }),
    })
    .map(
      ({ start, repeat, finishing, spare }): Making => ({
        ...byzantineMaking(),
        ringKinds: [
          aRingKind({ id: 'a', offer: anOffer(30, 199) }),
          aRingKind({ id: 'b', offer: anOffer(7, 1) }),
        ],
        materials: [],
        sample: aSample({ perRepeatMm: 10 }),
        kitRules: someRules({ easeMm: 0, sparePercent: spare }),
        start: start.map(aPlacement),
        repeat: repeat.map(aPlacement),
        finishing: finishing.map(aPlacement),
      }),
    );
  const countOf = (kit: KitList, id: string, of: 'opened' | 'closed' | 'net'): number =>
    kit.rings.find((r) => r.ringKind.id === id)?.[of] ?? 0;

  test('counts equal a walk ring by ring, and opened + closed is the total', () => {
    fc.assert(
      fc.property(makings, fc.integer({ min: 1, max: 40 }), (making, n) => {
        const kit = kitOf(making, n * 10);
        expect(kit.repeats).toBe(n);
        const walked = [
          making.start,
          ...Array(n).fill(making.repeat),
          making.finishing,
        ].flat() as Making['start'];
        for (const id of ['a', 'b']) {
          const { opened, closed } = walk(walked, id);
          expect([countOf(kit, id, 'opened'), countOf(kit, id, 'closed')]).toEqual([opened, closed]);
          expect(countOf(kit, id, 'net')).toBe(opened + closed);
        }
      }),
    );
  });

  test('n + m repeats take what n and m take, less one start and finishing', () => {
    fc.assert(
      fc.property(
        makings,
        fc.integer({ min: 1, max: 30 }),
        fc.integer({ min: 1, max: 30 }),
        (making, n, m) => {
          const [long, short, rest] = [n + m, n, m].map((r) => kitOf(making, r * 10));
          for (const id of ['a', 'b']) {
            const terms = long?.rings.find((r) => r.ringKind.id === id)?.terms ?? [];
            const twice = terms
              .filter(({ what }) => what !== 'repeat')
              .reduce((sum, { each }) => sum + each.opened + each.closed, 0);
            const net = (kit: KitList | undefined): number => (kit ? countOf(kit, id, 'net') : 0);
            expect(net(long)).toBe(net(short) + net(rest) - twice);
          }
        },
      ),
    );
  });

  test('more spare is never fewer rings, packs or money, and every count is whole', () => {
    fc.assert(
      fc.property(makings, fc.integer({ min: 0, max: 99 }), (making, spare) => {
        const rules = (sparePercent: number) => ({
          ...making,
          kitRules: { ...making.kitRules, sparePercent },
        });
        const less = kitOf(rules(spare), 100);
        const more = kitOf(rules(spare + 1), 100);
        more.rings.forEach((line, i) => {
          const before = less.rings[i];
          expect(line.issued).toBeGreaterThanOrEqual(before?.issued ?? 0);
          expect(line.packs?.packs).toBeGreaterThanOrEqual(before?.packs?.packs ?? 0);
          expect(line.issued * 100).toBeGreaterThanOrEqual(line.net * (101 + spare));
          expect((line.issued - 1) * 100).toBeLessThan(Math.max(1, line.net * (101 + spare)));
          const numbers = [line.opened, line.closed, line.spare, line.issued, line.price?.packsMinor];
          for (const whole of [...numbers, line.price?.proRataMilli])
            expect(Number.isSafeInteger(whole)).toBe(true);
        });
        expect(more.totals.price.packsMinor).toBeGreaterThanOrEqual(less.totals.price.packsMinor);
      }),
    );
  });

  test('a difference is exact: what was held and the difference make what is now', () => {
    fc.assert(
      fc.property(
        makings,
        makings,
        fc.integer({ min: 1, max: 20 }),
        fc.integer({ min: 1, max: 20 }),
        (a, b, n, m) => {
          const held = kitOf(a, n * 10);
          const now = kitOf(b, m * 10);
          const difference = differenceOf(held, now);
          for (const d of difference.rings)
            for (const of of ['opened', 'closed'] as const)
              expect(countOf(held, d.ringKind.id, of) + d[of]).toBe(countOf(now, d.ringKind.id, of));
          expect(held.totals.price.packsMinor + (difference.packsMinor ?? Number.NaN)).toBe(
            now.totals.price.packsMinor,
          );
          expect(differenceOf(now, now)).toMatchObject({ same: true, packsMinor: 0, proRataMilli: 0 });
        },
      ),
    );
  });

  test('kits add: a batch is the sum of its kits, kind by kind, and batches of parts make the whole', () => {
    fc.assert(
      fc.property(
        makings,
        fc.array(fc.tuple(fc.integer({ min: 1, max: 30 }), fc.integer({ min: 0, max: 9 })), { maxLength: 4 }),
        (making, sizes) => {
          const parts = sizes.map(([n, times]) => ({ kit: kitOf(making, n * 10), times }));
          const whole = batchOf(parts);
          for (const id of ['a', 'b'])
            for (const of of ['opened', 'closed', 'spare', 'issued'] as const)
              expect(whole.rings.find((r) => r.ringKind.id === id)?.[of] ?? 0).toBe(
                parts.reduce(
                  (sum, { kit, times }) =>
                    sum + times * (kit.rings.find((r) => r.ringKind.id === id)?.[of] ?? 0),
                  0,
                ),
              );
          const halves = [batchOf(parts.slice(0, 2)), batchOf(parts.slice(2))];
          expect(halves.reduce((sum, half) => sum + half.issued, 0)).toBe(whole.issued);
          // One tray of spare for all is never more than one in every kit.
          expect(batchOf(parts, 'pooled').issued).toBeLessThanOrEqual(whole.issued);
        },
      ),
      { numRuns: 50 },
    );
  });

  // Whatever lengths, masses and packs are stated, what is counted and paid stays whole.
  test('no fraction reaches a count, a pack or a price', () => {
    const size = fc.double({ min: 0.31, max: 90, noNaN: true });
    const odd = fc.record({
      perRepeatMm: size,
      endsMm: size,
      easeMm: size,
      thicknessMm: fc.option(size),
      hundredG: fc.double({ min: 0.01, max: 500, noNaN: true }),
      nanograms: fc.integer({ min: 1, max: 2_000_000_000_000 }),
      sparePercent: fc.integer({ min: 0, max: 100 }),
      spareBy: fc.constantFrom('line' as const, 'kit' as const),
      rounding: fc.constantFrom('up' as const, 'nearest' as const, 'down' as const),
      bodyMm: fc.double({ min: 50, max: 900, noNaN: true }),
    });
    fc.assert(
      fc.property(makings, odd, (making, stated) => {
        const { nanograms } = stated;
        const mass = { by: 'mass' as const, mass: { stated: 'odd', nanograms }, priceMinor: 1234 };
        const kit = kitFor(
          {
            ...making,
            ringKinds: making.ringKinds.map((kind) => ({
              ...kind,
              weighedHundredG: stated.hundredG,
              offer: { packs: [mass, { by: 'count', count: 7, priceMinor: 99 }], link: '' },
            })),
            sample: aSample({ perRepeatMm: stated.perRepeatMm, endsMm: stated.endsMm }),
            kitRules: someRules(stated),
          },
          stated.bodyMm,
        );
        if (!kit.ok) return;
        const { totals } = kit.value;
        const whole = [kit.value.repeats, totals.issued, totals.price.packsMinor, totals.price.proRataMilli];
        for (const { opened, closed, spare, issued, packs, price } of kit.value.rings)
          whole.push(
            ...[opened, closed, spare, issued, packs?.packs ?? 0, packs?.over ?? 0],
            ...[price?.packsMinor ?? 0, price?.proRataMilli ?? 0],
          );
        for (const number of whole) expect(Number.isSafeInteger(number) && number >= 0).toBe(true);
      }),
      { numRuns: 80 },
    );
  });

  test('a batch of k kits issues k times one kit, and never needs more packs than they do alone', () => {
    fc.assert(
      fc.property(makings, count, (making, times) => {
        const kit = kitOf(making, 120);
        const batch = batchOf([{ kit, times }]);
        expect(batch.issued).toBe(times * kit.totals.issued);
        expect(batch.price.packsMinor).toBeLessThanOrEqual(times * kit.totals.price.packsMinor);
      }),
    );
  });
});
