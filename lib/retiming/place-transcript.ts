/** A transcript of the old recording, placed on the new one by its sound. */
import { applyChange } from '#lib/lesson/change.ts';
import { emptyContent } from '#lib/lesson/content.ts';
import type { Cue } from '#lib/transcript/cue.ts';
import { carryOver } from './carry-over.ts';
import type { EditList } from './edit-list.ts';
import { retakesIn } from './retakes.ts';

export interface PlacedTranscript {
  readonly cues: readonly Cue[];
  /** How many lay in what was cut. */
  readonly gone: number;
}

/** What was said again keeps its words, spread over the new take. */
export function placeTranscript(cues: readonly Cue[], list: EditList): PlacedTranscript {
  const draft = { content: emptyContent('', 'en', 'EUR'), cues };
  const wordsStay = new Set(retakesIn(list).map(({ cut }) => cut));
  const placed = carryOver(draft, list, { wordsStay }).changes.reduce(applyChange, draft);
  return { cues: placed.cues, gone: cues.length - placed.cues.length };
}
