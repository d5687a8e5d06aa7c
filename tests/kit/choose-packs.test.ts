import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { packChooser, packsOnSale, type Sold, thingsIn } from '#lib/kit/choose-packs.ts';
import { parseMass, toNanograms } from '#lib/kit/parse-mass.ts';
import type { Pack } from '#lib/thing.ts';

const choosePacks = (packs: readonly Sold[], need: number, mayDrop: number) =>
  packChooser(packs).choose(need, mayDrop);

const sold = (holds: number, priceMinor: number | null): Sold => ({
  pack: { by: 'count', count: holds, priceMinor },
  holds,
});

/** Price, then what is over, then packs: every combination tried. */
function bruteForce(packs: readonly Sold[], need: number): readonly [number, number, number] {
  let best: readonly [number, number, number] = [Number.POSITIVE_INFINITY, 0, 0];
  const search = (index: number, holds: number, price: number, count: number) => {
    if (holds >= need) {
      const here = [price, holds - need, count] as const;
      if (
        here[0] < best[0] ||
        (here[0] === best[0] && (here[1] < best[1] || (here[1] === best[1] && here[2] < best[2])))
      )
        best = here;
      return;
    }
    const pack = packs[index];
    if (!pack) return;
    search(index, holds + pack.holds, price + (pack.pack.priceMinor ?? 0), count + 1);
    search(index + 1, holds, price, count);
  };
  search(0, 0, 0, 0);
  return best;
}

const offers = fc.array(
  fc.tuple(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 0, max: 30 })).map(([n, p]) => sold(n, p)),
  { minLength: 1, maxLength: 4 },
);

describe('the cheapest packs that cover a need', () => {
  test('are as cheap as the best of all combinations, with as little over, in as few packs', () => {
    fc.assert(
      fc.property(offers, fc.integer({ min: 0, max: 60 }), (packs, need) => {
        const choice = choosePacks(packs, need, 0);
        expect([choice?.priceMinor, choice?.over, choice?.packs]).toEqual([...bruteForce(packs, need)]);
        const holds = choice?.picked.reduce((n, one) => n + one.holds * one.times, 0);
        expect(holds).toBe(need + (choice?.over ?? 0));
      }),
      { numRuns: 300 },
    );
  });

  test('without prices leave as little over as can be', () => {
    fc.assert(
      fc.property(offers, fc.integer({ min: 0, max: 40 }), (priced, need) => {
        const packs = priced.map(({ holds }) => sold(holds, null));
        const choice = choosePacks(packs, need, 0);
        expect(choice?.priceMinor).toBeNull();
        expect([0, choice?.over, choice?.packs]).toEqual([...bruteForce(packs, need)]);
      }),
    );
  });

  test('a hint names the least that has to be left out, and what that saves is what it saves', () => {
    fc.assert(
      fc.property(
        offers,
        fc.integer({ min: 0, max: 60 }),
        fc.integer({ min: 0, max: 4 }),
        (packs, need, spare) => {
          const [price] = bruteForce(packs, need);
          const savings = Array.from(
            { length: Math.min(spare, need) },
            (_, i) => price - bruteForce(packs, need - i - 1)[0],
          );
          const at = savings.findIndex((saved) => saved > 0);
          const hint = choosePacks(packs, need, spare)?.hint ?? null;
          expect(hint && [hint.fewer, hint.savesMinor]).toEqual(at < 0 ? null : [at + 1, savings[at]]);
        },
      ),
    );
  });

  // By hand: 110 = 100 + 25 (7.70) beats 2 x 100 (9.60) and 5 x 25 (14.50); 101 is one over a full hundred.
  test('mix sizes where that is cheaper, and say when one ring is over', () => {
    const packs = [sold(100, 480), sold(25, 290)];
    expect(choosePacks(packs, 110, 10)).toMatchObject({
      picked: [
        { holds: 100, times: 1 },
        { holds: 25, times: 1 },
      ],
      priceMinor: 770,
      over: 15,
      hint: null,
    });
    expect(choosePacks(packs, 101, 9)?.hint).toEqual({ fewer: 1, savesMinor: 290, packsLess: 1 });
    expect(choosePacks(packs, 101, 0)?.hint).toBeNull();
  });

  test('large needs stay exact: the pack that is cheapest for what it holds fills up, smaller ones end', () => {
    const packs = [sold(1000, 3000), sold(250, 900), sold(25, 120)];
    expect(choosePacks(packs, 4_000_251, 0)).toMatchObject({
      picked: [
        { holds: 1000, times: 4000 },
        { holds: 250, times: 1 },
        { holds: 25, times: 1 },
      ],
      over: 24,
    });
  });

  test('a need of millions in packs of odd counts is answered, and covered', () => {
    const choice = choosePacks([sold(99_991, 7), sold(99_989, 6), sold(3, 1)], 80_000_001, 0);
    expect(choice?.over).toBeGreaterThanOrEqual(0);
    expect(Number.isSafeInteger(choice?.priceMinor)).toBe(true);
    expect(
      choosePacks([sold(9_000_000_000, 7), sold(7_000_000_001, 6)], 8_000_000_000, 0)?.picked,
    ).toMatchObject([{ holds: 9_000_000_000, times: 1 }]);
  });

  test('packs that state no price give way to those that do', () => {
    const packs: readonly Pack[] = [
      { by: 'count', count: 100, priceMinor: null },
      { by: 'count', count: 25, priceMinor: 100 },
    ];
    expect(packsOnSale({ packs, link: '' }, null).map((one) => one.holds)).toEqual([25]);
  });
});

const mass = (text: string) => {
  const read = parseMass(text);
  if (!read.ok) throw new Error(read.fault.code);
  return read.value;
};

describe('packs by mass', () => {
  // Definitions: pound 453.59237 g, ounce 28.349523125 g, troy ounce 31.1034768 g (international yard and pound
  // agreement, 1959; 480 of 7000 grains of the pound).
  test.each([
    ['1 ozt', 31_103_476_800],
    ['1 troy oz', 31_103_476_800],
    ['½ lb', 226_796_185_000],
    ['1 1/2 oz av', 42_524_284_688],
    ['0,25 kg', 250_000_000_000],
    ['50g', 50_000_000_000],
  ])('%s is %i nanograms', (text, nanograms) => {
    expect(mass(text).nanograms).toBe(nanograms);
  });

  test.each([
    ['2 oz', ['2 oz av', '2 ozt']],
    ['100', ['100 g', '100 ozt', '100 oz av', '100 lb']],
  ])('%s is asked back', (text, choices) => {
    expect(parseMass(text)).toMatchObject({
      ok: false,
      fault: { code: 'mass-needs-unit', choices: choices.map((stated) => ({ stated })) },
    });
  });

  test.each(['', 'g', '-5 g', '1/0 g', 'five g', '1 stone', '0 g', '99999999 kg'])(
    '%j is refused',
    (text) => {
      expect(parseMass(text).ok).toBe(false);
    },
  );

  // Rings for one unit of mass, by hand from Pappus and handbook densities: sterling 18 AWG, 4.00 mm: 231.1 to the
  // troy ounce; copper 16 SWG, 1/4 in: 973 to the pound.
  test.each([
    ['1 ozt', 0.1346, 231],
    ['1 lb', 0.465947, 973],
  ])('%s holds as many whole rings of %f g as go into it', (text, g, rings) => {
    expect(thingsIn({ by: 'mass', mass: mass(text), priceMinor: 1 }, toNanograms(g))).toBe(rings);
  });

  test('cannot be counted without the mass of a ring', () => {
    const offer = { packs: [{ by: 'mass', mass: mass('1 lb'), priceMinor: 1 }], link: '' } as const;
    expect(packsOnSale(offer, null)).toEqual([]);
  });
});
