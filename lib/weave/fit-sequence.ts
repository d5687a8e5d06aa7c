/**
 * What a ring sequence asks of its rings: how many wires lie in a ring's hole
 * when it is closed, and whether they can. Only what placements say is used,
 * so this finds the impossible and never vouches for the rest.
 */
import { type FitFault, fitFault } from '#lib/rings/fit.ts';
import { sizesOf } from '#lib/rings/ring.ts';
import type { RingKind } from '#lib/rings/ring-kind.ts';
import { type Placement, SEQUENCE_PARTS, type Sequence, type SequencePart } from './placement.ts';

export interface PlacementFit {
  readonly placementId: string;
  readonly part: SequencePart;
  /** Counted from 1 inside its part. */
  readonly number: number;
  readonly ringKind: string;
  /** Wires in the opened ring's hole: rings passed and rings carried. */
  readonly wires: number;
  readonly fault: FitFault | null;
}

/**
 * One entry per placement that opens a ring of a known kind. Carried rings
 * have their own wire; a passed ring is taken to have the thinnest of the
 * lesson, the kindest guess, so that a fault is a fault whichever it is.
 */
export function fitsOf(sequence: Sequence, ringKinds: readonly RingKind[]): readonly PlacementFit[] {
  const kinds = new Map(ringKinds.map((kind) => [kind.id, kind]));
  const thinnest = Math.min(...ringKinds.map((kind) => kind.wire.mm));
  return SEQUENCE_PARTS.flatMap((part) =>
    sequence[part].flatMap((placement, index) => {
      const kind = placement.opened === null ? undefined : kinds.get(placement.opened);
      if (!kind) return [];
      const wires = wiresIn(placement, kinds, thinnest);
      return [
        {
          placementId: placement.id,
          part,
          number: index + 1,
          ringKind: kind.id,
          wires: wires.length,
          fault: fitFault(sizesOf(kind).innerMm, wires),
        },
      ];
    }),
  );
}

function wiresIn(
  placement: Placement,
  kinds: ReadonlyMap<string, RingKind>,
  thinnest: number,
): readonly number[] {
  const passed = placement.passes.map(() => thinnest);
  const carried = placement.carries.flatMap(({ ringKind, count }) =>
    Array<number>(count).fill(kinds.get(ringKind)?.wire.mm ?? thinnest),
  );
  return [...passed, ...carried];
}
