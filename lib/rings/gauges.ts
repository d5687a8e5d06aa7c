/**
 * Wire gauges and inches in millimetres. One number means different wires in
 * different systems (16 SWG is a quarter thicker than 16 AWG), so nothing here
 * takes a number without its system.
 */

/** The international inch of 1959: exactly 25.4 mm. */
export const MM_PER_INCH = 25.4;

export const GAUGE_SYSTEMS = ['SWG', 'AWG'] as const;
export type GaugeSystem = (typeof GAUGE_SYSTEMS)[number];

/** Millimetres to the 1/10,000 that sizes are kept with. */
export const toTenThousandths = (mm: number): number => Math.round(mm * 10_000) / 10_000;

/**
 * Imperial standard wire gauge in mils (1/1000 in), Order in Council of 23
 * August 1883. A table and not a formula. Nos. 6 and 8 to 28 agree across
 * public tables (one prints No. 6 as .182 by mistake); 0 to 5, 7 and 29 to 36
 * are given from memory of the same table.
 */
const SWG_MILS: readonly number[] = [
  324, 300, 276, 252, 232, 212, 192, 176, 160, 144, 128, 116, 104, 92, 80, 72, 64, 56, 48, 40, 36, 32, 28, 24,
  22, 20, 18, 16.4, 14.8, 13.6, 12.4, 11.6, 10.8, 10, 9.2, 8.4, 7.6,
];

export const THINNEST_SWG = SWG_MILS.length - 1;
/** No. 0000 counts as -3, as in the formula. */
export const THICKEST_AWG = -3;
export const THINNEST_AWG = 40;

/** Wire diameter in mm of an imperial standard gauge, 0 to 36; null where the table here has none. */
export function swgToMm(number: number): number | null {
  const mils = Number.isInteger(number) ? SWG_MILS[number] : undefined;
  return mils === undefined ? null : toTenThousandths((mils * MM_PER_INCH) / 1000);
}

/**
 * Wire diameter in mm of an American wire gauge, -3 (No. 0000) to 40; null
 * outside. ASTM B258: a geometric row from No. 0000 = 0.46 in to No. 36 =
 * 0.005 in, so d = 0.005 in x 92^((36 - n)/39).
 */
export function awgToMm(number: number): number | null {
  if (!Number.isInteger(number) || number < THICKEST_AWG || number > THINNEST_AWG) return null;
  return toTenThousandths(0.005 * MM_PER_INCH * 92 ** ((36 - number) / 39));
}

export const gaugeToMm = (system: GaugeSystem, number: number): number | null =>
  system === 'SWG' ? swgToMm(number) : awgToMm(number);

/** How a gauge is written: `18 SWG`, `0 AWG`, `4/0 AWG`. */
export const formatGauge = (system: GaugeSystem, number: number): string =>
  `${number < 0 ? `${1 - number}/0` : number} ${system}`;

/**
 * Inches in mm, rounded half up to 1/10,000; `numerator` and `denominator` are
 * whole. Reckoned in ten-thousandths, where an inch is whole: 7/32 in is
 * 5.55625 mm exactly, which 25.4 as a binary fraction would miss.
 */
export const inchFractionToMm = (numerator: number, denominator: number): number =>
  Math.round((numerator * 254_000) / denominator) / 10_000;

/** The gauge of each system that comes nearest to a diameter in mm, with how far off it is. */
export function nearestGauge(
  system: GaugeSystem,
  mm: number,
): { readonly number: number; readonly mm: number } | null {
  let best: { number: number; mm: number } | null = null;
  const from = system === 'AWG' ? THICKEST_AWG : 0;
  const to = system === 'AWG' ? THINNEST_AWG : THINNEST_SWG;
  for (let number = from; number <= to; number++) {
    const found = gaugeToMm(system, number);
    if (found !== null && (best === null || Math.abs(found - mm) < Math.abs(best.mm - mm)))
      best = { number, mm: found };
  }
  return best;
}
