/**
 * What a line costs, in whole numbers: by whole packs, as a pupil buys it, in
 * minor units; and pro rata, as a kit seller reckons it, in thousandths of a
 * minor unit so that lines can be added before the one rounding for the eye.
 */
import type { Offer } from '#lib/thing.ts';
import { multiplyDivide, packsFor } from './whole.ts';

export interface Price {
  /** Minor units for whole packs. */
  readonly packsMinor: number;
  /** Thousandths of a minor unit for just what is used; the last one rounded half up. */
  readonly proRataMilli: number;
}

export interface PriceSum extends Price {
  /** Lines whose price nobody stated; the sum leaves them out. */
  readonly unpriced: number;
}

/** Price of `needMilli` thousandths of a unit; null where the offer states none. Nothing needed costs nothing. */
export function priceOf(offer: Offer, needMilli: number): Price | null {
  if (offer.priceMinor === null) return null;
  return {
    packsMinor: packsFor(needMilli, offer.packCount * 1000) * offer.priceMinor,
    proRataMilli: multiplyDivide(needMilli, offer.priceMinor, offer.packCount, 'nearest'),
  };
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
  return { packsMinor, proRataMilli, unpriced };
}

/** Thousandths of a minor unit to minor units, half up: for the eye, after adding. */
export const milliToMinor = (milli: number): number => multiplyDivide(milli, 1, 1000, 'nearest');
