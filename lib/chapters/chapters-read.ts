/**
 * Reads chapters that were set elsewhere: a WebVTT chapters file, or a list of
 * lines such as `0:00 Opening` as it stands under many recordings.
 */
import { cuesOfStampedText } from '#lib/transcript/cues-of-stamped-text.ts';
import { cuesOfWebVtt } from '#lib/transcript/cues-of-webvtt.ts';
import { type Loss, lossOf } from '#lib/transcript/loss.ts';
import { takeCues } from '#lib/transcript/take-cues.ts';
import { isWebVtt } from '#lib/transcript/webvtt-read.ts';
import { CHAPTER_KINDS, type Chapter, type ChapterKind } from './chapter.ts';

const LONGEST_TITLE = 300;

/**
 * The chapters of a text in order of time, and what could not be read. A kind
 * is taken from a title that names one; else the first chapter is the opening
 * and the others are setup, for the teacher to change.
 */
export function readChapters(
  text: string,
  newId: () => string,
): { readonly chapters: readonly Chapter[]; readonly losses: readonly Loss[] } {
  const read = isWebVtt(text) ? cuesOfWebVtt(text) : cuesOfStampedText(text, null);
  const taken = takeCues(read.found, newId);
  const losses = [...read.losses, ...taken.losses];
  const chapters = taken.cues.map(({ id, startMs, text: said }, index): Chapter => {
    const title = said.replace(/\s+/g, ' ').trim();
    if (title.length > LONGEST_TITLE) losses.push(lossOf('long-cue-parted', 1, title));
    return { id, startMs, title: title.slice(0, LONGEST_TITLE), kind: kindOf(title, index === 0) };
  });
  return { chapters, losses: losses.sort((a, b) => a.line - b.line) };
}

function kindOf(title: string, first: boolean): ChapterKind {
  const words = title.toLowerCase();
  return CHAPTER_KINDS.find((kind) => words.includes(kind)) ?? (first ? 'opening' : 'setup');
}
