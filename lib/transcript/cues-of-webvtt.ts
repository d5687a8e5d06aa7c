/** WebVTT, read to the letter (webvtt-read.ts), as pieces of a lesson's transcript. */
import { portableSettings } from './cue-settings.ts';
import type { FoundCue } from './found-cue.ts';
import { type Loss, lossOf } from './loss.ts';
import { shownWebVttText } from './shown-text.ts';
import { readWebVtt, type WebVttCue } from './webvtt-read.ts';
import { writeVoices } from './written-voices.ts';

/** What a WebVTT file says, in plain words, with its speakers' names written out. */
export function cuesOfWebVtt(text: string): {
  readonly found: readonly FoundCue[];
  readonly losses: readonly Loss[];
} {
  const file = readWebVtt(text);
  const losses: Loss[] = [...file.losses];
  for (const style of file.styles) losses.push(lossOf('style', style.line, style.text));
  for (const region of file.regions) losses.push(lossOf('region', region.line, region.id));

  const shown = file.cues.map((cue) => shownWebVttText(cue.text));
  const voices = writeVoices(
    shown.map(({ text: words, voice }, index) => ({ line: file.cues[index]?.line ?? 1, text: words, voice })),
  );
  losses.push(...voices.losses);
  const found = file.cues.map((cue, index): FoundCue => {
    losses.push(...markingLost(cue, shown[index]?.tags ?? []));
    return {
      line: cue.line,
      startMs: cue.startMs,
      endMs: cue.endMs,
      text: voices.texts[index] ?? '',
      settings: cue.written === '' ? '' : portableSettings(cue.written),
    };
  });
  return { found, losses };
}

function markingLost(cue: WebVttCue, tags: readonly string[]): readonly Loss[] {
  const losses: Loss[] = [];
  // Numbers in order say nothing; a name may.
  if (cue.id !== '' && !/^\d+$/.test(cue.id)) losses.push(lossOf('cue-name', cue.line, cue.id));
  if (tags.length > 0) losses.push(lossOf('formatting', cue.line, tags.join(', ')));
  // Listed as written: one that its cue overrules, or that is not described, is lost like the others.
  for (const setting of cue.written.match(/(?<!\S)region:\S+/g) ?? [])
    losses.push(lossOf('setting', cue.line, setting));
  return losses;
}
