/**
 * What a line costs, in whole numbers: by whole packs, as a pupil buys it, in
 * minor units; and pro rata, as a kit seller reckons it, in thousandths of a
 * minor unit so that lines can be added before the one rounding for the eye.
 */
import type { Offer } from '#lib/thing.ts';
import { type PackChoice, type PackChooser, packChooser, packsOnSale } from './choose-packs.ts';
import { multiplyDivide } from './whole.ts';

export interface Price {
  /** Minor units for whole packs. */
  readonly packsMinor: number;
  /** Thousandths of a minor unit for just what is used of those packs; the last one rounded half up. */
  readonly proRataMilli: number;
}

export interface PriceSum extends Price {
  /** Lines that state a price. */
  readonly priced: number;
  /** Lines whose price nobody stated; the sum leaves them out. */
  readonly unpriced: number;
}

/** What a line needs of something that is sold. */
export interface Need {
  /** Whole units, 0 or more. */
  readonly units: number;
  /** Units in one thing: 1 for rings; 1000 where `units` are thousandths. */
  readonly unitsPer: number;
  /** So much of it is spare and could be done without. */
  readonly spare: number;
  /** Mass of one thing in whole nanograms, for packs by mass; null where it is not known. */
  readonly nanograms: number | null;
}

export interface Purchase {
  readonly packs: PackChoice | null;
  /** Null where the offer states no price. */
  readonly price: Price | null;
  /** What the pro rata price was reckoned with: the packs together, and all that they hold. */
  readonly rate: { readonly priceMinor: number; readonly holds: number } | null;
}

/**
 * Choosers of offers that were met: the sizes of a lesson, and the points of
 * its picture, ask of the same few offers again and again. The answer depends
 * on offer, mass and unit alone.
 */
const choosers = new WeakMap<Offer, Map<string, PackChooser>>();

function chooserOf(offer: Offer, { nanograms, unitsPer }: Need): PackChooser {
  const known = choosers.get(offer) ?? new Map<string, PackChooser>();
  const key = `${nanograms} ${unitsPer}`;
  const chooser = known.get(key) ?? packChooser(packsOnSale(offer, nanograms, unitsPer));
  choosers.set(offer, known.set(key, chooser));
  return chooser;
}

/** The packs that cover a need, and what they and what is used of them cost. Nothing needed costs nothing. */
export function purchaseOf(offer: Offer | null, need: Need): Purchase {
  const packs = offer && chooserOf(offer, need).choose(need.units, need.spare);
  if (!packs || packs.priceMinor === null) return { packs, price: null, rate: null };
  const { priceMinor } = packs;
  const holds = need.units + packs.over;
  if (holds === 0) return { packs, price: { packsMinor: 0, proRataMilli: 0 }, rate: null };
  const proRataMilli = multiplyDivide(need.units, priceMinor * 1000, holds, 'nearest');
  return { packs, price: { packsMinor: priceMinor, proRataMilli }, rate: { priceMinor, holds } };
}

export function addPrices(prices: readonly (Price | null)[]): PriceSum {
  let packsMinor = 0;
  let proRataMilli = 0;
  let unpriced = 0;
  for (const price of prices) {
    if (price === null) unpriced += 1;
    packsMinor += price?.packsMinor ?? 0;
    proRataMilli += price?.proRataMilli ?? 0;
  }
  return { packsMinor, proRataMilli, priced: prices.length - unpriced, unpriced };
}

/** Thousandths of a minor unit to minor units, half up: for the eye, after adding. */
export const milliToMinor = (milli: number): number => multiplyDivide(milli, 1, 1000, 'nearest');
