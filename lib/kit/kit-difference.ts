/**
 * What the holder of an earlier kit has to change: per ring kind how many
 * more or fewer, opened and closed, and what became another thing. Things are
 * matched by their id, so a new name alone is no difference.
 */
import { invariant } from '#lib/result.ts';
import { metalNameOf } from '#lib/rings/metals.ts';
import type { RingKind } from '#lib/rings/ring-kind.ts';
import type { KitList, RingLine } from './kit-list.ts';
import type { Material } from './making.ts';
import type { MaterialLine } from './material-line.ts';

/** A fact of a ring kind that makes earlier rings wrong, before and now, as it is written. */
export interface RingChange {
  readonly what: 'inner diameter' | 'wire' | 'metal' | 'colour';
  readonly before: string;
  readonly now: string;
}

/** Rings of one kind in a kit. */
export interface RingCounts {
  readonly opened: number;
  readonly closed: number;
  readonly spare: number;
  /** Opened, closed and spare together. */
  readonly issued: number;
}

export interface RingDifference {
  /** As it is now; as it was held where it is gone. */
  readonly ringKind: RingKind;
  /** What the held kit calls it; null where it is new. */
  readonly heldName: string | null;
  readonly how: 'new' | 'gone' | 'other' | 'count' | 'same';
  readonly held: RingCounts;
  readonly now: RingCounts;
  /** Now - before; below 0: fewer. */
  readonly opened: number;
  readonly closed: number;
  readonly spare: number;
  readonly issued: number;
  /** Not empty where `how` is `other`: then the earlier rings cannot be used for it. */
  readonly changes: readonly RingChange[];
}

export interface MaterialDifference {
  readonly material: Material;
  readonly how: 'new' | 'gone' | 'other' | 'count' | 'same';
  /** Thousandths of a unit, now - before; where the unit changed, what is needed now. */
  readonly needMilli: number;
  /** Thousandths of the unit of then, and of the unit of now. */
  readonly heldMilli: number;
  readonly nowMilli: number;
  readonly before: { readonly name: string; readonly unit: string } | null;
}

export interface KitDifference {
  readonly same: boolean;
  readonly repeats: number;
  readonly rings: readonly RingDifference[];
  readonly materials: readonly MaterialDifference[];
  readonly tools: readonly MaterialDifference[];
  /** Now - before; null where the currency changed. */
  readonly packsMinor: number | null;
  readonly proRataMilli: number | null;
}

/** From the kit that is held to the kit as it is now. `differenceOf(kit, kit).same` is true. */
export function differenceOf(held: KitList, now: KitList): KitDifference {
  const rings = matched(
    held.rings,
    now.rings,
    (line) => line.ringKind.id,
    (before, after) => ringDifference(before, after),
  );
  const materials = matched(held.materials, now.materials, (line) => line.material.id, materialDifference);
  const tools = matched(held.tools, now.tools, (line) => line.material.id, materialDifference);
  const oneCurrency = held.currency === now.currency;
  const repeats = now.repeats - held.repeats;
  return {
    same: repeats === 0 && [...rings, ...materials, ...tools].every((d) => d.how === 'same'),
    repeats,
    rings,
    materials,
    tools,
    packsMinor: oneCurrency ? now.totals.price.packsMinor - held.totals.price.packsMinor : null,
    proRataMilli: oneCurrency ? now.totals.price.proRataMilli - held.totals.price.proRataMilli : null,
  };
}

/** Pairs two lists by id: those of `now` in their order, then what is gone. */
function matched<T, D>(
  held: readonly T[],
  now: readonly T[],
  idOf: (item: T) => string,
  compare: (before: T | null, after: T | null) => D,
): readonly D[] {
  const before = new Map(held.map((item) => [idOf(item), item]));
  const here = new Set(now.map(idOf));
  return [
    ...now.map((item) => compare(before.get(idOf(item)) ?? null, item)),
    ...held.filter((item) => !here.has(idOf(item))).map((item) => compare(item, null)),
  ];
}

const NOTHING: RingCounts = { opened: 0, closed: 0, spare: 0, issued: 0 };

function ringDifference(before: RingLine | null, after: RingLine | null): RingDifference {
  const line = after ?? before;
  invariant(line, 'a difference has a line on one side');
  const changes = before && after ? changesOf(before.ringKind, after.ringKind) : [];
  const from = countsOf(before);
  const to = countsOf(after);
  const counts = {
    opened: to.opened - from.opened,
    closed: to.closed - from.closed,
    spare: to.spare - from.spare,
    issued: to.issued - from.issued,
  };
  const moved = Object.values(counts).some((n) => n !== 0);
  return {
    ringKind: line.ringKind,
    heldName: before?.ringKind.name ?? null,
    held: from,
    now: to,
    how: !before ? 'new' : !after ? 'gone' : changes.length > 0 ? 'other' : moved ? 'count' : 'same',
    ...counts,
    changes,
  };
}

const countsOf = (line: RingLine | null): RingCounts =>
  line ? { opened: line.opened, closed: line.closed, spare: line.spare, issued: line.issued } : NOTHING;

function changesOf(before: RingKind, now: RingKind): readonly RingChange[] {
  const facts: readonly (RingChange & { readonly changed: boolean })[] = [
    {
      what: 'inner diameter',
      before: before.innerDiameter.stated,
      now: now.innerDiameter.stated,
      changed: before.innerDiameter.mm !== now.innerDiameter.mm,
    },
    {
      what: 'wire',
      before: before.wire.stated,
      now: now.wire.stated,
      changed: before.wire.mm !== now.wire.mm,
    },
    {
      what: 'metal',
      before: metalNameOf(before),
      now: metalNameOf(now),
      changed: metalNameOf(before) !== metalNameOf(now),
    },
    { what: 'colour', before: before.colour, now: now.colour, changed: before.colour !== now.colour },
  ];
  return facts.filter((f) => f.changed).map(({ changed: _, ...fact }) => fact);
}

function materialDifference(before: MaterialLine | null, after: MaterialLine | null): MaterialDifference {
  const line = after ?? before;
  invariant(line, 'a difference has a line on one side');
  const otherUnit = before && after && before.material.unit !== after.material.unit;
  const otherName = before && after && before.material.name !== after.material.name;
  const needMilli = (after?.needMilli ?? 0) - (otherUnit ? 0 : (before?.needMilli ?? 0));
  return {
    material: line.material,
    how: !before
      ? 'new'
      : !after
        ? 'gone'
        : otherUnit || otherName
          ? 'other'
          : needMilli !== 0
            ? 'count'
            : 'same',
    needMilli,
    heldMilli: before?.needMilli ?? 0,
    nowMilli: after?.needMilli ?? 0,
    before: before && { name: before.material.name, unit: before.material.unit },
  };
}
