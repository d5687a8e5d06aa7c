/**
 * What a workshop has at hand, and what of a need it lacks. Things are the
 * same in every lesson by what they are: a ring by its sizes, metal and
 * colour, anything else by its name and unit.
 */
import { z } from 'zod';
import { metalNameOf } from '#lib/rings/metals.ts';
import type { RingKind } from '#lib/rings/ring-kind.ts';
import { type Offer, offer } from '#lib/thing.ts';
import type { KitBatch } from './kit-batch.ts';
import type { Material } from './making.ts';
import { toNanograms } from './parse-mass.ts';
import { type Purchase, purchaseOf } from './price.ts';
import { toTicks } from './ticks.ts';

export const stockItem = z.object({
  /** What it is; see `ringKey` and `materialKey`. */
  key: z.string().min(1).max(1_000),
  /** As the lesson that counted it last calls it. */
  name: z.string().max(300),
  unit: z.string().min(1).max(30),
  /** Thousandths of a unit. */
  onHandMilli: z.int().min(0).max(2_000_000_000),
  offer: offer.nullable(),
});
export type StockItem = Readonly<z.infer<typeof stockItem>>;

const plain = (text: string): string => text.trim().toLowerCase().replace(/\s+/g, ' ');

/** Rings are alike that were measured alike; a name or a way of stating the size makes no other ring. */
export const ringKey = (kind: RingKind): string =>
  [
    'ring',
    toTicks(kind.measuredInnerMm ?? kind.innerDiameter.mm),
    toTicks(kind.wire.mm),
    plain(metalNameOf(kind)),
    plain(kind.colour),
  ].join(' / ');

export const materialKey = ({ name, unit }: Pick<Material, 'name' | 'unit'>): string =>
  ['material', plain(name), plain(unit)].join(' / ');

/** One line of a batch beside what is at hand; thousandths of a unit throughout. */
export interface StockLine {
  readonly key: string;
  /** Id of the ring kind or material. */
  readonly id: string;
  readonly name: string;
  readonly unit: string;
  readonly neededMilli: number;
  /** Null where nobody counted. */
  readonly onHandMilli: number | null;
  readonly lackingMilli: number;
  readonly offer: Offer | null;
  /** What covers the lack. */
  readonly buy: Purchase;
}

/** What a batch needs beside the stock. An offer of the lesson wins over that of the stock. */
export function stockLines(batch: KitBatch, stock: ReadonlyMap<string, StockItem>): readonly StockLine[] {
  const rings = batch.rings.map(({ ringKind, issued, terms }) =>
    lineOf(stock, {
      key: ringKey(ringKind),
      id: ringKind.id,
      name: ringKind.name,
      unit: 'ring',
      neededMilli: issued * 1000,
      offer: ringKind.offer,
      g: terms[0]?.line.ringMass?.g ?? null,
    }),
  );
  const materials = batch.materials.map(({ material, needMilli }) =>
    lineOf(stock, {
      key: materialKey(material),
      id: material.id,
      name: material.name,
      unit: material.unit,
      neededMilli: needMilli,
      offer: material.offer,
      g: material.massG,
    }),
  );
  return [...rings, ...materials];
}

type Needed = Pick<StockLine, 'key' | 'id' | 'name' | 'unit' | 'neededMilli' | 'offer'> & {
  readonly g: number | null;
};

function lineOf(stock: ReadonlyMap<string, StockItem>, { g, ...needed }: Needed): StockLine {
  const item = stock.get(needed.key);
  const onHandMilli = item?.onHandMilli ?? null;
  const lackingMilli = Math.max(0, needed.neededMilli - (onHandMilli ?? 0));
  const sold = needed.offer ?? item?.offer ?? null;
  return {
    ...needed,
    onHandMilli,
    lackingMilli,
    offer: sold,
    buy: purchaseOf(sold, {
      units: lackingMilli,
      unitsPer: 1000,
      spare: 0,
      nanograms: g === null ? null : toNanograms(g),
    }),
  };
}
