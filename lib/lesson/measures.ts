/** The rings of a lesson as its shape takes them: inner diameter and wire in mm, by ring kind. */
import { sizesOf } from '#lib/rings/ring.ts';
import type { RingMeasure } from '#lib/weave/space/shape-of-weave.ts';
import type { Pictured } from './pictured.ts';

export const measuresOf = ({ ringKinds }: Pick<Pictured, 'ringKinds'>): ReadonlyMap<string, RingMeasure> =>
  new Map(
    ringKinds.map((kind) => {
      const { innerMm, wireMm } = sizesOf(kind);
      return [kind.id, { inner: innerMm, wire: wireMm }] as const;
    }),
  );
