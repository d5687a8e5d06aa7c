/**
 * Kits for a class or a batch. The rule is named wherever a sum is shown.
 * `per kit`: every kit is rounded on its own, spare included, and then kits
 * are added. `pooled`: what the pieces take is added first, and the spare
 * reckoned on the sum. Packs and their price are reckoned once, on the sum.
 */
import { invariant } from '#lib/result.ts';
import type { RingKind } from '#lib/rings/ring-kind.ts';
import type { PackChoice } from './choose-packs.ts';
import type { KitList, RingLine } from './kit-list.ts';
import type { Material } from './making.ts';
import { buyMaterial, type MaterialLine } from './material-line.ts';
import { toNanograms } from './parse-mass.ts';
import { addPrices, type Price, type PriceSum, purchaseOf } from './price.ts';
import { type SpareWorking, spareOf } from './spare.ts';

/** A kit and how many of it are made up: whole, 0 or more. */
export interface BatchPart {
  readonly kit: KitList;
  readonly times: number;
}

export const BATCH_RULES = ['per kit', 'pooled'] as const;
export type BatchRule = (typeof BATCH_RULES)[number];

/** So many kits, each taking so much of a line. */
export interface BatchTerm {
  readonly times: number;
  readonly each: number;
}

export interface BatchRingLine {
  readonly ringKind: RingKind;
  readonly opened: number;
  readonly closed: number;
  readonly net: number;
  readonly spare: number;
  readonly issued: number;
  /** What is added up: rings with their spare of each kit, or without it where it is pooled. */
  readonly terms: readonly BatchTerm[];
  /** How the pooled spare came about; null where every kit has its own. */
  readonly pooledSpare: SpareWorking | null;
  readonly packs: PackChoice | null;
  readonly price: Price | null;
  readonly issuedG: number | null;
}

export interface BatchMaterialLine {
  readonly material: Material;
  readonly needMilli: number;
  readonly terms: readonly BatchTerm[];
  readonly packs: PackChoice | null;
  readonly price: Price | null;
}

export interface KitBatch {
  readonly rule: BatchRule;
  readonly kits: number;
  readonly rings: readonly BatchRingLine[];
  readonly materials: readonly BatchMaterialLine[];
  readonly issued: number;
  readonly price: PriceSum;
}

/** The sum of kits of one lesson. No parts, or none of any, gives an empty batch. */
export function batchOf(parts: readonly BatchPart[], rule: BatchRule = 'per kit'): KitBatch {
  for (const { times } of parts)
    invariant(Number.isInteger(times) && times >= 0, 'a batch takes whole numbers of kits');
  const taken = parts.filter((part) => part.times > 0);
  const ringLines = grouped(
    taken,
    (kit) => kit.rings,
    (line) => line.ringKind.id,
  );
  const spareRule = taken[0]?.kit.spareRule;
  const pooled =
    rule === 'pooled' && spareRule
      ? spareOf(
          ringLines.map((lines) => sum(lines, (line) => line.net)),
          spareRule,
        )
      : [];
  const rings = ringLines.map((lines, index) => ringSum(lines, pooled[index] ?? null));
  const materials = grouped(
    taken,
    (kit) => kit.materials,
    (line) => line.material.id,
  ).map(materialSum);
  return {
    rule,
    kits: taken.reduce((n, { times }) => n + times, 0),
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
): readonly (readonly Times<L>[])[] {
  const groups = new Map<string, Times<L>[]>();
  for (const { kit, times } of parts)
    for (const item of linesOf(kit)) {
      const group = groups.get(idOf(item));
      if (group) group.push({ item, times });
      else groups.set(idOf(item), [{ item, times }]);
    }
  return [...groups.values()];
}

const sum = <L>(lines: readonly Times<L>[], of: (item: L) => number): number =>
  lines.reduce((n, { item, times }) => n + of(item) * times, 0);

const termsOf = <L>(lines: readonly Times<L>[], of: (item: L) => number): readonly BatchTerm[] =>
  lines.map(({ item, times }) => ({ times, each: of(item) }));

function ringSum(lines: readonly Times<RingLine>[], pooledSpare: SpareWorking | null): BatchRingLine {
  const first = lines[0];
  invariant(first, 'a group holds a line');
  const { ringKind, ringMass } = first.item;
  const net = sum(lines, (line) => line.net);
  const spare = pooledSpare ? pooledSpare.spare : sum(lines, (line) => line.spare);
  const issued = net + spare;
  return {
    ringKind,
    opened: sum(lines, (line) => line.opened),
    closed: sum(lines, (line) => line.closed),
    net,
    spare,
    issued,
    terms: termsOf(lines, (line) => (pooledSpare ? line.net : line.issued)),
    pooledSpare,
    ...purchaseOf(ringKind.offer, {
      units: issued,
      unitsPer: 1,
      spare,
      nanograms: ringMass && toNanograms(ringMass.g),
    }),
    issuedG: ringMass && issued * ringMass.g,
  };
}

function materialSum(lines: readonly Times<MaterialLine>[]): BatchMaterialLine {
  const first = lines[0];
  invariant(first, 'a group holds a line');
  const { material } = first.item;
  const needMilli = sum(lines, (line) => line.needMilli);
  return {
    material,
    needMilli,
    terms: termsOf(lines, (line) => line.needMilli),
    ...buyMaterial(material, needMilli),
  };
}
