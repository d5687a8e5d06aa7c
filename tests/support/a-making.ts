/** Ring kinds, placements and whole makings for tests; every size and price is invented. */
import type { KitRules, Making, Sample } from '#lib/kit/making.ts';
import type { RingKind } from '#lib/rings/ring-kind.ts';
import type { Offer } from '#lib/thing.ts';
import type { Placement } from '#lib/weave/placement.ts';

export function aRingKind(over: Partial<RingKind> & { readonly id: string }): RingKind {
  return {
    name: over.id,
    innerDiameter: { stated: '4.2 mm', mm: 4.2 },
    measuredInnerMm: null,
    wire: { stated: '1.2 mm', mm: 1.2 },
    metal: 'copper',
    metalName: '',
    densityGPerCm3: null,
    colour: 'copper',
    colourCode: '#b8643c',
    weighedHundredG: null,
    offer: null,
    ...over,
  };
}

/** One kind of pack, by count. */
export const anOffer = (count: number, priceMinor: number | null): Offer => ({
  packs: [{ by: 'count', count, priceMinor }],
  link: '',
});

export const aSample = (over: Partial<Sample>): Sample => ({
  perRepeatMm: 10,
  endsMm: 0,
  claspMm: 0,
  measured: 'pulled taut',
  pieces: [],
  runs: [],
  readingMm: null,
  note: '',
  ...over,
});

export const someRules = (over: Partial<KitRules>): KitRules => ({
  easeMm: 20,
  thicknessMm: null,
  rounding: 'up',
  sparePercent: 10,
  spareBy: 'line',
  spareLeast: 0,
  ...over,
});

let made = 0;
export function aPlacement(over: Partial<Placement>): Placement {
  made += 1;
  return {
    id: `placement-${made}`,
    opened: null,
    carries: [],
    passes: [],
    lie: 'as it falls',
    sentence: '',
    atMs: null,
    pictureText: '',
    ...over,
  };
}

/** Byzantine bracelet, copper and aluminium, 8.6 mm a repeat; the worked example A of the standards tests. */
export function byzantineMaking(): Making {
  const through = [{ from: 'front' }, { from: 'front' }] as const;
  return {
    ringKinds: [
      aRingKind({ id: 'copper', offer: anOffer(100, 480) }),
      aRingKind({
        id: 'aluminium',
        metal: 'aluminium-5356',
        colour: 'silver grey',
        offer: anOffer(100, 360),
      }),
      aRingKind({
        id: 'small',
        innerDiameter: { stated: '3 mm', mm: 3 },
        wire: { stated: '1 mm', mm: 1 },
        offer: anOffer(100, 240),
      }),
    ],
    start: [],
    repeat: [
      aPlacement({ opened: 'copper', carries: [{ ringKind: 'copper', count: 2 }], passes: through }),
      aPlacement({ opened: 'copper', passes: [...through, ...through] }),
      aPlacement({ opened: 'aluminium', passes: through, lie: 'fold back' }),
      aPlacement({ opened: 'aluminium', passes: through, lie: 'fold back' }),
    ],
    finishing: [
      aPlacement({ opened: 'copper', passes: through }),
      aPlacement({ opened: 'copper', passes: through }),
      aPlacement({ opened: 'small', passes: through }),
      aPlacement({ opened: 'small', passes: through }),
    ],
    sample: aSample({ perRepeatMm: 8.6, endsMm: 6.6, claspMm: 20 }),
    kitRules: someRules({}),
    materials: [
      {
        id: 'clasp',
        kind: 'finding',
        name: 'lobster clasp',
        quantityMilli: 1000,
        unit: 'piece',
        per: 'lesson',
        massG: 1.5,
        offer: anOffer(1, 190),
        note: '',
      },
    ],
    currency: 'EUR',
  };
}
