/**
 * Whether the trade is talked of around a place: from how many different
 * terms stand there rightly. A transcript of something else has next to none,
 * however long it is; a short one says nothing either way.
 */
import type { RightAt } from './right-words.ts';

/** Words before and behind a place that are listened to. */
const REACH = 40;
/** Different terms (weighed) around a place that make it sure. */
const SURE = 1.6;
/** Terms a hundred words below which a whole transcript is of something else. */
const FOREIGN = 0.8;

/** For each word from -1 (surely something else) to 1 (surely the trade). */
export function talkAround(count: number, rightAt: RightAt, weights: readonly number[]): Float64Array {
  const whole = wholeTalk(rightAt, weights);
  const around = new Float64Array(count);
  const seen = new Map<number, number>();
  let sum = 0;
  const enter = (at: number, by: 1 | -1): void => {
    const right = rightAt[at];
    if (!right || right.from !== at) return;
    const before = seen.get(right.term) ?? 0;
    seen.set(right.term, before + by);
    if (before === (by === 1 ? 0 : 1)) sum += by * (weights[right.term] ?? 0);
  };
  for (let at = 0; at < Math.min(REACH, count); at += 1) enter(at, 1);
  for (let at = 0; at < count; at += 1) {
    if (at + REACH < count) enter(at + REACH, 1);
    if (at > REACH) enter(at - REACH - 1, -1);
    around[at] = Math.min(1, Math.max(-1, Math.min(1, sum / SURE) + whole));
  }
  return around;
}

/** What the whole transcript adds: 0 for a short one, down to -1 where the trade is not talked of, half where it is. */
function wholeTalk(rightAt: RightAt, weights: readonly number[]): number {
  const count = rightAt.length;
  if (count < 60) return 0;
  let sum = 0;
  rightAt.forEach((right, at) => {
    if (right?.from === at) sum += weights[right.term] ?? 0;
  });
  const perHundred = (100 * sum) / count;
  const sureness = Math.min(1, (count - 60) / 300);
  return sureness * Math.min(0.3, Math.max(-1, perHundred / FOREIGN - 1));
}
