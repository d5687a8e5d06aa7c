import { describe, expect, test } from 'vitest';
import { linksOf } from '#lib/weave/space/cell-links.ts';
import { circleDistance } from '#lib/weave/space/circle-distance.ts';
import { pitchAt } from '#lib/weave/space/known-shape.ts';
import { linkSign } from '#lib/weave/space/linking.ts';
import { randomRow } from '#lib/weave/space/random-row.ts';
import { type Cell, inCell, mirroredCell, type RoundRing } from '#lib/weave/space/round-ring.ts';
import { SETTLED_SHAPES } from '#lib/weave/space/settled-shapes.ts';
import { clearanceOf, settledChain } from '#lib/weave/space/shape-chain.ts';
import { shapeOfWeave } from '#lib/weave/space/shape-of-weave.ts';
import { unit, type Vector } from '#lib/weave/space/vector.ts';
import { WEAVES_IN_SPACE } from '#lib/weave/space/weave-in-space.ts';
import { examineChain, gaussLinking, sampledDistance } from '#tests/support/check-in-space.ts';

const PAIRS = Number(process.env['WEAVE_PAIRS'] ?? 250);

const ring = (centre: Vector, normal: Vector, radius = 1, wire = 0.1): RoundRing => ({
  centre,
  normal: unit(normal),
  radius,
  wire,
});

function randomPairs(count: number, seed: number): readonly (readonly [RoundRing, RoundRing])[] {
  const random = randomRow(seed);
  const off = (): number => random() * 2 - 1;
  const any = (spread: number): RoundRing =>
    ring([off() * spread, off() * spread, off() * spread], [off(), off(), off() + 0.01], 0.4 + random());
  return Array.from({ length: count }, () => [any(0.3), any(1.2)] as const);
}

describe('two circles', () => {
  test('a Hopf link is linked once, with the sign of its two directions', () => {
    const a = ring([0, 0, 0], [0, 0, 1]);
    const b = ring([1, 0, 0], [0, 1, 0]);
    expect(linkSign(a, b)).toBe(Math.round(gaussLinking(a, b)));
    expect(linkSign(a, ring([1, 0, 0], [0, -1, 0]))).toBe(-linkSign(a, b));
    expect(linkSign(b, a)).toBe(linkSign(a, b));
    expect(circleDistance(a, b)).toBeCloseTo(1, 12);
  });

  test.each([
    ['on one axis', ring([0, 0, 0.5], [0, 0, 1]), 0.5],
    ['inside, about one centre', ring([0, 0, 0], [0, 0, 1], 0.4), 0.6],
    ['beside', ring([2.5, 0, 0], [0, 0, 1]), 0.5],
    ['a small one across the middle', ring([0, 0, 0], [1, 0, 0], 0.3), 0.7],
  ])('%s: not linked, at its known distance', (_, other, distance) => {
    const a = ring([0, 0, 0], [0, 0, 1]);
    expect(linkSign(a, other)).toBe(0);
    expect(circleDistance(a, other)).toBeCloseTo(distance, 9);
  });

  test('random pairs: distance against sampling both circles, never above what a sample finds', () => {
    for (const [a, b] of randomPairs(PAIRS, 11)) {
      const ours = circleDistance(a, b);
      const sampled = sampledDistance(a, b);
      expect(ours).toBeLessThanOrEqual(sampled + 1e-9);
      // What the sampling itself is good to.
      expect(sampled - ours).toBeLessThan(2e-4);
    }
  });

  test('random pairs: linking against the Gauss integral, sign included', () => {
    const apart = randomPairs(PAIRS, 12).filter(([a, b]) => circleDistance(a, b) > 0.12);
    expect(apart.length).toBeGreaterThan(PAIRS / 4);
    let linked = 0;
    for (const [a, b] of apart) {
      const sign = linkSign(a, b);
      if (sign !== 0) linked += 1;
      expect(Math.abs(gaussLinking(a, b) - sign)).toBeLessThan(1e-3);
    }
    expect(linked).toBeGreaterThan(apart.length / 20);
  });
});

/** Numbers from an independent study of the same model (rigid round rings), allowed 0.5 %. */
const TAUT_PER_RING = {
  'half-persian-3-in-1': {
    rings: 2,
    at: { 3.9: 1.462, 4: 1.56, 4.2: 1.698, 4.4: 1.817, 4.6: 1.931, 5: 2.153, 5.5: 2.427, 6: 2.697 },
  },
  byzantine: { rings: 6, at: { 3.3: 0.876, 3.5: 0.959, 3.8: 1.076, 4: 1.153, 4.5: 1.342, 5: 1.528 } },
  'chain-2-2': { rings: 1, at: { 3: 2.7472, 4: 3.8315, 5: 4.874 } },
  // Three beside each other: numeric column of the worked examples of chains, per stack.
  'chain-3-3': { rings: 1, at: { 4: 3.292, 5: 4.481, 6: 5.589 } },
} as const;

describe('taut chains', () => {
  test.each([2.2, 3, 4, 5])('1-1 of aspect ratio %d: the pitch is the inner diameter', (aspectRatio) => {
    const shape = shapeOfWeave('chain-1-1', [{ inner: aspectRatio * 1.2, wire: 1.2 }]);
    expect(shape.ok && shape.value.cell.pitch).toBeCloseTo(aspectRatio * 1.2, 5);
  });

  test.each(
    Object.entries(TAUT_PER_RING).flatMap(([id, { rings, at }]) =>
      Object.entries(at).map(([aspectRatio, pitch]) => [id, Number(aspectRatio), pitch, rings] as const),
    ),
  )('%s at %d: %d per ring', (id, aspectRatio, pitch, rings) => {
    const read = (pitchAt(id, aspectRatio)?.taut ?? Number.NaN) / rings;
    expect(Math.abs(read / pitch - 1)).toBeLessThan(0.005);
    const shape = shapeOfWeave(id, [{ inner: aspectRatio, wire: 1 }]);
    expect(shape.ok).toBe(true);
    if (shape.ok) expect(Math.abs(shape.value.cell.pitch / rings / pitch - 1)).toBeLessThan(0.005);
  });

  test('2-2 against the least-distance formula p = ID - WD^2 / (2 (ID - WD)), good to 0.2 % from AR 3', () => {
    for (const ar of [3.2, 3.5, 4, 5, 6])
      expect(Math.abs((pitchAt('chain-2-2', ar)?.taut ?? 0) / (ar - 1 / (2 * (ar - 1))) - 1)).toBeLessThan(
        0.002,
      );
  });

  test('Japanese 4-in-1 of two sizes: flat to flat is the sum of both inner diameters', () => {
    const flat = { inner: 6, wire: 1 };
    const upright = { inner: 3, wire: 0.8 };
    const shape = shapeOfWeave('japanese-4-in-1-two-rows', [flat, flat, upright, upright, upright]);
    expect(shape.ok && shape.value.cell.pitch).toBeCloseTo(9, 3);
    // Flat neighbours meet before the small rings do: ID_small >= 2 WD_large.
    const thick = { inner: 2.2, wire: 1 };
    const large = { inner: 4, wire: 1.2 };
    expect(shapeOfWeave('japanese-4-in-1-two-rows', [large, large, thick, thick, thick]).ok).toBe(false);
  });

  test.each([
    ['half-persian-3-in-1', 3.893],
    ['byzantine', 3.266],
    ['european-4-in-1-three-rows', 2.981],
  ])('%s: smallest aspect ratio %d', (id, least) => {
    const found = SETTLED_SHAPES.find((weave) => weave.id === id)?.leastAspectRatio ?? Number.NaN;
    expect(Math.abs(found / least - 1)).toBeLessThan(0.001);
    const tight = shapeOfWeave(id, [{ inner: found - 0.05, wire: 1 }]);
    expect(tight.ok).toBe(false);
    if (!tight.ok) expect(tight.fault).toMatchObject({ code: 'too-tight', needs: found });
  });

  test('pushed together: half Persian 3-in-1 at 4.0 and byzantine at 3.5', () => {
    expect(Math.abs((pitchAt('half-persian-3-in-1', 4)?.pushed ?? 0) / 2 / 1.428 - 1)).toBeLessThan(0.005);
    expect(Math.abs((pitchAt('byzantine', 3.5)?.pushed ?? 0) / 6 / 0.806 - 1)).toBeLessThan(0.02);
  });
});

/** Two shapes of the same study, as it printed them; rounding allows 2e-5. */
const WITNESSES: readonly { name: string; cell: Cell; links: readonly string[] }[] = [
  {
    name: 'half Persian 3-in-1, 4.2',
    cell: {
      pitch: 3.39527,
      twist: 0,
      rings: [
        ring([-0.25402, 0.08401, 0.0446], [-0.29453, -0.60815, -0.73716], 2.6, 1),
        ring([0.301, 0.42953, -1.06295], [-0.29453, 0.91942, -0.26061], 2.6, 1),
      ],
    },
    links: ['0 1 0 -1', '0 1 1 -1', '1 0 1 1'],
  },
  {
    name: 'byzantine, 3.5',
    cell: {
      pitch: 5.7525,
      twist: Math.PI / 2,
      rings: [
        ring([0.32687, 1.39915, 0.03046], [-0.39541, 0.9185, -0.00266], 2.25, 1),
        ring([0.37735, -1.27873, 0.04518], [0.35034, 0.9366, -0.00609], 2.25, 1),
        ring([-0.10567, 0.04456, 1.39951], [0.3956, 0.00696, 0.9184], 2.25, 1),
        ring([-0.15682, 0.03085, -1.27835], [-0.35015, 0.00399, 0.93669], 2.25, 1),
        ring([2.99232, 0.49957, -0.00295], [0.0129, 0.9999, -0.00534], 2.25, 1),
        ring([2.98104, -0.50035, 0.00231], [0.0129, 0.9999, -0.00534], 2.25, 1),
      ],
    },
    links: [
      ...['0 2 0 1', '0 3 0 1', '1 2 0 1', '1 3 0 1', '2 4 0 1', '2 5 0 1', '3 4 0 1', '3 5 0 1'],
      ...['4 0 1 -1', '4 1 1 -1', '5 0 1 -1', '5 1 1 -1'],
    ],
  },
];

test.each(WITNESSES)('witness $name: sound, and nothing longer is found near it', ({ cell, links }) => {
  const found = linksOf(cell);
  expect(found.map(({ a, b, cells, sign }) => `${a} ${b} ${cells} ${sign}`).sort()).toEqual(
    [...links].sort(),
  );
  expect(clearanceOf(cell)).toBeGreaterThan(-2e-5);
  const pulled = settledChain(
    { ...cell, rings: cell.rings.map((each) => ({ ...each, wire: 0.9999 })) },
    'longest',
    { links: found, freeTwist: false, rounds: 200 },
  );
  expect(Math.abs((pulled?.pitch ?? 0) / cell.pitch - 1)).toBeLessThan(0.002);
});

describe('every stored shape, by an examination of its own', () => {
  test.each(SETTLED_SHAPES.map((weave) => [weave.id, weave] as const))('%s', (id, { shapes }) => {
    const weave = WEAVES_IN_SPACE.find((each) => each.id === id);
    const wanted = weave?.links.map(({ a, b, cells, sign }) => `${a} ${b} ${cells} ${sign}`).sort();
    const some = process.env['WEAVE_ALL']
      ? shapes
      : [shapes[1], shapes[7]].filter((shape) => shape !== undefined);
    for (const { aspectRatio } of some) {
      const shape = shapeOfWeave(id, [{ inner: aspectRatio, wire: 1 }]);
      expect(shape.ok).toBe(true);
      if (!shape.ok) continue;
      const examined = examineChain(shape.value.cell);
      expect(examined.least).toBeGreaterThanOrEqual(0.9999);
      expect(examined.links).toEqual(wanted);
    }
  });
});

test('a cell seen from the next one is the same chain', () => {
  const shape = shapeOfWeave('byzantine', [{ inner: 3.6, wire: 1 }]);
  if (!shape.ok) throw new Error(shape.fault.code);
  const { cell } = shape.value;
  const first = cell.rings[0];
  if (!first) throw new Error('no ring');
  const on = inCell(inCell(first, cell, 2), cell, -2);
  expect(on.centre[0]).toBeCloseTo(first.centre[0], 9);
  expect(on.normal[1]).toBeCloseTo(first.normal[1], 9);
});

test('in the mirror every link has the other sign, and twice mirrored is the same', () => {
  const shape = shapeOfWeave('jens-pind-3', [{ inner: 2.9, wire: 1 }]);
  if (!shape.ok) throw new Error(shape.fault.code);
  const { cell, links } = shape.value;
  expect(linksOf(mirroredCell(cell))).toEqual(links.map((link) => ({ ...link, sign: -link.sign })));
  expect(mirroredCell(mirroredCell(cell))).toEqual(cell);
});
