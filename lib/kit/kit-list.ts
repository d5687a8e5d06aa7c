/**
 * The kit list: what one finished size takes, ring by ring kind, with the
 * numbers that every line was reckoned from. Counts, packs and prices are
 * whole numbers throughout; masses alone are fractions.
 */
import { failed, ok, type Result } from '#lib/result.ts';
import { massOf, type RingMass } from '#lib/rings/ring.ts';
import type { RingKind } from '#lib/rings/ring-kind.ts';
import { type CountTerm, countPiece, type KindCount } from '#lib/weave/sequence.ts';
import { type LengthFault, type LengthWorking, repeatsFor, targetOf } from './length.ts';
import type { Making, SpareRule } from './making.ts';
import { type MaterialLine, materialLine } from './material-line.ts';
import { toNanograms } from './parse-mass.ts';
import { addPrices, type PriceSum, type Purchase, purchaseOf } from './price.ts';
import { type SpareWorking, spareOf } from './spare.ts';

/** One ring kind of a kit. */
export interface RingLine extends Purchase {
  readonly ringKind: RingKind;
  /** What the counts are added from: start, repeats (run by run), finishing. */
  readonly terms: readonly CountTerm[];
  readonly opened: number;
  readonly closed: number;
  /** Opened + closed. */
  readonly net: number;
  readonly spare: number;
  readonly spareWorking: SpareWorking;
  /** Net + spare. */
  readonly issued: number;
  /** Mass of one ring and where it is from; null where nothing tells. */
  readonly ringMass: RingMass | null;
  readonly netG: number | null;
  readonly issuedG: number | null;
}

export interface KitList {
  readonly bodyMm: number;
  /** Null where nothing repeats: then the piece has the size that it has. */
  readonly length: LengthWorking | null;
  readonly repeats: number;
  /** Ids of the piece's runs, in order; empty where all repeats are alike. */
  readonly runs: readonly string[];
  readonly spareRule: SpareRule;
  /** How many repeats more the spare rings would do for; null where nothing repeats. */
  readonly spareRepeats: number | null;
  readonly currency: string;
  readonly rings: readonly RingLine[];
  /** What is used up or built in; counted and priced with the kit. */
  readonly materials: readonly MaterialLine[];
  /** What a pupil needs beside her and keeps: tools and safety items; not in the sums. */
  readonly tools: readonly MaterialLine[];
  readonly totals: KitTotals;
}

export interface KitTotals {
  readonly opened: number;
  readonly closed: number;
  readonly net: number;
  readonly spare: number;
  readonly issued: number;
  /** Rings alone; null where a ring kind has no mass. */
  readonly ringsNetG: number | null;
  readonly ringsIssuedG: number | null;
  /** Materials that state a mass. */
  readonly materialsG: number;
  readonly price: PriceSum;
}

export type KitFault =
  | LengthFault
  /** There is a repeat but no sample that says how long it is. */
  | { readonly code: 'no-sample' }
  /** Neither a placement nor a material: nothing to count. */
  | { readonly code: 'nothing-to-count' }
  /** Placements name a ring kind that is not there. */
  | { readonly code: 'ring-kind-missing'; readonly ringKind: string };

const isRepeating = (making: Making): boolean =>
  making.repeat.length > 0 || making.materials.some(({ per }) => per === 'repeat');

/** Whether kits differ by the measure they are made for. */
export const kitGoesByMeasure = (making: Making): boolean =>
  isRepeating(making) || making.materials.some(({ per }) => per === 'length');

/**
 * The kit for one body measure (mm: wrist, neck, ...). Without a repeat and
 * without materials counted by repeat, no length is reckoned and the kit is
 * the same for everyone; materials by length then go by the target.
 */
export function kitFor(making: Making, bodyMm: number): Result<KitList, KitFault> {
  const target = targetOf(bodyMm, making.kitRules);
  if (!target.ok) return target;
  const repeating = isRepeating(making);
  if (repeating && !making.sample) return failed({ code: 'no-sample' });
  const length =
    repeating && making.sample ? repeatsFor(bodyMm, making.sample, making.kitRules, making.runs) : null;
  if (length && !length.ok) return length;

  const repeats = length?.value.repeats ?? 0;
  const counts = countPiece(making, repeats);
  if (counts.size === 0 && making.materials.length === 0) return failed({ code: 'nothing-to-count' });
  const kinds = new Set(making.ringKinds.map((kind) => kind.id));
  for (const id of counts.keys())
    if (!kinds.has(id)) return failed({ code: 'ring-kind-missing', ringKind: id });

  const finishedMm = length?.value.finishedMm ?? target.value.targetMm;
  // In the order in which the lesson lists its ring kinds, so that every kit reads alike.
  const counted = making.ringKinds.flatMap((ringKind) => {
    const count = counts.get(ringKind.id);
    return count ? [countLine(ringKind, count)] : [];
  });
  const spare = spareOf(
    counted.map((line) => line.net),
    making.kitRules,
  );
  const rings = counted.flatMap((line, index) => {
    const spareWorking = spare[index];
    return spareWorking ? [ringLine(line, spareWorking)] : [];
  });
  const lines = making.materials.map((m) => materialLine(m, repeats, finishedMm));
  const materials = lines.filter((line) => !isKept(line));
  return ok({
    bodyMm,
    length: length?.value ?? null,
    repeats,
    runs: (making.runs ?? []).map(({ id }) => id),
    spareRule: ruleOf(making.kitRules),
    spareRepeats: length && spareRepeatsOf(rings),
    currency: making.currency,
    rings,
    materials,
    tools: lines.filter(isKept),
    totals: totalsOf(rings, materials),
  });
}

const isKept = ({ material }: MaterialLine): boolean =>
  material.kind === 'tool' || material.kind === 'safety';

type Counted = Pick<RingLine, 'ringKind' | 'terms' | 'opened' | 'closed' | 'net'>;

const countLine = (ringKind: RingKind, { opened, closed, terms }: KindCount): Counted => ({
  ringKind,
  terms,
  opened,
  closed,
  net: opened + closed,
});

function ringLine(counted: Counted, spareWorking: SpareWorking): RingLine {
  const { ringKind, net } = counted;
  const { spare } = spareWorking;
  const issued = net + spare;
  const ringMass = massOf(ringKind);
  return {
    ...counted,
    spare,
    spareWorking,
    issued,
    ...purchaseOf(ringKind.offer, {
      units: issued,
      unitsPer: 1,
      spare,
      nanograms: ringMass && toNanograms(ringMass.g),
    }),
    ringMass,
    netG: ringMass && net * ringMass.g,
    issuedG: ringMass && issued * ringMass.g,
  };
}

const ruleOf = ({ sparePercent, spareBy, spareLeast }: SpareRule): SpareRule => ({
  sparePercent,
  spareBy,
  spareLeast,
});

/** The fewest repeats that the spare of any one kind would do for. */
function spareRepeatsOf(rings: readonly RingLine[]): number | null {
  const repeats = rings.flatMap(({ spare, terms }) => {
    const each = terms
      .filter(({ what }) => what === 'repeat')
      .map((term) => term.each.opened + term.each.closed);
    const most = Math.max(0, ...each);
    return most === 0 ? [] : [Math.floor(spare / most)];
  });
  return repeats.length === 0 ? null : Math.min(...repeats);
}

const total = (numbers: readonly number[]): number => numbers.reduce((sum, n) => sum + n, 0);

/** A sum that is unknown as soon as one part is. */
const knownTotal = (numbers: readonly (number | null)[]): number | null => {
  const known = numbers.filter((n) => n !== null);
  return known.length === numbers.length ? total(known) : null;
};

function totalsOf(rings: readonly RingLine[], materials: readonly MaterialLine[]): KitTotals {
  return {
    opened: total(rings.map((r) => r.opened)),
    closed: total(rings.map((r) => r.closed)),
    net: total(rings.map((r) => r.net)),
    spare: total(rings.map((r) => r.spare)),
    issued: total(rings.map((r) => r.issued)),
    ringsNetG: knownTotal(rings.map((r) => r.netG)),
    ringsIssuedG: knownTotal(rings.map((r) => r.issuedG)),
    materialsG: total(materials.map((m) => m.g ?? 0)),
    price: addPrices([...rings.map((r) => r.price), ...materials.map((m) => m.price)]),
  };
}
