/**
 * Writes WebVTT that every reader takes alike (W3C WebVTT, section 4): cues in
 * order of their starts, full times, `&`, `<` and `>` as character references,
 * no blank line inside a cue. The same cues give the same bytes.
 */

import { type Cue, compareCues } from './cue.ts';
import { portableSettings } from './cue-settings.ts';
import { tidyCueText } from './tidy-text.ts';
import { formatWebVttTime } from './webvtt-time.ts';

/** What is written of a cue; ids are left to the file's own order. */
type WrittenCue = Omit<Cue, 'settings'> & { readonly settings?: string };

/** A WebVTT file of captions or chapters. A cue without text shows nothing and is left out. */
export function writeWebVtt(cues: readonly WrittenCue[]): string {
  const blocks = cues
    .map((cue) => ({ settings: '', ...cue }))
    .sort(compareCues)
    .map((cue) => {
      const text = tidyCueText(cue.text);
      const times = `${formatWebVttTime(cue.startMs)} --> ${formatWebVttTime(cue.endMs)}`;
      const settings = portableSettings(cue.settings);
      return text === ''
        ? ''
        : `${settings === '' ? times : `${times} ${settings}`}\n${escapeCueText(text)}\n`;
    });
  return ['WEBVTT\n', ...blocks.filter((block) => block !== '')].join('\n');
}

/** Plain text as cue text; this also breaks every arrow. */
export const escapeCueText = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
