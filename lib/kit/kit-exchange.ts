/**
 * What is put into packed kits and taken out of them, so that kits of an
 * earlier revision become kits of a later one. A ring of another wire is
 * another thing, whatever it is called; a new name alone is nothing to pick.
 * Tools are each pupil's own and lie in no kit.
 */
import { metalNameOf } from '#lib/rings/metals.ts';
import type { RingKind } from '#lib/rings/ring-kind.ts';
import { type BatchRule, batchOf } from './kit-batch.ts';
import type { KitList } from './kit-list.ts';
import type { Material } from './making.ts';

export type PackedThing =
  | { readonly is: 'ring'; readonly ringKind: RingKind }
  | { readonly is: 'material'; readonly material: Material };

/** So many kits of one size: as they were packed, and as they would be packed now. */
export interface PackedPart {
  readonly name: string;
  readonly times: number;
  readonly held: KitList;
  readonly now: KitList;
}

/** Rings, or thousandths of a material's unit; below 0: to be taken out. */
export interface ExchangeLine {
  /** What it is, the same before and after. */
  readonly key: string;
  readonly thing: PackedThing;
  /** In each kit of every part, in their order. */
  readonly each: readonly number[];
  /** On the tray of pooled spare. */
  readonly tray: number;
  readonly inAll: number;
}

/** Things that differ, in the order of the kits as they are now, then what is gone; `[]` where nothing does. */
export function exchangeOf(parts: readonly PackedPart[], rule: BatchRule): readonly ExchangeLine[] {
  const packed = parts.map((part) => ({
    times: part.times,
    held: packedOf(part.held, rule),
    now: packedOf(part.now, rule),
  }));
  const trayHeld = trayOf(parts, 'held', rule);
  const trayNow = trayOf(parts, 'now', rule);
  const things = new Map<string, PackedThing>();
  for (const side of ['now', 'held'] as const)
    for (const part of packed)
      for (const [key, { thing }] of part[side]) if (!things.has(key)) things.set(key, thing);
  return [...things].flatMap(([key, thing]) => {
    const each = packed.map(
      ({ held, now }) => (now.get(key)?.quantity ?? 0) - (held.get(key)?.quantity ?? 0),
    );
    const tray = (trayNow.get(key) ?? 0) - (trayHeld.get(key) ?? 0);
    const inAll = packed.reduce((sum, { times }, index) => sum + times * (each[index] ?? 0), tray);
    return tray === 0 && each.every((n) => n === 0) ? [] : [{ key, thing, each, tray, inAll }];
  });
}

export interface Packed {
  readonly thing: PackedThing;
  readonly quantity: number;
}

/** What lies in one kit, by what it is; under the pooled rule its spare lies on the tray. */
export function packedOf(kit: KitList, rule: BatchRule): ReadonlyMap<string, Packed> {
  const rings = kit.rings.map(({ ringKind, net, issued }): [string, Packed] => [
    ringKey(ringKind),
    { thing: { is: 'ring', ringKind }, quantity: rule === 'pooled' ? net : issued },
  ]);
  const materials = kit.materials.map(({ material, needMilli }): [string, Packed] => [
    materialKey(material),
    { thing: { is: 'material', material }, quantity: needMilli },
  ]);
  return new Map([...rings, ...materials].filter(([, { quantity }]) => quantity > 0));
}

/** Spare rings that lie beside the kits; none where every kit holds its own. */
function trayOf(
  parts: readonly PackedPart[],
  side: 'held' | 'now',
  rule: BatchRule,
): ReadonlyMap<string, number> {
  if (rule === 'per kit') return new Map();
  const { rings } = batchOf(
    parts.map((part) => ({ kit: part[side], times: part.times })),
    rule,
  );
  return new Map(rings.map((line) => [ringKey(line.ringKind), line.spare]));
}

const ringKey = (kind: RingKind): string =>
  JSON.stringify(['ring', kind.id, kind.innerDiameter.mm, kind.wire.mm, metalNameOf(kind), kind.colour]);

const materialKey = ({ id, name, unit }: Material): string => JSON.stringify(['material', id, name, unit]);
