/** Where a chapter's edge may come to rest: at the edges of cues and in the middle of pauses. */
import type { Span } from '#lib/time/time.ts';

/** How near a place must be to draw an edge, ms. About the time of two words. */
export const SNAP_WITHIN_MS = 700;

/** Every place that draws an edge, in order, each once. */
export function snapPlaces(cues: readonly Span[], pauses: readonly Span[]): readonly number[] {
  const places = new Set<number>([0]);
  for (const cue of cues) {
    places.add(cue.startMs);
    places.add(cue.endMs);
  }
  for (const pause of pauses) places.add(Math.round((pause.startMs + pause.endMs) / 2));
  return [...places].sort((a, b) => a - b);
}

/** The nearest place if it is near enough, else the moment itself; the earlier of two as near. */
export function snapMoment(atMs: number, places: readonly number[], withinMs = SNAP_WITHIN_MS): number {
  const at = firstFrom(places, atMs);
  const before = places[at - 1];
  const after = places[at];
  const nearest =
    before !== undefined && (after === undefined || atMs - before <= after - atMs) ? before : after;
  return nearest !== undefined && Math.abs(nearest - atMs) <= withinMs ? nearest : Math.round(atMs);
}

/** The next place in a direction, or null where there is none. */
export function nextPlace(
  atMs: number,
  places: readonly number[],
  direction: 'earlier' | 'later',
): number | null {
  const at = firstFrom(places, atMs);
  if (direction === 'earlier') return places[at - 1] ?? null;
  return places[places[at] === atMs ? at + 1 : at] ?? null;
}

/** Index of the first place at or after a moment. */
function firstFrom(places: readonly number[], atMs: number): number {
  let low = 0;
  let high = places.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((places[middle] ?? 0) < atMs) low = middle + 1;
    else high = middle;
  }
  return low;
}
