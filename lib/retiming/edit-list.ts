/**
 * What was done to a recording, as a list: what was kept, cut, put in and
 * moved. Times are whole milliseconds; the list is in the order of the new
 * recording and covers both recordings whole, but for gaps too short to be
 * told from the measure's doubt.
 */
import { z } from 'zod';
import { momentMs } from '#lib/time/time.ts';
import type { Shared, SoundComparison } from './compare-sound.ts';
import { msOf } from './samples.ts';

export const EDIT_KINDS = ['kept', 'moved', 'cut', 'inserted'] as const;

const span = z
  .object({ startMs: momentMs, endMs: momentMs })
  .refine((s) => s.endMs >= s.startMs, { message: 'A span ends after it starts.', path: ['endMs'] });

/**
 * One edit. `old` and `new` say where it lies in each recording; a cut has an
 * empty span in the new one, an insert an empty one in the old. Within what
 * was kept or moved, time runs evenly from start to end.
 */
export const edit = z.object({ kind: z.enum(EDIT_KINDS), old: span, new: span });
export type Edit = Readonly<z.infer<typeof edit>>;

export const editList = z.object({
  edits: z.array(edit).max(20_000).readonly(),
  oldMs: momentMs,
  newMs: momentMs,
  /** How much faster the new recording runs than the old: 1.01 is a hundredth faster; 1 where both run alike. */
  speed: z.number().min(0.5).max(2),
  /** Whether the pitch changed with the speed. */
  pitchMoved: z.boolean(),
});
export type EditList = Readonly<z.infer<typeof editList>>;

/** Cuts and inserts that are shorter are not edits but the measure's own doubt, ms; they are left out. */
export const LEAST_EDIT_MS = 60;

/** The edit list of a comparison of sounds. */
export function editListOf({ shared, speed, oldLength, newLength }: SoundComparison): EditList {
  const pieces = joinPieces(shared.map(inMs));
  return {
    ...listPieces(pieces, msOf(oldLength), msOf(newLength)),
    speed: speed ? 1 / speed.factor : 1,
    pitchMoved: speed?.pitch === 'moves',
  };
}

/** A stretch that both recordings have, ms. */
export interface Piece {
  readonly old: { readonly startMs: number; readonly endMs: number };
  readonly new: { readonly startMs: number; readonly endMs: number };
}

const inMs = ({ oldStart, oldEnd, newStart, newEnd }: Shared): Piece => ({
  old: { startMs: msOf(oldStart), endMs: msOf(oldEnd) },
  new: { startMs: msOf(newStart), endMs: msOf(newEnd) },
});

/** Pieces that go on where the last one ended are one piece. */
function joinPieces(pieces: readonly Piece[]): readonly Piece[] {
  const joined: Piece[] = [];
  for (const piece of pieces) {
    const last = joined.at(-1);
    const gap = last && { old: piece.old.startMs - last.old.endMs, new: piece.new.startMs - last.new.endMs };
    if (last && gap && Math.abs(gap.old - gap.new) < LEAST_EDIT_MS && Math.abs(gap.new) < LEAST_EDIT_MS) {
      joined[joined.length - 1] = {
        old: { startMs: last.old.startMs, endMs: piece.old.endMs },
        new: { startMs: last.new.startMs, endMs: piece.new.endMs },
      };
    } else joined.push(piece);
  }
  return joined;
}

/** The whole list for pieces in the order of the new recording, which do not overlap there. */
export function listPieces(
  pieces: readonly Piece[],
  oldMs: number,
  newMs: number,
): Pick<EditList, 'edits' | 'oldMs' | 'newMs'> {
  const inOrder = longestInOrder(pieces);
  const cuts = cutsOf(pieces, oldMs);
  const edits: Edit[] = [];
  const placed = new Set<Piece>();
  let atNew = 0;
  let atOld = 0;
  const placeCuts = (beforeOld: number): void => {
    for (const cut of cuts) {
      if (placed.has(cut) || cut.old.startMs >= beforeOld) continue;
      placed.add(cut);
      edits.push({ kind: 'cut', old: cut.old, new: { startMs: atNew, endMs: atNew } });
    }
  };
  const insertUpTo = (newTo: number): void => {
    if (newTo - atNew < LEAST_EDIT_MS) return;
    const at = { startMs: atOld, endMs: atOld };
    edits.push({ kind: 'inserted', old: at, new: { startMs: atNew, endMs: newTo } });
    atNew = newTo;
  };
  for (const piece of pieces) {
    const isKept = inOrder.has(piece);
    if (isKept) placeCuts(piece.old.startMs);
    insertUpTo(piece.new.startMs);
    edits.push({ kind: isKept ? 'kept' : 'moved', ...piece });
    atNew = piece.new.endMs;
    if (isKept) atOld = piece.old.endMs;
  }
  placeCuts(Number.POSITIVE_INFINITY);
  insertUpTo(newMs);
  return { edits, oldMs, newMs };
}

/** The pieces that stand in the old order, such that they are as long as can be together; the rest was moved. */
function longestInOrder(pieces: readonly Piece[]): ReadonlySet<Piece> {
  const best: number[] = [];
  const from: number[] = [];
  for (const [k, piece] of pieces.entries()) {
    best[k] = 0;
    from[k] = -1;
    for (let j = 0; j < k; j++) {
      const earlier = pieces[j];
      if (
        earlier &&
        earlier.old.startMs <= piece.old.startMs &&
        earlier.old.endMs <= piece.old.endMs &&
        (best[j] ?? 0) > (best[k] ?? 0)
      ) {
        best[k] = best[j] ?? 0;
        from[k] = j;
      }
    }
    best[k] = (best[k] ?? 0) + piece.old.endMs - piece.old.startMs;
  }
  const kept = new Set<Piece>();
  let at = best.indexOf(Math.max(...best));
  while (at >= 0) {
    const piece = pieces[at];
    if (piece) kept.add(piece);
    at = from[at] ?? -1;
  }
  return kept;
}

/** What of the old recording is in no piece; gaps too short to be cuts are none. */
function cutsOf(pieces: readonly Piece[], oldMs: number): readonly Piece[] {
  const cuts: Piece[] = [];
  let reached = 0;
  const none = { startMs: 0, endMs: 0 };
  const ordered = pieces.toSorted((one, other) => one.old.startMs - other.old.startMs);
  for (const { old } of [...ordered, { old: { startMs: oldMs, endMs: oldMs } }]) {
    if (old.startMs - reached >= LEAST_EDIT_MS)
      cuts.push({ old: { startMs: reached, endMs: old.startMs }, new: none });
    reached = Math.max(reached, old.endMs);
  }
  return cuts;
}
