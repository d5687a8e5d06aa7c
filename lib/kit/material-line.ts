/** One material of a kit: how much of it a finished size takes, with the working. */

import type { Material } from './making.ts';
import { toNanograms } from './parse-mass.ts';
import { type Purchase, purchaseOf } from './price.ts';
import { toTicks } from './ticks.ts';
import { multiplyDivide } from './whole.ts';

/** How the quantity came about; quantities in thousandths of the material's unit. */
export type MaterialWorking =
  | { readonly per: 'lesson'; readonly quantityMilli: number }
  | { readonly per: 'repeat'; readonly quantityMilli: number; readonly repeats: number }
  | { readonly per: 'length'; readonly quantityMilli: number; readonly finishedMm: number };

/** What packs hold and leave over is in thousandths of a unit too. */
export interface MaterialLine extends Purchase {
  readonly material: Material;
  readonly working: MaterialWorking;
  /** What is needed, thousandths of a unit; things counted in pieces are rounded up to whole ones. */
  readonly needMilli: number;
  /** Grams, where the material states its mass. */
  readonly g: number | null;
}

/** Units that come whole only. */
export const isWholeUnit = (unit: string): boolean => /^(pieces?|pairs?|beads?)$/i.test(unit.trim());

/** A material's line for so many repeats and a finished length in mm; by length it counts per 100 mm, rounded up. */
export function materialLine(material: Material, repeats: number, finishedMm: number): MaterialLine {
  const working = workingOf(material, repeats, finishedMm);
  const exact = exactNeed(working);
  const needMilli = isWholeUnit(material.unit) ? multiplyDivide(exact, 1, 1000, 'up') * 1000 : exact;
  return {
    material,
    working,
    needMilli,
    ...buyMaterial(material, needMilli),
    g: material.massG === null ? null : (needMilli * material.massG) / 1000,
  };
}

/** Packs and price for so many thousandths of a material's unit. */
export const buyMaterial = ({ offer, massG }: Material, needMilli: number): Purchase =>
  purchaseOf(offer, {
    units: needMilli,
    unitsPer: 1000,
    spare: 0,
    nanograms: massG === null ? null : toNanograms(massG),
  });

function workingOf({ per, quantityMilli }: Material, repeats: number, finishedMm: number): MaterialWorking {
  switch (per) {
    case 'lesson':
      return { per, quantityMilli };
    case 'repeat':
      return { per, quantityMilli, repeats };
    case 'length':
      return { per, quantityMilli, finishedMm };
  }
}

function exactNeed(working: MaterialWorking): number {
  switch (working.per) {
    case 'lesson':
      return working.quantityMilli;
    case 'repeat':
      return multiplyDivide(working.quantityMilli, working.repeats, 1, 'up');
    case 'length':
      return multiplyDivide(working.quantityMilli, toTicks(working.finishedMm), toTicks(100), 'up');
  }
}
