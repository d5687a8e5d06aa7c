/** Finds words in a transcript and puts others in their place. */
import type { Cue } from './cue.ts';
import { type CueEdit, editCue } from './edit-cues.ts';

/** One place where the words stand; offsets are those of the cue's text. */
export interface Found {
  readonly cueId: string;
  readonly start: number;
  readonly end: number;
}

/**
 * Every place where the words stand, in order, large and small letters alike
 * unless `exact`. A space finds a line break too. Words are taken as they are
 * typed: nothing in them is a pattern. Empty words are found nowhere.
 */
export function findText(cues: readonly Cue[], words: string, exact = false): readonly Found[] {
  const pattern = patternOf(words, exact);
  if (!pattern) return [];
  return cues.flatMap((cue) =>
    [...cue.text.matchAll(pattern)].map((match) => ({
      cueId: cue.id,
      start: match.index,
      end: match.index + match[0].length,
    })),
  );
}

/** The cues with `instead` in the places found; one put for each cue, however many places it has, unless it grows too long for one. */
export function replaceFound(
  cues: readonly Cue[],
  found: readonly Found[],
  instead: string,
  newId: () => string,
): CueEdit {
  const places = new Map<string, Found[]>();
  for (const one of found) places.set(one.cueId, [...(places.get(one.cueId) ?? []), one]);
  return {
    put: cues.flatMap((cue) => {
      const here = places.get(cue.id);
      return here ? editCue(cue, replaceIn(cue.text, here, instead), newId).put : [];
    }),
    remove: [],
  };
}

/** From the last to the first, so that earlier offsets stay right. */
const replaceIn = (text: string, places: readonly Found[], instead: string): string =>
  [...places]
    .sort((a, b) => b.start - a.start)
    .reduce((now, { start, end }) => now.slice(0, start) + instead + now.slice(end), text);

function patternOf(words: string, exact: boolean): RegExp | null {
  const parts = words.trim().split(/\s+/);
  if (parts[0] === '') return null;
  return new RegExp(
    parts.map((part) => part.replace(/[\\^$.*+?()[\]{}|/]/g, '\\$&')).join('\\s+'),
    exact ? 'gu' : 'giu',
  );
}
