import { expect, test } from 'vitest';
import { differenceOf } from '#lib/kit/kit-difference.ts';
import { kitFor } from '#lib/kit/kit-list.ts';
import type { Making, Material } from '#lib/kit/making.ts';
import { purchaseOf } from '#lib/kit/price.ts';
import { mirroredPlacement, runningCounts } from '#lib/weave/sequence.ts';
import {
  anOffer,
  aPlacement,
  aRingKind,
  aSample,
  byzantineMaking,
  someRules,
} from '#tests/support/a-making.ts';

const kitOf = (making: Making, bodyMm: number) => {
  const kit = kitFor(making, bodyMm);
  if (!kit.ok) throw new Error(kit.fault.code);
  return kit.value;
};

const aMaterial = (over: Partial<Material> & { readonly id: string }): Material => ({
  kind: 'consumable',
  name: over.id,
  quantityMilli: 1000,
  unit: 'piece',
  per: 'lesson',
  massG: null,
  offer: null,
  note: '',
  ...over,
});

test.each([
  ['nothing said yet', { repeat: [], finishing: [], materials: [] }, 'nothing-to-count'],
  ['a repeat without a sample', { sample: null }, 'no-sample'],
  ['a ring kind that was removed', { ringKinds: [] }, 'ring-kind-missing'],
])('%s is a fault that says what is missing', (_, over, code) => {
  expect(kitFor({ ...byzantineMaking(), ...over }, 165)).toMatchObject({ ok: false, fault: { code } });
});

test.each([0, -5, Number.NaN, Number.POSITIVE_INFINITY, 10_001])('%f mm is no body measure', (bodyMm) => {
  expect(kitFor(byzantineMaking(), bodyMm)).toMatchObject({ ok: false, fault: { code: 'not-a-length' } });
});

test('a piece without a repeat is the same for everyone and needs no sample', () => {
  const earrings = { ...byzantineMaking(), repeat: [], sample: null };
  const kit = kitOf(earrings, 165);
  expect([kit.repeats, kit.length, kit.totals.net]).toEqual([0, null, 4]);
  expect(kitOf(earrings, 200).rings).toEqual(kit.rings);
});

test('a lesson without rings counts its beads and cord', () => {
  const kit = kitOf(
    {
      ...byzantineMaking(),
      ringKinds: [],
      repeat: [],
      finishing: [],
      materials: [
        aMaterial({ id: 'bead', kind: 'bead', per: 'repeat', quantityMilli: 3000 }),
        aMaterial({ id: 'cord', kind: 'cord', per: 'length', unit: 'm', quantityMilli: 250 }),
        aMaterial({ id: 'half', per: 'repeat', quantityMilli: 500 }),
        aMaterial({ id: 'awl', kind: 'tool', offer: anOffer(1, 900) }),
      ],
    },
    150,
  );
  expect(kit.repeats).toBe(17);
  // 0.25 m for each of 1.728 hundreds of mm = 0.432 m; half a piece each makes 8.5, and pieces come whole.
  expect(kit.materials.map((m) => m.needMilli)).toEqual([51_000, 432, 9000]);
  expect(kit.tools.map((m) => m.material.id)).toEqual(['awl']);
  expect(kit.totals.price.packsMinor).toBe(0);
});

test('a price is exact where a fraction of a pack has no end', () => {
  const priceOf = (priceMinor: number | null, units: number) =>
    purchaseOf(anOffer(3, priceMinor), { units, unitsPer: 1, spare: 0, nanograms: null }).price;
  expect(priceOf(100, 1)).toEqual({ packsMinor: 100, proRataMilli: 33_333 });
  expect(priceOf(100, 0)).toEqual({ packsMinor: 0, proRataMilli: 0 });
  expect(priceOf(null, 1)).toBeNull();
});

test('a ring kind without a price is told, not counted as free', () => {
  const making = byzantineMaking();
  const kit = kitOf({ ...making, ringKinds: making.ringKinds.map((k) => ({ ...k, offer: null })) }, 150);
  expect(kit.totals.price).toEqual({ packsMinor: 190, proRataMilli: 190_000, priced: 1, unpriced: 3 });
});

test('ten thousand repeats and fifty ring kinds stay whole', () => {
  const ringKinds = Array.from({ length: 50 }, (_, i) => aRingKind({ id: `k${i}` }));
  const making: Making = {
    ...byzantineMaking(),
    ringKinds,
    start: [],
    repeat: ringKinds.map(({ id }) => aPlacement({ opened: id, carries: [{ ringKind: id, count: 7 }] })),
    finishing: [],
    sample: aSample({ perRepeatMm: 0.5 }),
    kitRules: someRules({ easeMm: 0, rounding: 'down', sparePercent: 3 }),
  };
  const kit = kitOf(making, 5000);
  expect(kit.repeats).toBe(10_000);
  expect(kit.totals.net).toBe(50 * 8 * 10_000);
  expect(kit.rings[0]?.issued).toBe(82_400);
});

test('a changed wire makes the held rings another thing; a new name does not', () => {
  const making = byzantineMaking();
  const [copper, ...rest] = making.ringKinds;
  if (!copper) throw new Error('no copper');
  const held = kitOf(making, 165);
  const renamed = kitOf({ ...making, ringKinds: [{ ...copper, name: 'big copper' }, ...rest] }, 165);
  expect(differenceOf(held, renamed).same).toBe(true);
  const thicker = kitOf(
    { ...making, ringKinds: [{ ...copper, wire: { stated: '16 SWG', mm: 1.6256 } }, ...rest] },
    165,
  );
  const difference = differenceOf(held, thicker);
  expect(difference.same).toBe(false);
  expect(difference.rings[0]).toMatchObject({
    how: 'other',
    opened: 0,
    changes: [{ what: 'wire', before: '1.2 mm', now: '16 SWG' }],
  });
});

test('a material that went is told as gone', () => {
  const making = byzantineMaking();
  const difference = differenceOf(kitOf(making, 165), kitOf({ ...making, materials: [] }, 165));
  expect(difference.materials).toMatchObject([{ how: 'gone', needMilli: -1000 }]);
  expect(difference.packsMinor).toBe(-190);
});

test('rings are counted as the piece grows, and mirrored twice is the same', () => {
  const { repeat } = byzantineMaking();
  expect(runningCounts(repeat, 2)).toEqual([5, 6, 7, 8]);
  const first = aPlacement({ passes: [{ from: 'front' }, { from: 'back' }] });
  expect(mirroredPlacement(first).passes).toEqual([{ from: 'back' }, { from: 'front' }]);
  expect(mirroredPlacement(mirroredPlacement(first))).toEqual(first);
});
