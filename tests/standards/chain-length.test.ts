/**
 * Lengths of chains of rigid round rings pulled straight, derived by hand:
 * neighbouring single rings stand at right angles with the wire of each in
 * the middle of the other, so centres are (ID + ID')/2 apart and n equal
 * rings reach from outside to outside n x ID + 2 x WD. For pairs the figures
 * come from an independent search for the least distance of two pairs.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chainLengthMm, closedFormOf, type Stack, stackPitchMm } from '#lib/kit/chain-length.ts';
import { WEAVES } from '#lib/weave/weave-library.ts';
import { aRingKind } from '#tests/support/a-making.ts';

const stack = (innerMm: number, wireMm: number, count = 1): Stack => ({ innerMm, wireMm, count });
const times = (n: number, one: Stack): Stack[] => Array.from({ length: n }, () => one);

describe('worked by hand', () => {
  test.each([
    ['40 rings 1.20/4.20 in a 1-1 chain', times(40, stack(4.2, 1.2)), 170.4],
    ['25 rings 16 SWG, 1/4 in in a 1-1 chain', times(25, stack(6.35, 1.6256)), 162.0012],
    ['40 pairs 1.20/4.20 in a 2-2 chain', times(40, stack(4.2, 1.2, 2)), 161.04],
    ['30 pairs 1.60/6.00 in a 2-2 chain', times(30, stack(6, 1.6, 2)), 174.7636],
    ['rings of 3, 4, 5, 4 and 3 mm, wire 1.0', [3, 4, 5, 4, 3].map((id) => stack(id, 1)), 21],
  ])('%s', (_, stacks, mm) => {
    expect(chainLengthMm(stacks)).toBeCloseTo(mm, 4);
  });
});

// Least distance of two linked pairs, and of two threes, found numerically; in wire diameters.
test.each([
  ['pairs', 2, 3, 2.747, 0.002],
  ['pairs', 2, 3.5, 3.298, 0.001],
  ['pairs', 2, 4, 3.832, 0.001],
  ['pairs', 2, 5, 4.874, 0.001],
  ['pairs', 2, 6, 5.9, 0.001],
  ['threes', 3, 3.5, 2.632, 0.031],
  ['threes', 3, 4, 3.292, 0.02],
  ['threes', 3, 5, 4.481, 0.005],
  ['threes', 3, 6, 5.589, 0.005],
])(
  'the pitch of %s (%i) at aspect ratio %f is close to the %f of a search',
  (_, count, ratio, pitch, within) => {
    const formula = stackPitchMm(stack(ratio, 1, count), stack(ratio, 1, count)) ?? Number.NaN;
    expect(Math.abs(formula - pitch) / pitch).toBeLessThanOrEqual(within);
  },
);

// Single between pairs, aspect ratio 4: ID - WD^2/(4(ID - WD)) = 3.9167, 3.914 by search.
test('a single ring between pairs', () => {
  expect(stackPitchMm(stack(4, 1, 1), stack(4, 1, 2))).toBeCloseTo(3.9167, 3);
});

describe('found from a ring sequence', () => {
  const formOf = (id: string, sizes: readonly (readonly [number, number])[]) => {
    const weave = WEAVES.find((each) => each.id === id);
    if (!weave) throw new Error(`no weave ${id}`);
    const kinds = weave.roles.map((role, index) => {
      const [inner = 4.2, wire = 1.2] = sizes[index] ?? sizes[0] ?? [];
      return aRingKind({
        id: role.id,
        innerDiameter: { stated: `${inner} mm`, mm: inner },
        wire: { stated: `${wire} mm`, mm: wire },
      });
    });
    return closedFormOf(weave.piece, kinds);
  };

  test('1-1: one repeat of two rings adds 2 ID, exactly', () => {
    expect(formOf('chain-1-1', [[4.2, 1.2]])).toMatchObject({
      perRepeatMm: 8.4,
      endsMm: 4.2 + 2.4,
      isExact: true,
      stacks: [1, 1],
    });
  });

  test('2-2: one repeat adds one pitch of pairs', () => {
    expect(formOf('chain-2-2', [[4.2, 1.2]])).toMatchObject({
      perRepeatMm: 3.96,
      endsMm: 6.6,
      isExact: false,
      stacks: [2],
    });
  });

  test('threes, and singles between pairs', () => {
    expect(formOf('chain-3-3', [[5, 1]])?.perRepeatMm).toBeCloseTo(4.5, 4);
    expect(formOf('chain-2-1', [[4, 1]])?.perRepeatMm).toBeCloseTo(2 * 3.9167, 3);
  });

  test('what is folded, woven flat or spiral has none', () => {
    for (const { id, piece, roles } of WEAVES)
      if (!/^chain-/.test(id))
        expect(
          closedFormOf(
            piece,
            roles.map((role) => aRingKind({ id: role.id })),
          ),
          id,
        ).toBeNull();
  });

  test('singles of any sizes: the sum of inner diameters and the two outer wires', () => {
    const size = fc.integer({ min: 20, max: 90 }).map((tenths) => tenths / 10);
    fc.assert(
      fc.property(fc.array(fc.tuple(size, size), { minLength: 1, maxLength: 30 }), (sizes) => {
        const stacks = sizes.map(([inner, wire]) => stack(inner, wire / 10));
        const sum = stacks.reduce((all, { innerMm }) => all + innerMm, 0);
        const wires = (stacks[0]?.wireMm ?? 0) + (stacks.at(-1)?.wireMm ?? 0);
        expect(chainLengthMm(stacks)).toBeCloseTo(sum + wires, 9);
      }),
    );
  });
});
