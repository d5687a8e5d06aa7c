/**
 * The ends of a piece. A sequence whose finishing was forgotten is a sound
 * piece too, only another one; so a piece states what shows at its ends, and
 * a change of the sequence that changes them is noticed.
 */
import type { EndRing, Piece, PieceEnds } from './placement.ts';
import { repeatsShowing } from './runs.ts';
import { neighboursOf, type Woven, walkPiece } from './walk.ts';

/**
 * The ends as the sequence makes them: the outermost ring of every row, and
 * of a piece in one row the two outermost; with kind and number of links.
 */
export function endsOf(piece: Piece): PieceEnds {
  const woven = walkPiece(piece, repeatsShowing(piece));
  const depth = woven.rows.size === 1 ? 2 : 1;
  return { first: endOf(woven, 'first', depth), last: endOf(woven, 'last', depth) };
}

function endOf(woven: Woven, end: keyof PieceEnds, depth: number): readonly EndRing[] {
  return [...woven.rows.keys()].flatMap((row) =>
    Array.from({ length: depth }, (_, outer) => ringAtEnd(woven, end, row, outer + 1)).filter(
      (ring) => ring !== null,
    ),
  );
}

/** The `nth` ring of a row from an end, and its links; null where the row is shorter. */
export function ringAtEnd(woven: Woven, end: keyof PieceEnds, row: string, nth: number): EndRing | null {
  const indices = woven.rows.get(row) ?? [];
  const index = end === 'first' ? indices[nth - 1] : indices.at(-nth);
  const ring = index === undefined ? undefined : woven.rings[index];
  if (!ring) return null;
  return { row, nth, ringKind: ring.ringKind, links: neighboursOf(woven)[ring.index]?.length ?? 0 };
}

export interface EndFault {
  readonly end: keyof PieceEnds;
  readonly asked: EndRing;
  /** What stands there; null: no ring. */
  readonly found: EndRing | null;
}

/** Where the ends of a walked piece are not what was stated. */
export const endFaults = (woven: Woven, ends: PieceEnds): readonly EndFault[] =>
  (['first', 'last'] as const).flatMap((end) =>
    ends[end].flatMap((asked) => {
      const found = ringAtEnd(woven, end, asked.row, asked.nth);
      const holds =
        found !== null &&
        (asked.ringKind === null || asked.ringKind === found.ringKind) &&
        (asked.links === null || asked.links === found.links);
      return holds ? [] : [{ end, asked, found }];
    }),
  );
