/** One material of a kit: how much of it a finished size takes, with the working. */
import { toTicks } from './length.ts';
import type { Material } from './making.ts';
import { type Price, priceOf } from './price.ts';
import { multiplyDivide, packsFor } from './whole.ts';

/** How the quantity came about; quantities in thousandths of the material's unit. */
export type MaterialWorking =
  | { readonly per: 'lesson'; readonly quantityMilli: number }
  | { readonly per: 'repeat'; readonly quantityMilli: number; readonly repeats: number }
  | { readonly per: 'length'; readonly quantityMilli: number; readonly finishedMm: number };

export interface MaterialLine {
  readonly material: Material;
  readonly working: MaterialWorking;
  /** What is needed, thousandths of a unit; things counted in pieces are rounded up to whole ones. */
  readonly needMilli: number;
  readonly packs: { readonly packs: number; readonly packCount: number; readonly overMilli: number } | null;
  readonly price: Price | null;
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
  const { offer } = material;
  const packs = offer && packsFor(needMilli, offer.packCount * 1000);
  return {
    material,
    working,
    needMilli,
    packs:
      offer && packs !== null
        ? { packs, packCount: offer.packCount, overMilli: packs * offer.packCount * 1000 - needMilli }
        : null,
    price: offer && priceOf(offer, needMilli),
    g: material.massG === null ? null : (needMilli * material.massG) / 1000,
  };
}

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
