/**
 * What can be done to cues, as the payload of a `cues` change: which cues to
 * put and which to remove. Whatever goes in, what comes out holds to the rules
 * of a cue: it ends after it starts, and no line of it is blank.
 */
import { LONGEST_MS } from '#lib/time/longest-time.ts';
import type { Cue } from './cue.ts';
import { LONGEST_TEXT, partLongText, shareTime, tidyCueText } from './tidy-text.ts';
import { offsetToMs } from './word-times.ts';

export interface CueEdit {
  readonly put: Cue[];
  readonly remove: string[];
}

/** Shortest cue that an edit leaves, ms. */
export const SHORTEST_MS = 50;
/** The cue with another word on how its times came about. */
export function withTiming(cue: Cue, timing: Cue['timing']): Cue {
  const { timing: _, ...rest } = cue;
  return timing === undefined ? rest : { ...rest, timing };
}

const inRange = (ms: number): number => Math.min(Math.max(Math.round(ms), 0), LONGEST_MS);

/**
 * The cue with another text. One that is too long for a cue is parted: the
 * first part stays with the cue, the others become cues behind it.
 */
export function editCue(cue: Cue, typed: string, newId: () => string): CueEdit {
  const text = tidyCueText(typed);
  if (text.length <= LONGEST_TEXT) return { put: [{ ...cue, text }], remove: [] };
  const parts = shareTime(
    partLongText(text).map((part) => ({ text: part })),
    cue,
  );
  return {
    put: parts.map((part, index) => ({ ...cue, ...part, id: index === 0 ? cue.id : newId() })),
    remove: [],
  };
}

/**
 * Parts a cue at a character; the second part is a new cue. It begins at
 * `atMs` where given, else when the character is spoken by the cue's own pace.
 * @returns null where one part would be without words or shorter than 50 ms.
 */
export function splitCue(cue: Cue, offset: number, newId: string, atMs?: number): CueEdit | null {
  const first = tidyCueText(cue.text.slice(0, offset));
  const second = tidyCueText(cue.text.slice(offset));
  const middle = Math.round(atMs ?? offsetToMs(cue, offset));
  const room = cue.endMs - cue.startMs;
  if (first === '' || second === '' || room < 2 * SHORTEST_MS) return null;
  const at = Math.min(Math.max(middle, cue.startMs + SHORTEST_MS), cue.endMs - SHORTEST_MS);
  return {
    put: [
      { ...cue, endMs: at, text: first },
      { ...withTiming(cue, cue.timing && 'approximate'), id: newId, startMs: at, text: second },
    ],
    remove: [],
  };
}

/**
 * One cue from two, from the start of the earlier to the end of the later one.
 * It keeps the first one's id and settings.
 * @returns null where the text would be longer than a cue holds.
 */
export function joinCues(first: Cue, second: Cue): CueEdit | null {
  const text = [first.text, second.text].filter((part) => part !== '').join(' ');
  if (text.length > LONGEST_TEXT) return null;
  return {
    put: [
      {
        ...withTiming(first, first.timing ?? (second.timing && 'start heard')),
        text,
        startMs: Math.min(first.startMs, second.startMs),
        endMs: Math.max(first.endMs, second.endMs),
      },
    ],
    remove: [second.id],
  };
}

/**
 * Moves cues earlier (below 0) or later. All are moved by the same time, so
 * that none is squeezed: less than asked where the first would start before 0.
 */
export function shiftCues(cues: readonly Cue[], byMs: number): CueEdit {
  const earliest = Math.min(...cues.map((cue) => cue.startMs));
  const latest = Math.max(...cues.map((cue) => cue.endMs));
  const by = Math.min(Math.max(Math.round(byMs), -earliest), LONGEST_MS - latest);
  if (cues.length === 0 || by === 0) return { put: [], remove: [] };
  return {
    put: cues.map((cue) => ({ ...cue, startMs: cue.startMs + by, endMs: cue.endMs + by })),
    remove: [],
  };
}

/** The cue with other times; an edge that would pass the other one stops 50 ms before it. */
export function retimeCue(cue: Cue, times: { readonly startMs?: number; readonly endMs?: number }): CueEdit {
  const startMs = Math.min(inRange(times.startMs ?? cue.startMs), LONGEST_MS - SHORTEST_MS);
  const endMs = inRange(times.endMs ?? cue.endMs);
  const moved =
    times.startMs !== undefined && times.endMs === undefined
      ? { startMs: Math.max(0, Math.min(startMs, cue.endMs - SHORTEST_MS)), endMs: cue.endMs }
      : { startMs, endMs: Math.max(endMs, startMs + SHORTEST_MS) };
  // An edge that is set is heard; what is left is a guess still.
  const timing = times.startMs !== undefined && times.endMs === undefined && cue.timing && 'start heard';
  return { put: [{ ...withTiming(cue, timing || undefined), ...moved }], remove: [] };
}

/**
 * A new, empty cue behind another: in the gap before the next one where there
 * is any, at most two seconds; else its first 50 ms or more lie over the next one.
 */
export function cueAfter(cue: Cue | null, next: Cue | null, newId: string): CueEdit {
  const startMs = Math.min(cue?.endMs ?? 0, LONGEST_MS - SHORTEST_MS);
  const room = next ? next.startMs - startMs : 2_000;
  const endMs = Math.min(startMs + Math.min(Math.max(room, SHORTEST_MS), 2_000), LONGEST_MS);
  return { put: [{ id: newId, startMs, endMs, text: '', settings: '' }], remove: [] };
}
