/**
 * How a kit grows with the measure: for each count of repeats the measures
 * that take it, its rings and its cost. Found from kits alone, so that the
 * picture cannot say anything else than they do.
 */
import { type KitList, kitFor } from './kit-list.ts';
import type { Making, Size } from './making.ts';

/** Measures between which the same kit holds, mm; both ends are measures that were reckoned. */
export interface GrowthStep {
  readonly fromMm: number;
  readonly toMm: number;
  readonly repeats: number;
  readonly issued: number;
  /** Minor units for whole packs. */
  readonly packsMinor: number;
  readonly proRataMilli: number;
}

/** Kits reckoned over the span: enough that no bracelet's repeat is missed, few enough to be done while one types. */
const POINTS = 120;

/** The span to show: the lesson's sizes with a tenth to either side, or about a measure where it has none. */
export function growthSpan(
  sizes: readonly Pick<Size, 'bodyMm'>[],
  bodyMm: number | null,
): readonly [number, number] {
  const all = [...sizes.map((size) => size.bodyMm), ...(bodyMm === null ? [] : [bodyMm])];
  if (all.length === 0) return [0, 0];
  return [Math.floor(Math.min(...all) * 0.9), Math.ceil(Math.max(...all) * 1.1)];
}

/** Steps from one body measure to another, in mm, both above 0; measures for which there is no kit are left out. */
export function growthOf(making: Making, fromMm: number, toMm: number): readonly GrowthStep[] {
  const steps: GrowthStep[] = [];
  for (let point = 0; point <= POINTS; point++) {
    const atMm = fromMm + ((toMm - fromMm) * point) / POINTS;
    const kit = kitFor(making, atMm);
    if (!kit.ok) continue;
    const here = stepAt(kit.value, atMm);
    const last = steps.at(-1);
    if (last && isSame(last, here)) steps[steps.length - 1] = { ...last, toMm: atMm };
    else steps.push(here);
  }
  return steps;
}

const stepAt = ({ repeats, totals }: KitList, atMm: number): GrowthStep => ({
  fromMm: atMm,
  toMm: atMm,
  repeats,
  issued: totals.issued,
  packsMinor: totals.price.packsMinor,
  proRataMilli: totals.price.proRataMilli,
});

const isSame = (a: GrowthStep, b: GrowthStep): boolean =>
  a.repeats === b.repeats &&
  a.issued === b.issued &&
  a.packsMinor === b.packsMinor &&
  a.proRataMilli === b.proRataMilli;
