/**
 * Arithmetic of one closed round ring of round wire. Lengths in mm, masses in
 * g, volumes in mm3. Sizes come from measuring where the teacher measured, so
 * that a mandrel size sold as an inner diameter does not spoil the sums.
 */
import { findMetal } from './metals.ts';
import type { RingKind } from './ring-kind.ts';

/** A ring's geometry, all in mm (mm3), and its aspect ratio (no unit). */
export interface RingSizes {
  readonly innerMm: number;
  readonly innerFrom: 'measured' | 'stated';
  readonly wireMm: number;
  /** Inner diameter / wire diameter. */
  readonly aspectRatio: number;
  /** Inner diameter + 2 x wire. */
  readonly outerMm: number;
  /** Inner diameter + wire: across the middle of the wire. */
  readonly meanMm: number;
  /** Pi x mean diameter. */
  readonly wireLengthMm: number;
  /** Pappus: cross-section x the way of its centre = (pi^2/4) x wire^2 x mean diameter. */
  readonly volumeMm3: number;
}

export type RingMass =
  | { readonly from: 'weighed'; readonly g: number; readonly hundredG: number }
  | { readonly from: 'metal'; readonly g: number; readonly densityGPerCm3: number; readonly source: string };

/** Geometry of a ring of the given inner and wire diameter; both above 0. */
export function ringSizes(
  innerMm: number,
  wireMm: number,
  innerFrom: RingSizes['innerFrom'] = 'stated',
): RingSizes {
  const meanMm = innerMm + wireMm;
  return {
    innerMm,
    innerFrom,
    wireMm,
    aspectRatio: innerMm / wireMm,
    outerMm: innerMm + 2 * wireMm,
    meanMm,
    wireLengthMm: Math.PI * meanMm,
    volumeMm3: (Math.PI ** 2 / 4) * wireMm ** 2 * meanMm,
  };
}

type Sized = Pick<RingKind, 'innerDiameter' | 'measuredInnerMm' | 'wire'>;

/** Geometry of a ring kind; the measured inner diameter wins over the stated one. */
export const sizesOf = (kind: Sized): RingSizes =>
  kind.measuredInnerMm === null
    ? ringSizes(kind.innerDiameter.mm, kind.wire.mm)
    : ringSizes(kind.measuredInnerMm, kind.wire.mm, 'measured');

/**
 * Mass of one ring and where it is from: a weighed hundred wins over volume x
 * density. Null where the metal is unknown and no density is given.
 */
export function massOf(
  kind: Sized & Pick<RingKind, 'metal' | 'densityGPerCm3' | 'weighedHundredG'>,
): RingMass | null {
  if (kind.weighedHundredG !== null)
    return { from: 'weighed', g: kind.weighedHundredG / 100, hundredG: kind.weighedHundredG };
  const metal = findMetal(kind.metal);
  const densityGPerCm3 = kind.densityGPerCm3 ?? metal?.densityGPerCm3 ?? null;
  if (densityGPerCm3 === null) return null;
  const source = kind.densityGPerCm3 === null && metal ? metal.source : 'given by the teacher';
  return { from: 'metal', g: (sizesOf(kind).volumeMm3 * densityGPerCm3) / 1000, densityGPerCm3, source };
}

/** Grams in the units that rings are sold by: exact legal definitions. */
export const GRAMS_IN = {
  g: 1,
  /** Troy ounce. */
  ozt: 31.1034768,
  /** Ounce avoirdupois. */
  oz: 28.349523125,
  lb: 453.59237,
} as const;
export type MassUnit = keyof typeof GRAMS_IN;

/** How many rings of a mass in g go into one unit; not rounded. */
export const ringsPer = (unit: MassUnit, ringG: number): number => GRAMS_IN[unit] / ringG;
