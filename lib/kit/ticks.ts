/** Lengths as whole ten-thousandths of a millimetre, so that sums and ratios of them are exact. */

/** Ten-thousandths of a millimetre in one millimetre. */
const TICKS_PER_MM = 10_000;

export const toTicks = (mm: number): number => Math.round(mm * TICKS_PER_MM);
export const toMm = (ticks: number): number => ticks / TICKS_PER_MM;
