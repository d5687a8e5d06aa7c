/**
 * What a placement can reach: the rings that are there when its turn comes,
 * by the names that it would pass them with.
 */
import type { Piece, RingRef } from './placement.ts';
import { type Woven, walkPiece } from './walk.ts';

export interface NearRing {
  readonly ref: RingRef;
  readonly ringKind: string;
}

/** Repeats after which what is near no longer changes. */
const REPEATS_SETTLED = 4;

/** Rings of each row that are also named from its beginning: a catch goes there when the piece is done. */
const FIRSTS_NAMED = 2;

/**
 * The newest rings of every row before (or, for what it lays, after) a
 * placement is made, then the first ones; the row that grew last leads. In the repeat it is
 * a late one that is looked at, where the piece is as it will mostly be.
 * Empty where the placement is not in the piece.
 *
 * @param deep how many rings of each row
 */
export function ringsNear(
  piece: Piece,
  placementId: string,
  moment: 'before' | 'after',
  deep = 6,
): readonly NearRing[] {
  const woven = walkPiece({ ...piece, runs: [] }, REPEATS_SETTLED);
  const turn = woven.turns.findLastIndex(({ placement }) => placement.id === placementId);
  if (turn < 0) return nearInUnits(piece, placementId, moment, deep);
  const end = moment === 'after' ? turn + 1 : turn;
  return newestOfRows(woven, end, deep);
}

/** A placement of another unit than the main one: that unit is walked as the repeat. */
function nearInUnits(
  piece: Piece,
  placementId: string,
  moment: 'before' | 'after',
  deep: number,
): readonly NearRing[] {
  const unit = piece.repeat.find(({ id }) => id === placementId)?.unit ?? '';
  if (unit === '') return [];
  const repeat = piece.repeat.filter((each) => each.unit === unit).map(({ unit: _, ...each }) => each);
  return ringsNear({ ...piece, repeat, endsAfter: null }, placementId, moment, deep);
}

function newestOfRows(woven: Woven, beforeTurn: number, deep: number): readonly NearRing[] {
  const rows = new Map<string, string[]>();
  for (const ring of woven.rings) {
    if (ring.turn >= beforeTurn) break;
    const row = rows.get(ring.row) ?? [];
    // Deleted and set again, so that the row that grew last stands last.
    rows.delete(ring.row);
    rows.set(ring.row, [...row, ring.ringKind]);
  }
  const lastGrown = [...rows].toReversed();
  const named = (row: string, kinds: readonly string[], from: RingRef['from']): readonly NearRing[] =>
    kinds.map((ringKind, index) => ({ ref: { row, nth: index + 1, from }, ringKind }));
  return [
    ...lastGrown.flatMap(([row, kinds]) => named(row, kinds.slice(-deep).toReversed(), 'newest')),
    ...lastGrown.flatMap(([row, kinds]) => named(row, kinds.slice(0, FIRSTS_NAMED), 'first')),
  ];
}

/**
 * The ring that a further pass most likely means: of the row passed last (else
 * of another row than the placement's own, where there is one) the newest that
 * is not passed yet. Null where no ring is there.
 */
export function likelyNext(
  near: readonly NearRing[],
  ownRow: string,
  passed: readonly (RingRef | undefined)[],
): RingRef | null {
  const last = passed.findLast((ref) => ref !== undefined);
  const row = last?.row ?? near.find(({ ref }) => ref.row !== ownRow)?.ref.row ?? ownRow;
  const free = near.filter(
    ({ ref }) =>
      ref.from === 'newest' &&
      !passed.some((other) => other && other.row === ref.row && other.nth === ref.nth),
  );
  return (free.find(({ ref }) => ref.row === row) ?? free[0])?.ref ?? null;
}
