import fc from 'fast-check';
import { expect, test } from 'vitest';
import { nextPlace, SNAP_WITHIN_MS, snapMoment, snapPlaces } from '#lib/chapters/snap.ts';

const cues = [
  { startMs: 1_000, endMs: 4_000 },
  { startMs: 5_000, endMs: 9_000 },
];
const places = snapPlaces(cues, [{ startMs: 4_000, endMs: 5_001 }]);

test('places are the edges of cues and the middles of pauses', () => {
  expect(places).toEqual([0, 1_000, 4_000, 4_501, 5_000, 9_000]);
});

test.each([
  [1_300, 1_000],
  [4_200, 4_000],
  [4_250, 4_000],
  [4_300, 4_501],
  [2_500, 2_500],
  [9_701, 9_701],
  [9_700, 9_000],
])('an edge at %i comes to rest at %i', (at, rest) => {
  expect(snapMoment(at, places)).toBe(rest);
});

test('agrees with looking at every place', () => {
  fc.assert(
    fc.property(fc.uniqueArray(fc.nat(100_000)), fc.nat(100_000), (some, at) => {
      const sorted = some.sort((a, b) => a - b);
      const near = sorted.filter((place) => Math.abs(place - at) <= SNAP_WITHIN_MS);
      const best = near.toSorted((a, b) => Math.abs(a - at) - Math.abs(b - at) || a - b)[0] ?? at;
      expect(snapMoment(at, sorted)).toBe(best);
      expect(nextPlace(at, sorted, 'earlier')).toBe(sorted.findLast((place) => place < at) ?? null);
      expect(nextPlace(at, sorted, 'later')).toBe(sorted.find((place) => place > at) ?? null);
    }),
  );
});
