/**
 * Kits for a class or a batch. The rule is named wherever a sum is shown.
 * `per kit`: every kit is rounded on its own, spare included, and then kits
 * are added. `pooled`: what the pieces take is added first, and the spare
 * reckoned on the sum. Packs and their price are reckoned once, on the sum.
 */
import { invariant } from '#lib/result.ts';
import type { RingKind } from '#lib/rings/ring-kind.ts';
import type { KitList, RingLine } from './kit-list.ts';
import type { Material } from './making.ts';
import { buyMaterial, type MaterialLine } from './material-line.ts';
import { toNanograms } from './parse-mass.ts';
import { addPrices, type PriceSum, type Purchase, purchaseOf } from './price.ts';
import { type SpareWorking, spareOf } from './spare.ts';

/** A kit and how many of it are made up: whole, 0 or more. */
export interface BatchPart {
  readonly kit: KitList;
  readonly times: number;
}

export const BATCH_RULES = ['per kit', 'pooled'] as const;
export type BatchRule = (typeof BATCH_RULES)[number];

/** So many kits of one size, with what each takes of a line. */
export interface BatchTerm<L> {
  readonly times: number;
  readonly line: L;
}

export interface BatchRingLine extends Purchase {
  readonly ringKind: RingKind;
  readonly opened: number;
  readonly closed: number;
  readonly net: number;
  readonly spare: number;
  readonly issued: number;
  readonly terms: readonly BatchTerm<RingLine>[];
  /** How the pooled spare came about; null where every kit has its own. */
  readonly pooledSpare: SpareWorking | null;
  readonly issuedG: number | null;
}

export interface BatchMaterialLine extends Purchase {
  readonly material: Material;
  readonly needMilli: number;
  readonly terms: readonly BatchTerm<MaterialLine>[];
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

function grouped<L>(
  parts: readonly BatchPart[],
  linesOf: (kit: KitList) => readonly L[],
  idOf: (line: L) => string,
): readonly (readonly BatchTerm<L>[])[] {
  const groups = new Map<string, BatchTerm<L>[]>();
  for (const { kit, times } of parts)
    for (const line of linesOf(kit)) {
      const group = groups.get(idOf(line));
      if (group) group.push({ line, times });
      else groups.set(idOf(line), [{ line, times }]);
    }
  return [...groups.values()];
}

const sum = <L>(terms: readonly BatchTerm<L>[], of: (line: L) => number): number =>
  terms.reduce((n, { line, times }) => n + of(line) * times, 0);

function ringSum(terms: readonly BatchTerm<RingLine>[], pooledSpare: SpareWorking | null): BatchRingLine {
  const first = terms[0];
  invariant(first, 'a group holds a line');
  const { ringKind, ringMass } = first.line;
  const net = sum(terms, (line) => line.net);
  const spare = pooledSpare ? pooledSpare.spare : sum(terms, (line) => line.spare);
  const issued = net + spare;
  return {
    ringKind,
    opened: sum(terms, (line) => line.opened),
    closed: sum(terms, (line) => line.closed),
    net,
    spare,
    issued,
    terms,
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

function materialSum(terms: readonly BatchTerm<MaterialLine>[]): BatchMaterialLine {
  const first = terms[0];
  invariant(first, 'a group holds a line');
  const { material } = first.line;
  const needMilli = sum(terms, (line) => line.needMilli);
  return {
    material,
    needMilli,
    terms,
    ...buyMaterial(material, needMilli),
  };
}
