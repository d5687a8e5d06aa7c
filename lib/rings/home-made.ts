/**
 * Rings that a teacher winds and cuts herself. A coil springs open when it
 * leaves the mandrel, and the saw takes its kerf, so the ring is not the
 * mandrel's size. What is reckoned here are estimates from textbook beam
 * theory and assumed strengths; a measured ring always wins.
 */
import { z } from 'zod';

/** How a metal's wire springs back: yield strength (MPa), stiffness (GPa), and what benches report. */
export interface Temper {
  readonly id: string;
  readonly name: string;
  readonly yieldMPa: number;
  readonly stiffnessGPa: number;
  /** Growth of the inner diameter met at the bench, %; from memory, uncertain. */
  readonly metPercent: readonly [number, number];
}

const temper = (
  id: string,
  name: string,
  yieldMPa: number,
  stiffnessGPa: number,
  ...metPercent: readonly [number, number]
): Temper => ({ id, name, yieldMPa, stiffnessGPa, metPercent });

/** Assumed strengths: common values from memory; a batch of wire may differ by a third. */
export const TEMPERS: readonly Temper[] = [
  temper('copper-soft', 'copper, soft', 70, 117, 0.5, 2),
  temper('copper-half-hard', 'copper, half hard', 220, 117, 1, 3),
  temper('sterling-soft', 'sterling silver, soft', 140, 71, 1, 3),
  temper('sterling-half-hard', 'sterling silver, half hard', 300, 71, 3, 5),
  temper('brass-half-hard', 'brass, half hard', 350, 110, 3, 5),
  temper('aluminium-1100', 'aluminium 1100, H14', 115, 69, 1, 3),
  temper('aluminium-5356', 'aluminium 5356, drawn', 250, 71, 3, 6),
  temper('stainless-soft', 'stainless 304, soft', 240, 193, 2, 5),
  temper('stainless-spring', 'stainless 304, spring temper', 1300, 193, 6, 12),
  temper('titanium', 'titanium grade 2', 300, 105, 4, 10),
  temper('niobium-soft', 'niobium, soft', 120, 105, 1, 4),
  temper('niobium-worked', 'niobium, worked', 350, 105, 1, 4),
  temper('steel', 'mild steel', 300, 205, 2, 5),
];

export const findTemper = (id: string): Temper | null => TEMPERS.find((each) => each.id === id) ?? null;

/** How a teacher makes her own rings of a kind; its stated inner diameter is then the mandrel's. */
export const homeMade = z.object({
  temper: z.string().min(1).max(40),
  /** Width that the saw takes away, mm; 0 for snips, which take none. */
  kerfMm: z.number().min(0).max(3),
  /** Wire lost at both ends of a coil, mm. */
  tailMm: z.number().min(0).max(1_000),
  /** Rings cut from one coil. */
  ringsPerCoil: z.int().min(1).max(10_000),
});
export type HomeMade = Readonly<z.infer<typeof homeMade>>;

/**
 * Inner diameter of a coil that left its mandrel, mm. Round wire bent fully
 * plastic (elastic, perfectly plastic): 1/R after = 1/R before - 64 Y/(6 pi E
 * WD), R to the middle of the wire. Null where the wire would spring straight.
 */
export function springbackInnerMm(mandrelMm: number, wireMm: number, of: Temper): number | null {
  const before = (mandrelMm + wireMm) / 2;
  const curvature = 1 / before - (64 * of.yieldMPa) / (6 * Math.PI * of.stiffnessGPa * 1000 * wireMm);
  return curvature > 0 ? 2 / curvature - wireMm : null;
}

/** Inner diameter once the gap that the saw left is closed: the ring is shorter by the kerf, mm. */
export const kerfInnerMm = (innerMm: number, kerfMm: number): number => innerMm - kerfMm / Math.PI;

export interface HomeMadeEstimate {
  readonly temper: Temper;
  readonly mandrelMm: number;
  readonly sprungMm: number;
  /** After the cut is closed: what the ring will probably measure. */
  readonly closedMm: number;
  /** The same with the least and the most growth that benches report. */
  readonly closedFromMm: number;
  readonly closedToMm: number;
  /** Part of each turn that becomes swarf, 0 to 1. */
  readonly lost: number;
}

/** What a ring wound on its mandrel will probably measure; null for a temper that is not known, or that springs straight. */
export function estimateHomeMade(mandrelMm: number, wireMm: number, made: HomeMade): HomeMadeEstimate | null {
  const of = findTemper(made.temper);
  const sprungMm = of && springbackInnerMm(mandrelMm, wireMm, of);
  if (!of || sprungMm === null) return null;
  const grown = (percent: number): number => kerfInnerMm(mandrelMm * (1 + percent / 100), made.kerfMm);
  return {
    temper: of,
    mandrelMm,
    sprungMm,
    closedMm: kerfInnerMm(sprungMm, made.kerfMm),
    closedFromMm: grown(of.metPercent[0]),
    closedToMm: grown(of.metPercent[1]),
    lost: made.kerfMm / (Math.PI * (sprungMm + wireMm)),
  };
}

/**
 * Wire to buy for so many rings, mm, rounded up to a whole one: turns of a
 * close-wound helix, sqrt((pi x mean diameter)^2 + WD^2), and the tails of
 * every coil.
 */
export function wireToBuyMm(rings: number, mandrelMm: number, wireMm: number, made: HomeMade): number {
  const turn = Math.hypot(Math.PI * (mandrelMm + wireMm), wireMm);
  const coils = Math.ceil(rings / made.ringsPerCoil);
  return Math.ceil(rings * turn + coils * made.tailMm - 1e-9);
}
