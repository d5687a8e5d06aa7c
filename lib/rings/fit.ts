/**
 * Whether wires can pass through a ring at all. The floor is geometry: equal
 * circles packed in a circle. It is necessary and not sufficient, since real
 * wires cross at a slant; so below it is an error, above it proves nothing.
 */

/**
 * P(k): inner diameter over wire diameter at which k equal wires just pass
 * side by side, for k = 1..12. Published optimal packings of equal circles in
 * a circle (proved for k up to 13): 1 + 1/sin(pi/k) for 2 to 6, 3 for 7,
 * 1 + 1/sin(pi/7) for 8, 1 + sqrt(2(2 + sqrt 2)) for 9, 3.8130 for 10,
 * 1 + 1/sin(pi/9) for 11, 4.0296 for 12.
 */
const PACKING: readonly number[] = [
  1,
  2,
  1 + 2 / Math.sqrt(3),
  1 + Math.SQRT2,
  1 + 1 / Math.sin(Math.PI / 5),
  3,
  3,
  1 + 1 / Math.sin(Math.PI / 7),
  1 + Math.sqrt(2 * (2 + Math.SQRT2)),
  3.813_02,
  1 + 1 / Math.sin(Math.PI / 9),
  4.029_6,
];

/**
 * The aspect ratio below which k equal wires cannot pass one ring; 0 for none.
 * Beyond 12 the bound by area, sqrt(k), which is weaker but still true.
 */
export const passFloor = (k: number): number => (k <= 0 ? 0 : (PACKING[k - 1] ?? Math.sqrt(k)));

/** Why the wires cannot pass, with the numbers used; `needsMm` is the least inner diameter that the rule asks for. */
export interface FitFault {
  readonly code: 'wires-cannot-pass';
  readonly rule: 'packing' | 'two thickest' | 'area';
  readonly innerMm: number;
  readonly needsMm: number;
  readonly wires: number;
  readonly wireMm: number;
}

/** The least inner diameter that the wires in one hole ask for, and the rule that asks for most. */
export interface FitNeed {
  readonly rule: FitFault['rule'];
  readonly needsMm: number;
  readonly wires: number;
  readonly wireMm: number;
}

/**
 * What the wires that lie in one ring's hole at the same time ask for: as many
 * of the thinnest must pass side by side, the two thickest must, and the area
 * must suffice (sum of squares). Null for no wires.
 */
export function fitNeed(wiresMm: readonly number[]): FitNeed | null {
  const thickFirst = wiresMm.toSorted((a, b) => b - a);
  const thinnest = thickFirst.at(-1);
  if (thinnest === undefined) return null;
  const [first = 0, second = 0] = thickFirst;
  const wires = wiresMm.length;
  const rules: readonly FitNeed[] = [
    { rule: 'packing', needsMm: passFloor(wires) * thinnest, wires, wireMm: thinnest },
    { rule: 'two thickest', needsMm: first + second, wires, wireMm: first },
    { rule: 'area', needsMm: Math.sqrt(wiresMm.reduce((sum, w) => sum + w * w, 0)), wires, wireMm: first },
  ];
  return rules.toSorted((a, b) => b.needsMm - a.needsMm)[0] ?? null;
}

/** Where the wires cannot lie in a ring of that inner diameter; null where nothing speaks against it. */
export function fitFault(innerMm: number, wiresMm: readonly number[]): FitFault | null {
  const need = fitNeed(wiresMm);
  // A hair of tolerance: 2 x 1.2 through 2.4 touches and passes.
  return need && innerMm < need.needsMm - 1e-6 ? { code: 'wires-cannot-pass', innerMm, ...need } : null;
}

/**
 * How many wires of one thickness lie side by side round the inside of a ring:
 * their middles on a circle of diameter ID - WD, each WD apart, so
 * pi/arcsin(WD/(ID - WD)), rounded down. 0 where not one passes.
 */
export function roundInside(innerMm: number, wireMm: number): number {
  if (innerMm < wireMm) return 0;
  const sine = wireMm / (innerMm - wireMm);
  return sine > 1 ? 1 : Math.floor(Math.PI / Math.asin(sine) + 1e-9);
}

/** The usual aspect ratios of a weave; common practice, depends on how stiff the metal is. */
export interface UsualBand {
  readonly tight: number;
  readonly from: number;
  readonly to: number;
}

export type BandFinding = 'below' | 'tight' | 'usual' | 'above';

/** Where an aspect ratio lies against the usual band; ends belong to it. */
export function bandFinding(aspectRatio: number, band: UsualBand): BandFinding {
  // Sizes are kept to 1/10,000 mm, so a ratio meant as 3.5 may come as 3.4999.
  const hair = 0.005;
  if (aspectRatio < band.tight - hair) return 'below';
  if (aspectRatio < band.from - hair) return 'tight';
  return aspectRatio <= band.to + hair ? 'usual' : 'above';
}
