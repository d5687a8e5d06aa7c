import { expect, test } from 'vitest';
import { kitRules, sample } from '#lib/kit/making.ts';
import { offer } from '#lib/thing.ts';

test('what was written when there was one pack, no pieces and one spare rule still reads', () => {
  expect(offer.parse({ packCount: 100, priceMinor: 480, link: '' })).toEqual({
    packs: [{ by: 'count', count: 100, priceMinor: 480 }],
    link: '',
  });
  expect(sample.parse({ perRepeatMm: 8.6, endsMm: 6.6, claspMm: 20, measured: 'at rest' })).toMatchObject({
    pieces: [],
    readingMm: null,
  });
  expect(kitRules.parse({ easeMm: 20, rounding: 'up', sparePercent: 10 })).toMatchObject({
    thicknessMm: null,
    spareBy: 'line',
    spareLeast: 0,
  });
});

test.each([
  ['no pack', { packs: [], link: '' }],
  ['a pack of nothing', { packs: [{ by: 'count', count: 0, priceMinor: 1 }], link: '' }],
  ['half a ring', { packs: [{ by: 'count', count: 0.5, priceMinor: 1 }], link: '' }],
  ['a fraction of a cent', { packs: [{ by: 'count', count: 1, priceMinor: 1.5 }], link: '' }],
  ['a script for a link', { packCount: 1, priceMinor: 1, link: 'javascript:alert(1)' }],
])('%s is no offer', (_, value) => {
  expect(offer.safeParse(value).success).toBe(false);
});
