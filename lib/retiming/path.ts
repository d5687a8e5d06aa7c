/**
 * The likeliest account of the new recording, block by block: at which
 * distance from the old one it goes on, or that it is new there. Found by
 * dynamic programming (Viterbi 1967) over the distances that were heard.
 */
import type { Landmarks } from './landmarks.ts';
import { eachMatch, type LandmarkIndex, NEAR, placeOfFrame } from './matches.ts';

/** Frames of one block, 512 ms. */
export const BLOCK = 32;
/** What a change of distance costs, in matches. */
const CHANGE_COSTS = 14;
/** What a block of new material is worth where there is sound, in matches: less at one distance are chance. */
const NEW_IS_WORTH = 2;
/** More matches than this in one block say no more. */
const MOST_OF_BLOCK = 12;
/** A level so far below the loud parts counts as nothing being heard, dB. */
const QUIET_BELOW = 35;

/** Blocks `[first, end)` at one distance; null for new material. */
export interface Stretch {
  readonly first: number;
  readonly end: number;
  readonly distance: number | null;
}

export function* findPath(
  heard: Landmarks,
  index: LandmarkIndex,
  distances: readonly number[],
): Generator<number, readonly Stretch[]> {
  const blocks = Math.ceil(heard.length / BLOCK);
  const states = distances.length + 1;
  const isNew = distances.length;
  const stateOf = statesNear(distances);
  const activity = activityOf(heard, blocks);
  const from = new Int16Array(blocks * states);
  let scores = new Float64Array(states);
  let before = new Float64Array(states);
  const votes = new Float64Array(states);
  for (let block = 0; block < blocks; block++) {
    if (block % 256 === 0) yield block / blocks;
    votes.fill(0);
    const end = placeOfFrame(heard, (block + 1) * BLOCK);
    eachMatch(heard, placeOfFrame(heard, block * BLOCK), end, index, (frame, oldFrame) => {
      const state = stateOf.get(oldFrame - frame);
      if (state !== undefined) votes[state] = Math.min(MOST_OF_BLOCK, (votes[state] as number) + 1);
    });
    votes[isNew] = NEW_IS_WORTH * (activity[block] as number);
    [before, scores] = [scores, before];
    goOn(before, scores, votes, from.subarray(block * states, (block + 1) * states), block === 0);
  }
  return stretchesOf(from, scores, blocks, states, distances);
}

/** Each distance and its neighbours, with its place among the distances; the commoner one has them where two are near. */
function statesNear(distances: readonly number[]): ReadonlyMap<number, number> {
  const stateOf = new Map<number, number>();
  for (const [state, distance] of distances.entries()) {
    for (let near = -NEAR; near <= NEAR; near++) {
      if (!stateOf.has(distance + near)) stateOf.set(distance + near, state);
    }
  }
  return stateOf;
}

/** One block on: every state comes from itself, or from the best one at the price of a change. */
function goOn(
  before: Float64Array,
  scores: Float64Array,
  votes: Float64Array,
  from: Int16Array,
  isFirst: boolean,
): void {
  let best = 0;
  for (let state = 1; state < before.length; state++) {
    if ((before[state] as number) > (before[best] as number)) best = state;
  }
  const changed = (before[best] as number) - (isFirst ? 0 : CHANGE_COSTS);
  for (let state = 0; state < before.length; state++) {
    const stays = (before[state] as number) >= changed;
    from[state] = stays ? state : best;
    scores[state] = (stays ? (before[state] as number) : changed) + (votes[state] as number);
  }
}

function stretchesOf(
  from: Int16Array,
  last: Float64Array,
  blocks: number,
  states: number,
  distances: readonly number[],
): readonly Stretch[] {
  let state = last.indexOf(Math.max(...last));
  const stretches: { first: number; end: number; distance: number | null }[] = [];
  for (let block = blocks - 1; block >= 0; block--) {
    const distance = distances[state] ?? null;
    const next = stretches.at(-1);
    if (next && next.distance === distance) next.first = block;
    else stretches.push({ first: block, end: block + 1, distance });
    state = from[block * states + state] as number;
  }
  return stretches.toReversed();
}

/** How much is heard in each block, 0 to 1: a pause says nothing for or against new material. */
function activityOf({ levels }: Landmarks, blocks: number): Float32Array {
  const ordered = Float32Array.from(levels).sort();
  const loud = ordered[Math.floor(ordered.length * 0.9)] ?? 0;
  return Float32Array.from({ length: blocks }, (_, block) => {
    const own = levels.subarray(block * BLOCK, (block + 1) * BLOCK);
    let sum = 0;
    for (const level of own) sum += Math.min(1, Math.max(0, 1 + (level - loud) / QUIET_BELOW));
    return own.length === 0 ? 0 : sum / own.length;
  });
}
