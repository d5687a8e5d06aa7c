/** Landmarks that two recordings share, and the distances in time at which many of them lie. */
import { KEYS, type Landmarks } from './landmarks.ts';

/** Landmarks by what they say. */
export interface LandmarkIndex {
  /** Where the places of a key begin; those of `key` end where those of `key + 1` begin. */
  readonly heads: Uint32Array;
  /** Frames, key by key. */
  readonly places: Uint32Array;
}

/** What is said more often than this in an hour says nothing about where one is: a hum, a beep. */
const MOST_AN_HOUR = 60;
const FRAMES_AN_HOUR = 225_000;

export function indexLandmarks({ count, keys, frames, length }: Landmarks): LandmarkIndex {
  const heads = new Uint32Array(KEYS + 1);
  for (let k = 0; k < count; k++)
    heads[(keys[k] as number) + 1] = (heads[(keys[k] as number) + 1] as number) + 1;
  const most = MOST_AN_HOUR * Math.max(1, length / FRAMES_AN_HOUR);
  let sum = 0;
  const isTooCommon = new Uint8Array(KEYS);
  for (let key = 0; key < KEYS; key++) {
    const own = heads[key + 1] as number;
    if (own > most) isTooCommon[key] = 1;
    else sum += own;
    heads[key + 1] = sum;
  }
  const places = new Uint32Array(sum);
  const next = heads.slice(0, KEYS);
  for (let k = 0; k < count; k++) {
    const key = keys[k] as number;
    if (isTooCommon[key]) continue;
    const place = next[key] as number;
    places[place] = frames[k] as number;
    next[key] = place + 1;
  }
  return { heads, places };
}

/**
 * Calls `found` with each landmark of `heard` from `first` up to `end` (places
 * in its arrays) that the index knows, and the frame where it knows it. The
 * time between two peaks may differ by a frame: frames of two recordings seldom
 * begin at the same sample.
 */
export function eachMatch(
  heard: Landmarks,
  first: number,
  end: number,
  { heads, places }: LandmarkIndex,
  found: (frame: number, indexedFrame: number) => void,
): void {
  for (let k = first; k < end; k++) {
    const key = heard.keys[k] as number;
    const frame = heard.frames[k] as number;
    const wait = key & 63;
    const from = heads[wait > 1 ? key - 1 : key] as number;
    const to = heads[(wait < 63 ? key + 1 : key) + 1] as number;
    // Keys that differ by one in the time between their peaks are neighbours.
    for (let place = from; place < to; place++) found(frame, places[place] as number);
  }
}

/** The first place in `landmarks` whose frame is at or after `frame`. */
export function placeOfFrame({ frames, count }: Landmarks, frame: number): number {
  let low = 0;
  let high = count;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((frames[middle] as number) < frame) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Frames from one look for distances to the next, 2.5 s; each look is at two such. */
const LOOK_STEP = 156;
/** Distances taken from one look, and matches that one needs. */
const BEST_OF_LOOK = 4;
const FEWEST_MATCHES = 9;
/** Most distances that are gone on with. */
const MOST_DISTANCES = 400;
/** Distances are counted together with those so many frames away. */
export const NEAR = 1;

/**
 * Distances (frame of the old recording less frame of the new one) at which
 * at some moment many landmarks agree, the commonest first. Yields how much is
 * done, 0 to 1.
 */
export function* findDistances(
  heard: Landmarks,
  old: Landmarks,
  index: LandmarkIndex,
): Generator<number, readonly number[]> {
  const shift = heard.length;
  const counts = new Uint16Array(heard.length + old.length + 3);
  const totals = new Map<number, number>();
  let before: number[] = [];
  for (let start = 0; start < heard.length; start += LOOK_STEP) {
    if (start % (LOOK_STEP * 16) === 0) yield start / heard.length;
    const now: number[] = [];
    const end = placeOfFrame(heard, start + LOOK_STEP);
    eachMatch(heard, placeOfFrame(heard, start), end, index, (frame, oldFrame) => {
      const at = oldFrame - frame + shift;
      now.push(at);
      counts[at] = (counts[at] as number) + 1;
    });
    for (const [at, votes] of highest(counts, before, now)) {
      totals.set(at - shift, (totals.get(at - shift) ?? 0) + votes);
    }
    for (const at of before) counts[at] = (counts[at] as number) - 1;
    before = now;
  }
  return apart([...totals].toSorted((one, other) => other[1] - one[1] || one[0] - other[0])).slice(
    0,
    MOST_DISTANCES,
  );
}

function highest(
  counts: Uint16Array,
  ...lists: readonly (readonly number[])[]
): readonly (readonly [number, number])[] {
  const found = new Map<number, number>();
  const pooled = (at: number): number =>
    at < 1 ? 0 : (counts[at - 1] as number) + (counts[at] as number) + (counts[at + 1] as number);
  for (const list of lists) {
    for (const at of list) {
      // Most distances are hit once, by chance: look no further at those.
      if ((counts[at] as number) < FEWEST_MATCHES / 3 || found.has(at)) continue;
      const votes = pooled(at);
      if (votes >= FEWEST_MATCHES && votes >= pooled(at - 1) && votes >= pooled(at + 1)) found.set(at, votes);
    }
  }
  return [...found].toSorted((one, other) => other[1] - one[1]).slice(0, BEST_OF_LOOK);
}

/** Without those that are neighbours of a commoner one. */
function apart(ordered: readonly (readonly [number, number])[]): readonly number[] {
  const taken = new Set<number>();
  const kept: number[] = [];
  for (const [distance] of ordered) {
    if (taken.has(distance)) continue;
    kept.push(distance);
    for (let near = -2 * NEAR; near <= 2 * NEAR; near++) taken.add(distance + near);
  }
  return kept;
}
