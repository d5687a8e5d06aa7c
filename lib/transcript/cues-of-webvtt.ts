/** WebVTT, read to the letter (webvtt-read.ts), as pieces of a lesson's transcript. */
import { portableSettings } from './cue-settings.ts';
import { type Loss, lossOf } from './loss.ts';
import { type ShownText, shownWebVttText } from './shown-text.ts';
import type { FoundCue } from './take-cues.ts';
import { readWebVtt, type WebVttCue } from './webvtt-read.ts';

/**
 * What a WebVTT file says, in plain words. Where several voices speak, a cue
 * begins with the speaker's name and a colon whenever the voice changes; where
 * one speaks throughout, the name would be noise and is left out.
 */
export function cuesOfWebVtt(text: string): {
  readonly found: readonly FoundCue[];
  readonly losses: readonly Loss[];
} {
  const file = readWebVtt(text);
  const losses: Loss[] = [...file.losses];
  for (const style of file.styles) losses.push(lossOf('style', style.line, style.text));
  for (const region of file.regions) losses.push(lossOf('region', region.line, region.id));

  const shown = file.cues.map((cue) => shownWebVttText(cue.text));
  const severalVoices = new Set(shown.map((one) => one.voice).filter(Boolean)).size > 1;
  let speaker = '';
  const found = file.cues.map((cue, index): FoundCue => {
    const said = shown[index] ?? { text: cue.text, tags: [], voice: '' };
    losses.push(...markingLost(cue, said, severalVoices));
    const changes = severalVoices && said.voice !== '' && said.voice !== speaker;
    speaker = said.voice || speaker;
    return {
      line: cue.line,
      startMs: cue.startMs,
      endMs: cue.endMs,
      text: changes ? `${said.voice}: ${said.text}` : said.text,
      settings: cue.written === '' ? '' : portableSettings(cue.written),
    };
  });
  return { found, losses };
}

function markingLost(cue: WebVttCue, said: ShownText, severalVoices: boolean): readonly Loss[] {
  const losses: Loss[] = [];
  // Numbers in order say nothing; a name may.
  if (cue.id !== '' && !/^\d+$/.test(cue.id)) losses.push(lossOf('cue-name', cue.line, cue.id));
  if (said.tags.length > 0) losses.push(lossOf('formatting', cue.line, said.tags.join(', ')));
  if (said.voice !== '')
    losses.push(lossOf(severalVoices ? 'voice-written-out' : 'voice', cue.line, said.voice));
  // Listed as written: one that its cue overrules, or that is not described, is lost like the others.
  for (const setting of cue.written.match(/(?<!\S)region:\S+/g) ?? [])
    losses.push(lossOf('setting', cue.line, setting));
  return losses;
}
