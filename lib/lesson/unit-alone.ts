/**
 * A lesson that repeats one of its units only, as described: what a step's
 * picture is drawn from. Another unit's rings have no place in its shape.
 */
import { endingOf, planRuns, repeatsShowing, unitOf, unitsOf } from '#lib/weave/runs.ts';
import type { Pictured } from './pictured.ts';

/** The lesson without runs, in the rings that its placements name, with this unit as its repeat. */
export function unitAlone<P extends Pictured>(content: P, unit: string): P {
  const units = unitsOf(content);
  const repeat =
    units.length > 1 ? unitOf(content, unit).map(({ unit: _, ...each }) => each) : content.repeat;
  return { ...content, repeat, runs: [] };
}

/** The lesson with the unit that a placement belongs to: of the start the first that is made, of the finishing the last. */
export function lessonWith<P extends Pictured>(content: P, placementId: string): P {
  const has = (placements: Pictured['repeat']): boolean => placements.some(({ id }) => id === placementId);
  const own = content.repeat.find(({ id }) => id === placementId);
  if (own) return unitAlone(content, own.unit ?? '');
  const repeats = repeatsShowing(content);
  const run = has(content.finishing)
    ? endingOf(content, repeats).run
    : (planRuns(content.runs, repeats)[0]?.run ?? null);
  return unitAlone(content, run?.unit ?? unitsOf(content)[0] ?? '');
}
