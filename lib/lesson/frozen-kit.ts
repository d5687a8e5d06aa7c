/** The kit of one size as a revision froze it: what a holder of that kit was given. */
import { z } from 'zod';
import { type KitList, kitFor } from '#lib/kit/kit-list.ts';
import { type Content, thingId } from './content.ts';

const count = z.int().min(0);

export const frozenKit = z.object({
  /** Id of the size. */
  size: thingId,
  bodyMm: z.number().positive(),
  /** Null where nothing repeats. */
  finishedMm: z.number().positive().nullable(),
  repeats: count,
  sparePercent: count,
  rings: z.array(
    z.object({
      ringKind: thingId,
      opened: count,
      closed: count,
      spare: count,
      issued: count,
      packs: count.nullable(),
    }),
  ),
  materials: z.array(z.object({ material: thingId, needMilli: count, packs: count.nullable() })),
  /** Cost by whole packs, minor units of the lesson's currency; lines without a price are left out. */
  packsMinor: count,
  /** How many lines state no price. */
  unpriced: count,
});
export type FrozenKit = Readonly<z.infer<typeof frozenKit>>;

/** The kits of every size; a size whose kit cannot be computed has none. */
export const freezeKits = (content: Content): readonly FrozenKit[] =>
  content.sizes.flatMap((size) => {
    const kit = kitFor(content, size.bodyMm);
    return kit.ok ? [freezeKit(size.id, kit.value)] : [];
  });

const freezeKit = (size: string, kit: KitList): FrozenKit => ({
  size,
  bodyMm: kit.bodyMm,
  finishedMm: kit.length?.finishedMm ?? null,
  repeats: kit.repeats,
  sparePercent: kit.spareRule.sparePercent,
  rings: kit.rings.map((line) => ({
    ringKind: line.ringKind.id,
    opened: line.opened,
    closed: line.closed,
    spare: line.spare,
    issued: line.issued,
    packs: line.packs?.packs ?? null,
  })),
  materials: [...kit.materials, ...kit.tools].map((line) => ({
    material: line.material.id,
    needMilli: line.needMilli,
    packs: line.packs?.packs ?? null,
  })),
  packsMinor: kit.totals.price.packsMinor,
  unpriced: kit.totals.price.unpriced,
});
