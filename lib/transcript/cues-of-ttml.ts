/** TTML (ttml-read.ts) as pieces of a lesson's transcript. */
import type { FoundCue } from './found-cue.ts';
import { type Loss, lossOf } from './loss.ts';
import { readTtml, type TtmlCue } from './ttml-read.ts';
import { writeVoices } from './written-voices.ts';

/**
 * What a TTML file says. Words of one paragraph that come one after another
 * and stay are said once, in one cue; the times of the single words are listed.
 */
export function cuesOfTtml(
  text: string,
  recordingMs: number | null,
): { readonly found: readonly FoundCue[]; readonly losses: readonly Loss[] } {
  const file = readTtml(text, recordingMs);
  const losses: Loss[] = [...file.losses];
  const whole: TtmlCue[] = [];
  for (const cue of file.cues) {
    const before = whole.at(-1);
    if (before && before.line === cue.line && before.endMs === cue.startMs && grows(before.text, cue.text)) {
      whole[whole.length - 1] = { ...before, endMs: cue.endMs, text: cue.text };
      losses.push(lossOf('word-times', cue.line, cue.text.slice(before.text.length).trim()));
    } else whole.push(cue);
  }
  const voices = writeVoices(whole);
  const found = whole.map(({ line, startMs, endMs }, index) => ({
    line,
    startMs,
    endMs,
    text: voices.texts[index] ?? '',
    settings: '',
  }));
  return { found, losses: [...losses, ...voices.losses] };
}

const grows = (before: string, after: string): boolean =>
  after.length > before.length && after.startsWith(before);
