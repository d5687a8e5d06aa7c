/** Writes a transcript as plain text to read or to search: each cue a line that begins with its time. */
import { formatTimeCode } from '#lib/time/time-code.ts';
import { type Cue, compareCues } from './cue.ts';
import { tidyCueText } from './tidy-text.ts';

/** `[1:02] words`, a line for each cue, times to the second; cues without words are left out. */
export const writeStampedText = (cues: readonly Cue[]): string =>
  cues
    .toSorted(compareCues)
    .map((cue) => ({ startMs: cue.startMs, text: tidyCueText(cue.text).replaceAll('\n', ' ') }))
    .filter((cue) => cue.text !== '')
    .map((cue) => `[${formatTimeCode(cue.startMs)}] ${cue.text}\n`)
    .join('');
