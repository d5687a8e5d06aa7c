import { expect, test } from 'vitest';
import { proposeSentence } from '#lib/lesson/propose-sentence.ts';
import { fitsOf } from '#lib/weave/fit-sequence.ts';
import { usualBandOf } from '#lib/weave/usual-bands.ts';
import { findWeave } from '#lib/weave/weave-library.ts';
import { aPlacement, aRingKind, byzantineMaking } from '#tests/support/a-making.ts';

test('a sequence that can be made has no fit fault', () => {
  const making = byzantineMaking();
  expect(fitsOf(making, making.ringKinds).filter((fit) => fit.fault)).toEqual([]);
});

// Circle packing: five wires of 1.2 mm need 2.701 x 1.2 = 3.24 mm; published table of packings.
test('five wires through a ring of 3 mm are told, with the placement', () => {
  const kind = aRingKind({ id: 'r', innerDiameter: { stated: '3 mm', mm: 3 } });
  const placement = aPlacement({
    opened: 'r',
    carries: [{ ringKind: 'r', count: 2 }],
    passes: [{ from: 'front' }, { from: 'front' }, { from: 'back' }],
  });
  const sequence = { start: [], repeat: [aPlacement({ opened: 'r' }), placement], finishing: [] };
  expect(fitsOf(sequence, [kind])).toMatchObject([
    { wires: 0, fault: null },
    {
      placementId: placement.id,
      part: 'repeat',
      number: 2,
      wires: 5,
      fault: { code: 'wires-cannot-pass', needsMm: expect.closeTo(3.24, 2) },
    },
  ]);
});

test('a band is given for a weave that is named, and for no guess', () => {
  expect(usualBandOf('Byzantine in two colours')?.weave).toBe('byzantine');
  expect(usualBandOf('European 4-in-1 cuff')?.band.from).toBe(3.5);
  expect(usualBandOf('Something of my own', 'byzantine')?.weave).toBe('byzantine');
  expect(usualBandOf('byzantine and spiral')).toBeNull();
  expect(usualBandOf('half Persian 3-in-1')).toBeNull();
});

test('a sentence is proposed from what the placement says', () => {
  const ringKinds = [aRingKind({ id: 'r', name: 'large copper' })];
  const say = (over: Parameters<typeof aPlacement>[0]): string =>
    proposeSentence({ ringKinds }, aPlacement(over));
  expect(say({})).toBe('');
  expect(say({ carries: [{ ringKind: 'r', count: 3 }] })).toBe('Lay out three large copper rings, closed.');
  expect(
    say({
      opened: 'r',
      carries: [{ ringKind: 'r', count: 2 }],
      passes: [{ from: 'front' }, { from: 'front' }],
      lie: 'fold back',
    }),
  ).toBe(
    'Open one large copper ring, pick up two large copper rings, closed beforehand, go through two rings from the front and close it. Fold it back.',
  );
});

test('where every ring is named, the wires are those of all neighbours with their own thickness', () => {
  const persian = findWeave('half-persian-3-in-1-two-sizes')?.piece;
  if (!persian) throw new Error('the library has it');
  const large = aRingKind({ id: 'large', innerDiameter: { stated: '6.35 mm', mm: 6.35 } });
  const small = aRingKind({ id: 'small', innerDiameter: { stated: '4.7625 mm', mm: 4.7625 } });
  const fits = fitsOf(persian, [large, small]);
  // Three neighbours each, and 2.155 x 1.2 = 2.59 mm (packing of three): both sizes pass.
  expect(Math.max(...fits.map(({ wires }) => wires))).toBe(3);
  expect(fits.filter(({ fault }) => fault)).toEqual([]);
  // A small ring of 2.5 mm does not: it is told at the placements that bring one.
  const tight = { ...small, innerDiameter: { stated: '2.5 mm', mm: 2.5 } };
  const broken = fitsOf(persian, [large, tight]).filter(({ fault }) => fault);
  expect(broken.every(({ ringKind }) => ringKind === 'small')).toBe(true);
  expect(broken[0]?.fault).toMatchObject({ wires: 3, needsMm: expect.closeTo(2.586, 2) });
});
