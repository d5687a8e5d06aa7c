/**
 * Finds what was said anew in place: new sound exactly as long as what it
 * replaces, so that no distance changes and nothing else would tell.
 */
import { type Side, speaksFor } from './edit-point.ts';
import type { Compare } from './likeness.ts';

/** Steps of the first look and how many of them speak against, at least: 50 ms, 0.6 s. */
const STEP = 400;
/** How strongly they must speak against, in steps of well-heard sound; noise in pauses sums to less. */
const STRONGLY = 6;
/** How much farther than what was found the exact look goes, samples (0.4 s). */
export const AROUND = 3_200;

export interface Unlike {
  readonly from: number;
  readonly to: number;
}

/** Stretches between `from` and `to` where the new recording follows the line in time but not in sound. */
export function findUnlike(compare: Compare, from: number, to: number, side: Side): readonly Unlike[] {
  const found: Unlike[] = [];
  let sum = 0;
  let start = from;
  let worst = 0;
  let worstEnd = from;
  const close = (): void => {
    if (worst <= -STRONGLY) found.push({ from: start, to: worstEnd });
    sum = 0;
    worst = 0;
  };
  for (let at = from; at < to; at += STEP) {
    const score = speaksFor(compare, at + STEP / 2, side);
    if (sum === 0) start = at;
    sum = Math.min(0, sum + score);
    if (sum < worst) {
      worst = sum;
      worstEnd = Math.min(to, at + STEP);
    } else if (sum > worst / 2) close();
  }
  close();
  return found;
}
