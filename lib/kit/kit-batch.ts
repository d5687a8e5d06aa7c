/**
 * Kits for a class or a batch. The rule is named wherever a sum is shown:
 * every kit is rounded on its own, spare included, and then kits are added;
 * packs and their price are reckoned once, on the sum.
 */
import { invariant } from '#lib/result.ts';
import type { RingKind } from '#lib/rings/ring-kind.ts';
import { type KitList, type Packs, packsOf } from './kit-list.ts';
import type { Material } from './making.ts';
import type { MaterialLine } from './material-line.ts';
import { addPrices, type Price, type PriceSum, priceOf } from './price.ts';
import { packsFor } from './whole.ts';

/** A kit and how many of it are made up: whole, 0 or more. */
export interface BatchPart {
  readonly kit: KitList;
  readonly times: number;
}

export interface BatchRingLine {
  readonly ringKind: RingKind;
  readonly opened: number;
  readonly closed: number;
  readonly spare: number;
  readonly issued: number;
  readonly packs: Packs | null;
  readonly price: Price | null;
  readonly issuedG: number | null;
}

export interface BatchMaterialLine {
  readonly material: Material;
  readonly needMilli: number;
  readonly packs: MaterialLine['packs'];
  readonly price: Price | null;
}

export interface KitBatch {
  readonly kits: number;
  readonly rings: readonly BatchRingLine[];
  readonly materials: readonly BatchMaterialLine[];
  readonly issued: number;
  readonly price: PriceSum;
}

/** The sum of kits of one lesson. No parts, or none of any, gives an empty batch. */
export function batchOf(parts: readonly BatchPart[]): KitBatch {
  for (const { times } of parts)
    invariant(Number.isInteger(times) && times >= 0, 'a batch takes whole numbers of kits');
  const taken = parts.filter((part) => part.times > 0);
  const rings = [
    ...grouped(
      taken,
      (kit) => kit.rings,
      (line) => line.ringKind.id,
    ),
  ].map(ringSum);
  const materials = [
    ...grouped(
      taken,
      (kit) => kit.materials,
      (line) => line.material.id,
    ),
  ].map(materialSum);
  return {
    kits: sum(taken, () => 1),
    rings,
    materials,
    issued: rings.reduce((n, line) => n + line.issued, 0),
    price: addPrices([...rings, ...materials].map((line) => line.price)),
  };
}

type Times<L> = { readonly item: L; readonly times: number };

function grouped<L>(
  parts: readonly BatchPart[],
  linesOf: (kit: KitList) => readonly L[],
  idOf: (line: L) => string,
): Iterable<readonly Times<L>[]> {
  const groups = new Map<string, Times<L>[]>();
  for (const { kit, times } of parts)
    for (const item of linesOf(kit)) {
      const group = groups.get(idOf(item));
      if (group) group.push({ item, times });
      else groups.set(idOf(item), [{ item, times }]);
    }
  return groups.values();
}

const sum = <T extends { readonly times: number }>(items: readonly T[], of: (item: T) => number): number =>
  items.reduce((n, item) => n + of(item) * item.times, 0);

function ringSum(lines: readonly Times<KitList['rings'][number]>[]): BatchRingLine {
  const first = lines[0];
  invariant(first, 'a group holds a line');
  const { ringKind, ringMass } = first.item;
  const issued = sum(lines, (l) => l.item.issued);
  return {
    ringKind,
    opened: sum(lines, (l) => l.item.opened),
    closed: sum(lines, (l) => l.item.closed),
    spare: sum(lines, (l) => l.item.spare),
    issued,
    packs: ringKind.offer && packsOf(ringKind.offer, issued),
    price: ringKind.offer && priceOf(ringKind.offer, issued * 1000),
    issuedG: ringMass && issued * ringMass.g,
  };
}

function materialSum(lines: readonly Times<MaterialLine>[]): BatchMaterialLine {
  const first = lines[0];
  invariant(first, 'a group holds a line');
  const { material } = first.item;
  const { offer } = material;
  const needMilli = sum(lines, (l) => l.item.needMilli);
  const packs = offer && packsFor(needMilli, offer.packCount * 1000);
  return {
    material,
    needMilli,
    packs:
      offer && packs !== null
        ? { packs, packCount: offer.packCount, overMilli: packs * offer.packCount * 1000 - needMilli }
        : null,
    price: offer && priceOf(offer, needMilli),
  };
}
