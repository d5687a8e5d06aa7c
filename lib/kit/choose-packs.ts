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

/** Chooses among the packs of one offer; what it worked out for one need serves the next. */
export interface PackChooser {
  /**
   * Covers a need of whole units, 0 or more. Null where nothing is on sale.
   * Exact up to MOST_SEARCHED of the packs' common measure, and beyond it
   * wherever packs are multiples of one another.
   * @param mayDrop how much of the need could be done without (its spare); hints go no further
   */
  readonly choose: (need: number, mayDrop: number) => PackChoice | null;
}

export function packChooser(sold: readonly Sold[]): PackChooser {
  if (sold.length === 0) return { choose: () => null };
  const { cover, measure } = coverSearch(sold);
  const known = sold.every(({ pack }) => pack.priceMinor !== null);
  return {
    choose: (need, mayDrop) => {
      invariant(Number.isSafeInteger(need) && need >= 0, 'a need is a whole number');
      const all = cover(need);
      return {
        picked: all.picked,
        packs: all.packs,
        over: all.holds - need,
        priceMinor: known ? all.priceMinor : null,
        hint: hintOf(all, known, fewerWorthTrying(need, measure, mayDrop), (fewer) => cover(need - fewer)),
      };
    },
  };
}

interface Cover {
  readonly picked: readonly Picked[];
  readonly packs: number;
  readonly holds: number;
  readonly priceMinor: number;
}

/** Packs hold multiples of their common measure, so nothing changes before the need falls to one. */
function fewerWorthTrying(need: number, measure: number, mayDrop: number): readonly number[] {
  const most = Math.min(mayDrop, HINT_WITHIN, need);
  const tries: number[] = [];
  for (let fewer = need % measure || measure; fewer <= most; fewer += measure) tries.push(fewer);
  return tries;
}

function hintOf(
  all: Cover,
  known: boolean,
  tries: readonly number[],
  coverWithout: (fewer: number) => Cover,
): FewerHint | null {
  for (const fewer of tries) {
    const less = coverWithout(fewer);
    const savesMinor = all.priceMinor - less.priceMinor;
    const packsLess = all.packs - less.packs;
    if (known ? savesMinor > 0 : packsLess > 0)
      return { fewer, savesMinor: known ? savesMinor : null, packsLess };
  }
  return null;
}

interface CoverSearch {
  readonly cover: (need: number) => Cover;
  /** The greatest number that what every pack holds is a multiple of. */
  readonly measure: number;
}

/**
 * Dynamic programming over what is still to be covered. Of the pack that is
 * cheapest for what it holds, so many are taken beforehand as every best
 * combination has: of others it has fewer than that one holds, since among so
 * many some hold together a multiple of it and could be changed for it.
 */
function coverSearch(sold: readonly Sold[]): CoverSearch {
  const measure = sold.map(({ holds }) => holds).reduce(greatestCommon);
  const sizes = sold.map(({ holds }) => holds / measure);
  const prices = sold.map(({ pack }) => pack.priceMinor ?? 0);
  const priced = (index: number): Priced => ({ priceMinor: prices[index] ?? 0, holds: sizes[index] ?? 1 });
  const best = sold.reduce((at, _, index) => (isCheaper(priced(index), priced(at)) ? index : at), 0);
  const bestSize = sizes[best] ?? 1;
  const largestOther = Math.max(0, ...sizes.filter((_, index) => index !== best));
  const othersAtMost = Math.min((bestSize - 1) * largestOther, MOST_SEARCHED);
  const table = coverTable(sizes, prices);
  const cover = (need: number): Cover => {
    const measures = divide(need, measure, 'up');
    const taken = Math.max(0, divide(measures - othersAtMost, bestSize, 'down'));
    // A rest that is still too long to search is one of a pack larger than that: it alone does.
    const beforehand = measures - taken * bestSize > 2 * MOST_SEARCHED ? taken + 1 : taken;
    const times = sizes.map((_, index) => (index === best ? beforehand : 0));
    for (let left = measures - beforehand * bestSize; left > 0; ) {
      const index = table(left);
      times[index] = (times[index] ?? 0) + 1;
      left -= sizes[index] ?? left;
    }
    return coverOf(sold, times);
  };
  return { cover, measure };
}

/** For a rest above 0 the pack that a best cover of it begins with; worked out as far as it was ever asked for. */
function coverTable(sizes: readonly number[], prices: readonly number[]): (rest: number) => number {
  const price = [0];
  const over = [0];
  const count = [0];
  const choice = [0];
  const extend = (r: number): void => {
    let [leastPrice, leastOver, leastCount, chosen] = [Number.POSITIVE_INFINITY, 0, 0, 0];
    for (let index = 0; index < sizes.length; index++) {
      const size = sizes[index] ?? r;
      const left = size < r ? r - size : 0;
      const p = (prices[index] ?? 0) + (price[left] ?? 0);
      const o = (size > r ? size - r : 0) + (over[left] ?? 0);
      const c = 1 + (count[left] ?? 0);
      // The cheaper; then what leaves less over; then fewer packs.
      if ((p - leastPrice || o - leastOver || c - leastCount) < 0)
        [leastPrice, leastOver, leastCount, chosen] = [p, o, c, index];
    }
    price.push(leastPrice);
    over.push(leastOver);
    count.push(leastCount);
    choice.push(chosen);
  };
  return (rest) => {
    while (choice.length <= rest) extend(choice.length);
    return choice[rest] ?? 0;
  };
}

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
