/** Moves an edit point by hand: the list stays whole, what is around the point gives way. */
import { type EditList, listPieces, type Piece } from './edit-list.ts';

/**
 * A place in the new recording where shared sound ends, or begins, or both:
 * `end` is when what is before it ends, `start` when what is after it begins,
 * ms. Null at an end of the recording.
 */
export interface Join {
  readonly end: number | null;
  readonly start: number | null;
}

const piecesOf = ({ edits }: EditList): readonly Piece[] =>
  edits
    .filter(({ kind }) => kind === 'kept' || kind === 'moved')
    .map((edit) => ({ old: edit.old, new: edit.new }));

/** The edit points of a list, in order: the first before all shared sound, the last after it. */
export function joinsOf(list: EditList): readonly Join[] {
  const pieces = piecesOf(list);
  return Array.from({ length: pieces.length + 1 }, (_, k) => ({
    end: pieces[k - 1]?.new.endMs ?? null,
    start: pieces[k]?.new.startMs ?? null,
  }));
}

/**
 * The list with one edit point moved. Sound that is shared stays where it is in
 * the old recording beside where it is in the new one: what moves is how far it
 * reaches. A point goes no farther than the piece it belongs to, the
 * recordings' ends, and the piece beyond.
 */
export function adjustJoin(list: EditList, join: number, to: Join): EditList {
  const pieces = piecesOf(list);
  const before = pieces[join - 1];
  const after = pieces[join];
  const wantedStart = after && to.start !== null ? clampStart(after, to.start) : null;
  const latestEnd = wantedStart ?? after?.new.startMs ?? list.newMs;
  const end = before && to.end !== null ? clampEnd(before, Math.min(to.end, latestEnd), list) : null;
  const earliestStart = end ?? before?.new.endMs ?? 0;
  const startMs =
    after && wantedStart !== null ? clampStart(after, Math.max(wantedStart, earliestStart)) : null;
  const moved = pieces.map((piece, k) => {
    if (k === join - 1 && end !== null) return ending(piece, end);
    if (k === join && startMs !== null) return beginning(piece, startMs);
    return piece;
  });
  return { ...list, ...listPieces(moved, list.oldMs, list.newMs) };
}

const pace = (piece: Piece): number =>
  (piece.old.endMs - piece.old.startMs) / Math.max(1, piece.new.endMs - piece.new.startMs);

const ending = (piece: Piece, endMs: number): Piece => ({
  old: {
    startMs: piece.old.startMs,
    endMs: Math.round(piece.old.endMs + (endMs - piece.new.endMs) * pace(piece)),
  },
  new: { startMs: piece.new.startMs, endMs },
});

const beginning = (piece: Piece, startMs: number): Piece => ({
  old: {
    startMs: Math.round(piece.old.startMs + (startMs - piece.new.startMs) * pace(piece)),
    endMs: piece.old.endMs,
  },
  new: { startMs, endMs: piece.new.endMs },
});

/** A piece keeps at least a tenth of a second, or all that it has where that is less. */
const leastMs = (piece: Piece): number => Math.min(100, piece.new.endMs - piece.new.startMs);

// Limits are whole milliseconds within the old recording: rounded, one could lie half a millisecond beyond its end.
const clampEnd = (piece: Piece, ms: number, { oldMs, newMs }: EditList): number =>
  Math.round(
    Math.max(
      piece.new.startMs + leastMs(piece),
      Math.min(ms, newMs, Math.floor(piece.new.endMs + (oldMs - piece.old.endMs) / pace(piece))),
    ),
  );

const clampStart = (piece: Piece, ms: number): number =>
  Math.round(
    Math.min(
      piece.new.endMs - leastMs(piece),
      Math.max(ms, 0, Math.ceil(piece.new.startMs - piece.old.startMs / pace(piece))),
    ),
  );
