/** Whether one picture can hold the whole length of a lesson's piece; light enough for any screen. */
import { planRuns, unitOf } from '#lib/weave/runs.ts';
import { ringsAdded } from '#lib/weave/sequence.ts';
import type { Pictured } from './pictured.ts';

/** Rings that a picture of the whole length holds at most; beyond them it says nothing that fewer do not say. */
const MOST_RINGS = 3000;

/** Whether a piece has more rings than a picture of its whole length holds. */
export function hasTooManyRings(content: Pick<Pictured, 'repeat' | 'runs'>, repeats: number): boolean {
  const added = (unit: string): number =>
    unitOf(content, unit).reduce((sum, each) => sum + ringsAdded(each), 0);
  const rings = planRuns(content.runs, repeats).reduce(
    (sum, stretch) => sum + stretch.repeats * added(stretch.run?.unit ?? ''),
    0,
  );
  return rings > MOST_RINGS;
}
