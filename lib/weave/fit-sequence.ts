/**
 * What a ring sequence asks of its rings: how many wires lie in a ring's hole
 * when it is closed, and whether they can. Only what placements say is used,
 * so this finds the impossible and never vouches for the rest.
 */
import { type FitFault, fitFault } from '#lib/rings/fit.ts';
import { sizesOf } from '#lib/rings/ring.ts';
import type { RingKind } from '#lib/rings/ring-kind.ts';
import { type Piece, type Placement, SEQUENCE_PARTS, type SequencePart } from './placement.ts';
import { neighboursOf, type Woven, walkPiece } from './walk.ts';

export interface PlacementFit {
  readonly placementId: string;
  readonly part: SequencePart;
  /** Counted from 1 inside its part. */
  readonly number: number;
  readonly ringKind: string;
  /** Wires in the ring's hole. */
  readonly wires: number;
  /** Their thickness, mm; see `fitsOf` for where it is a guess. */
  readonly wiresMm: readonly number[];
  readonly fault: FitFault | null;
}

/** Repeats walked: enough for a ring to get all the neighbours that it ever has. */
const REPEATS_WALKED = 6;

/**
 * The tightest case of every ring kind that a placement brings in. Where every
 * pass names its ring, the wires are those of all neighbours that the ring has
 * in the finished piece. Where one does not, only what the placement itself
 * puts through its opened ring is known, and a passed ring is taken to have
 * the thinnest wire of the lesson: the kindest guess, so that a fault is one.
 */
export function fitsOf(piece: Piece, ringKinds: readonly RingKind[]): readonly PlacementFit[] {
  const kinds = new Map(ringKinds.map((kind) => [kind.id, kind]));
  const woven = walkPiece(piece, REPEATS_WALKED);
  return woven.isNamed ? fitsOfLinks(piece, woven, kinds) : fitsOfPlacements(piece, kinds);
}

const thinnestOf = (kinds: ReadonlyMap<string, RingKind>): number =>
  Math.min(...[...kinds.values()].map((kind) => kind.wire.mm));

function fitsOfLinks(
  piece: Piece,
  woven: Woven,
  kinds: ReadonlyMap<string, RingKind>,
): readonly PlacementFit[] {
  const neighbours = neighboursOf(woven);
  const thinnest = thinnestOf(kinds);
  const worst = new Map<string, PlacementFit>();
  for (const ring of woven.rings) {
    const kind = kinds.get(ring.ringKind);
    const turn = woven.turns[ring.turn];
    if (!kind || !turn) continue;
    const wires = (neighbours[ring.index] ?? []).map(
      (other) => kinds.get(woven.rings[other]?.ringKind ?? '')?.wire.mm ?? thinnest,
    );
    const fit: PlacementFit = {
      placementId: turn.placement.id,
      part: turn.part,
      number: piece[turn.part].findIndex(({ id }) => id === turn.placement.id) + 1,
      ringKind: kind.id,
      wires: wires.length,
      wiresMm: wires,
      fault: fitFault(sizesOf(kind).innerMm, wires),
    };
    const key = `${fit.placementId} ${kind.id}`;
    const before = worst.get(key);
    if (
      !before ||
      needOf(fit) > needOf(before) ||
      (needOf(fit) === needOf(before) && fit.wires > before.wires)
    )
      worst.set(key, fit);
  }
  return [...worst.values()];
}

const needOf = (fit: PlacementFit): number => fit.fault?.needsMm ?? 0;

function fitsOfPlacements(piece: Piece, kinds: ReadonlyMap<string, RingKind>): readonly PlacementFit[] {
  const thinnest = thinnestOf(kinds);
  return SEQUENCE_PARTS.flatMap((part) =>
    piece[part].flatMap((placement, index) => {
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
          wiresMm: wires,
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
