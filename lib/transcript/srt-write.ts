/**
 * Writes SRT as players know it: numbers from 1, a comma before milliseconds,
 * a blank line between cues. SRT cannot say a literal `<b>` or an arrow on a
 * line of times; those are written as character references, which our reader
 * and many players take back.
 */
import { type Cue, compareCues } from './cue.ts';
import { isSrtTimes } from './srt-read.ts';
import { tidyCueText } from './tidy-text.ts';
import { formatWebVttTime } from './webvtt-time.ts';

/** An SRT file. A cue without text shows nothing and is left out; settings have no place in SRT. */
export function writeSrt(cues: readonly Cue[]): string {
  return cues
    .toSorted(compareCues)
    .map((cue) => ({ ...cue, text: tidyCueText(cue.text) }))
    .filter((cue) => cue.text !== '')
    .map(
      (cue, index) =>
        `${index + 1}\n${srtTime(cue.startMs)} --> ${srtTime(cue.endMs)}\n${escapeSrtText(cue.text)}\n`,
    )
    .join('\n');
}

const srtTime = (ms: number): string => formatWebVttTime(ms).replace('.', ',');

/** Changes only what a reader would take for something else. */
const escapeSrtText = (text: string): string =>
  text
    .replace(/&(?=(?:amp|lt|gt|quot|apos|nbsp|#\d+|#x[\da-f]+);)/gi, '&amp;')
    .replace(/<(?=\/?(?:b|i|u|s|font)[\s>])/gi, '&lt;')
    .replace(/\{(?=\\|\/?[bius]\})/gi, '&#123;')
    .split('\n')
    .map((line) => (isSrtTimes(line) ? line.replace('-->', '--&gt;') : line))
    .join('\n');
