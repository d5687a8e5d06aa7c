/**
 * Which packs to buy: the cheapest combination that covers a need, in whole
 * numbers throughout. Among equally cheap ones that with the least left over,
 * then that with the fewest packs.
 */
import { invariant } from '#lib/result.ts';
import type { Offer, Pack } from '#lib/thing.ts';
import { divide } from './whole.ts';

/** A pack that may be bought, and what it holds, in the units of the need. */
export interface Sold {
  readonly pack: Pack;
  readonly holds: number;
}

/** A pack of a combination and how many of it. */
export interface Picked extends Sold {
  readonly times: number;
}

/** What one pack less would take, where just a little less would do. */
export interface FewerHint {
  /** So much less is needed for it. */
  readonly fewer: number;
  /** Minor units that it saves; null where prices are not known. */
  readonly savesMinor: number | null;
  /** Packs less; 0 where smaller ones take their place. */
  readonly packsLess: number;
}

export interface PackChoice {
  /** Largest first. Empty where nothing is needed. */
  readonly picked: readonly Picked[];
  /** How many packs in all. */
  readonly packs: number;
  readonly over: number;
  /** Minor units; null where the prices are not known. */
  readonly priceMinor: number | null;
  readonly hint: FewerHint | null;
}

/** Rests up to here are searched whole; what is above it goes to the pack that is cheapest for what it holds. */
const MOST_SEARCHED = 20_000;

/** A need that is at most so much above full packs is worth a word. */
const HINT_WITHIN = 5;

/**
 * The packs to choose from: where some state a price, those alone. A pack by
 * mass holds as many whole things as their mass goes into; without a mass of
 * one thing (whole nanograms) it cannot be counted and is left out.
 * @param unitsPer units of the need in one thing: 1 for rings, 1000 where needs are thousandths
 */
export function packsOnSale(offer: Offer, unitNanograms: number | null, unitsPer = 1): readonly Sold[] {
  const counted = offer.packs.flatMap((pack): Sold[] => {
    const things = thingsIn(pack, unitNanograms);
    return things === null || things < 1 ? [] : [{ pack, holds: things * unitsPer }];
  });
  const priced = counted.filter(({ pack }) => pack.priceMinor !== null);
  return priced.length > 0 ? priced : counted;
}

/** Whole things in a pack; null where it goes by mass and theirs is not known. */
export function thingsIn(pack: Pack, unitNanograms: number | null): number | null {
  if (pack.by === 'count') return pack.count;
  return unitNanograms === null ? null : divide(pack.mass.nanograms, unitNanograms, 'down');
}

interface Priced {
  readonly priceMinor: number;
  readonly holds: number;
}

const isCheaper = (a: Priced, b: Priced): boolean => {
  const ours = BigInt(a.priceMinor) * BigInt(b.holds);
  const theirs = BigInt(b.priceMinor) * BigInt(a.holds);
  return ours < theirs || (ours === theirs && a.holds > b.holds);
};

/**
 * Covers a need of whole units, 0 or more. Null where nothing is on sale.
 * Exact up to MOST_SEARCHED units of the packs' common measure, and beyond it
 * wherever packs are multiples of one another.
 * @param mayDrop how much of the need could be done without (its spare); hints go no further
 */
export function choosePacks(sold: readonly Sold[], need: number, mayDrop: number): PackChoice | null {
  if (sold.length === 0) return null;
  invariant(Number.isSafeInteger(need) && need >= 0, 'a need is a whole number');
  const search = searchFor(sold, need);
  const all = search.cover(need);
  const known = sold.every(({ pack }) => pack.priceMinor !== null);
  return {
    picked: all.picked,
    packs: all.packs,
    over: all.holds - need,
    priceMinor: known ? all.priceMinor : null,
    hint: hintOf(all, known, Math.min(mayDrop, HINT_WITHIN, need), (fewer) => search.cover(need - fewer)),
  };
}

interface Cover {
  readonly picked: readonly Picked[];
  readonly packs: number;
  readonly holds: number;
  readonly priceMinor: number;
}

function hintOf(
  all: Cover,
  known: boolean,
  most: number,
  coverWithout: (fewer: number) => Cover,
): FewerHint | null {
  for (let fewer = 1; fewer <= most; fewer++) {
    const less = coverWithout(fewer);
    const savesMinor = all.priceMinor - less.priceMinor;
    const packsLess = all.packs - less.packs;
    if (known ? savesMinor > 0 : packsLess > 0)
      return { fewer, savesMinor: known ? savesMinor : null, packsLess };
  }
  return null;
}

/**
 * Dynamic programming over what is still to be covered. Of the pack that is
 * cheapest for what it holds, so many are taken beforehand as every best
 * combination has: of others it has fewer than that one holds, since among so
 * many some hold together a multiple of it and could be changed for it.
 */
function searchFor(sold: readonly Sold[], need: number): { readonly cover: (need: number) => Cover } {
  const measure = sold.map(({ holds }) => holds).reduce(greatestCommon);
  const packs = sold.map((one) => ({
    ...one,
    size: one.holds / measure,
    priceMinor: one.pack.priceMinor ?? 0,
  }));
  const best = packs.reduce((a, b) =>
    isCheaper({ priceMinor: b.priceMinor, holds: b.size }, { priceMinor: a.priceMinor, holds: a.size })
      ? b
      : a,
  );
  const largestOther = Math.max(0, ...packs.filter((p) => p !== best).map((p) => p.size));
  const measures = divide(need, measure, 'up');
  const othersAtMost = Math.min((best.size - 1) * largestOther, MOST_SEARCHED);
  // The hint asks for a little less than the need; its search must not run below nothing.
  const slack = divide(HINT_WITHIN, measure, 'up');
  const taken = Math.max(0, divide(measures - othersAtMost - slack, best.size, 'down'));
  // A rest that is still too long to search is one of a pack larger than that: it alone does.
  const beforehand = measures - taken * best.size > 2 * MOST_SEARCHED ? taken + 1 : taken;
  const rest = Math.max(0, measures - beforehand * best.size);

  const price = new Float64Array(rest + 1);
  const over = new Float64Array(rest + 1);
  const count = new Float64Array(rest + 1);
  const choice = new Int32Array(rest + 1);
  for (let r = 1; r <= rest; r++) {
    price[r] = Number.POSITIVE_INFINITY;
    packs.forEach(({ size, priceMinor }, index) => {
      const left = Math.max(0, r - size);
      const at = [
        priceMinor + (price[left] ?? 0),
        Math.max(0, size - r) + (over[left] ?? 0),
        1 + (count[left] ?? 0),
      ] as const;
      if (isLess(at, [price[r] ?? 0, over[r] ?? 0, count[r] ?? 0])) {
        [price[r], over[r], count[r]] = at;
        choice[r] = index;
      }
    });
  }
  return {
    cover: (wanted) => {
      const times = packs.map((p) => (p === best ? beforehand : 0));
      let left = divide(wanted, measure, 'up') - beforehand * best.size;
      while (left > 0) {
        const index = choice[left] ?? 0;
        times[index] = (times[index] ?? 0) + 1;
        left -= packs[index]?.size ?? left;
      }
      return coverOf(packs, times);
    },
  };
}

type Ordered = readonly [price: number, over: number, count: number];

const isLess = (a: Ordered, b: Ordered): boolean =>
  a[0] !== b[0] ? a[0] < b[0] : a[1] !== b[1] ? a[1] < b[1] : a[2] < b[2];

function coverOf(packs: readonly Sold[], times: readonly number[]): Cover {
  const picked = packs
    .map(({ pack, holds }, index) => ({ pack, holds, times: times[index] ?? 0 }))
    .filter((one) => one.times > 0)
    .sort((a, b) => b.holds - a.holds);
  const sum = (of: (one: Picked) => number): number => picked.reduce((n, one) => n + of(one) * one.times, 0);
  return {
    picked,
    packs: sum(() => 1),
    holds: sum((one) => one.holds),
    priceMinor: sum((one) => one.pack.priceMinor ?? 0),
  };
}

const greatestCommon = (a: number, b: number): number => (b === 0 ? a : greatestCommon(b, a % b));
