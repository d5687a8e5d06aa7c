/** SRT (srt-read.ts) as pieces of a lesson's transcript, in plain words. */

import type { FoundCue } from './found-cue.ts';
import { type Loss, lossOf } from './loss.ts';
import { shownSrtText } from './shown-text.ts';
import { readSrt } from './srt-read.ts';

export function cuesOfSrt(text: string): {
  readonly found: readonly FoundCue[];
  readonly losses: readonly Loss[];
} {
  const file = readSrt(text);
  const losses: Loss[] = [...file.losses];
  const found = file.cues.map((cue): FoundCue => {
    const shown = shownSrtText(cue.text);
    const marking = shown.tags.filter((tag) => tag !== 'place');
    if (marking.length > 0) losses.push(lossOf('formatting', cue.line, marking.join(', ')));
    if (marking.length < shown.tags.length) losses.push(lossOf('place', cue.line, cue.text));
    if (shown.escapes) losses.push(lossOf('escape-taken', cue.line, cue.text));
    return { line: cue.line, startMs: cue.startMs, endMs: cue.endMs, text: shown.text, settings: '' };
  });
  return { found, losses };
}
