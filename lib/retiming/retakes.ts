/** What was cut and said anew: a cut with an insert in its place. */
import type { Span } from '#lib/time/time.ts';
import type { Edit, EditList } from './edit-list.ts';

export interface Retake {
  /** Place of its cut in the list of edits. */
  readonly cut: number;
  readonly old: Span;
  readonly inserted: Edit;
}

/** Takes of which one is so many times as long as the other are hardly the same words. */
const MOST_TIMES = 2.5;
/** Shorter ones are clicks and breaths, ms. */
const SHORTEST_MS = 400;

/** In the order of the list. */
export function retakesIn({ edits }: EditList): readonly Retake[] {
  return edits.flatMap((edit, k) => {
    if (edit.kind !== 'cut') return [];
    const inserted = [edits[k + 1], edits[k - 1]].find((near) => near?.kind === 'inserted');
    if (!inserted) return [];
    const before = edit.old.endMs - edit.old.startMs;
    const after = inserted.new.endMs - inserted.new.startMs;
    const isLike =
      Math.min(before, after) >= SHORTEST_MS &&
      Math.max(before, after) <= MOST_TIMES * Math.min(before, after);
    return isLike ? [{ cut: k, old: edit.old, inserted }] : [];
  });
}
