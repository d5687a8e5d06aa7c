/** The edit points of a list as a person looks at them: at each, what was cut, put in, or moved there. */
import type { Edit, EditList } from './edit-list.ts';
import { type Retake, retakesIn } from './retakes.ts';

export interface EditPointSeen {
  /** Its place among the joins (adjust.ts). */
  readonly join: number;
  /** Where it lies in the new recording, ms. */
  readonly atMs: number;
  /** What was cut here, with its place in the list. */
  readonly cuts: readonly { readonly at: number; readonly edit: Edit }[];
  readonly inserted: Edit | null;
  /** What follows and was elsewhere before. */
  readonly movedHere: Edit | null;
  readonly retake: Retake | null;
}

/** In the order of the new recording; joins at which nothing was done are left out. */
export function editPointsOf(list: EditList): readonly EditPointSeen[] {
  const retakes = retakesIn(list);
  const points: EditPointSeen[] = [];
  let join = 0;
  let atMs = 0;
  let here: { at: number; edit: Edit }[] = [];
  const close = (next: Edit | null): void => {
    const cuts = here.filter(({ edit }) => edit.kind === 'cut');
    const inserted = here.find(({ edit }) => edit.kind === 'inserted')?.edit ?? null;
    const movedHere = next?.kind === 'moved' ? next : null;
    const retake = retakes.find((one) => cuts.some(({ at }) => at === one.cut)) ?? null;
    if (here.length > 0 || movedHere) points.push({ join, atMs, cuts, inserted, movedHere, retake });
    here = [];
    join += 1;
  };
  for (const [at, edit] of list.edits.entries()) {
    if (edit.kind === 'kept' || edit.kind === 'moved') {
      close(edit);
      atMs = edit.new.endMs;
    } else here.push({ at, edit });
  }
  close(null);
  return points;
}
