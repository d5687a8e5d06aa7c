/** What a pupil reads of a repeat that is made in runs, and of units among its steps. */
import { runsWords } from '#lib/weave/picture/say-step.ts';
import type { Placement } from '#lib/weave/placement.ts';
import { planRuns, unitsOf } from '#lib/weave/runs.ts';
import { looksOf, type Pictured } from './pictured.ts';

type Repeated = Pick<Pictured, 'repeat' | 'runs' | 'ringKinds'>;

const MAIN = 'the main unit';

/** `7 repeats of the main unit, then 3 of plain pairs, then 7 of the main unit.`; empty where the piece has no runs. */
export const planWords = (content: Repeated, repeats: number): string =>
  content.runs.length === 0
    ? ''
    : runsWords(planRuns(content.runs, repeats), looksOf(content), unitsOf(content).length > 1 ? MAIN : '');

/** The name of the unit that begins with a placement; empty where it goes on, and where there is one unit only. */
export function unitBegun(
  content: Pick<Pictured, 'repeat'>,
  placement: Pick<Placement, 'id'> | null,
): string {
  const at = content.repeat.findIndex(({ id }) => id === placement?.id);
  if (at < 0 || unitsOf(content).length < 2) return '';
  const unit = content.repeat[at]?.unit ?? '';
  if (at > 0 && (content.repeat[at - 1]?.unit ?? '') === unit) return '';
  return unit === '' ? 'The main unit' : `The unit ${unit}`;
}
