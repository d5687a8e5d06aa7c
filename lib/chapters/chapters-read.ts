/**
 * Reads chapters that were set elsewhere: WebVTT, JSON chapters, ffmetadata
 * (how ffmpeg tells the chapters inside a media file), or a list of lines such
 * as `0:00 Opening`. Which it is, the text tells.
 */
import { LONGEST_MS } from '#lib/time/longest-time.ts';
import { cuesOfWebVtt } from '#lib/transcript/cues-of-webvtt.ts';
import { type Loss, lossOf } from '#lib/transcript/loss.ts';
import { isWebVtt } from '#lib/transcript/webvtt-read.ts';
import { CHAPTER_KINDS, type Chapter, type ChapterKind } from './chapter.ts';
import { readChapterLines } from './chapter-lines.ts';
import { isJson, readChaptersJson } from './chapters-json.ts';
import { isFfmetadata, readFfmetadata } from './ffmetadata.ts';
import type { FoundChapter } from './found-chapter.ts';

const LONGEST_TITLE = 300;
/** Most chapters that a lesson holds (lib/lesson/content.ts). */
const MOST_CHAPTERS = 500;
/** An end that is nearer to the next start than this says nothing of its own, ms. */
const SAME_MS = 50;

/**
 * The chapters of a text in order of time, and what could not be read. A kind
 * is taken from a title that names one; else the first chapter is the opening
 * and the others are setup, for the teacher to change. Never throws.
 */
export function readChapters(
  text: string,
  newId: () => string,
): { readonly chapters: readonly Chapter[]; readonly losses: readonly Loss[] } {
  const read = readFormat(text);
  const losses: Loss[] = [...read.losses];
  const inReach = read.found.filter(({ startMs, line, title }) => {
    const reached = startMs >= 0 && startMs <= LONGEST_MS;
    if (!reached) losses.push(lossOf(startMs < 0 ? 'time-negative' : 'time-too-late', line, title));
    return reached;
  });
  const ordered = inReach.toSorted((a, b) => a.startMs - b.startMs);
  ordered.slice(MOST_CHAPTERS).forEach(({ line, title }) => {
    losses.push(lossOf('chapter-too-many', line, title));
  });
  losses.push(...orderLosses(inReach), ...endLosses(ordered));
  const chapters = ordered.slice(0, MOST_CHAPTERS).map(({ line, startMs, title: said }, index): Chapter => {
    const title = said.replace(/[\s\0]+/g, ' ').trim();
    if (title.length > LONGEST_TITLE) losses.push(lossOf('title-cut', line, title.slice(LONGEST_TITLE)));
    return { id: newId(), startMs, title: cutTitle(title), kind: kindOf(title, index === 0) };
  });
  return { chapters, losses: losses.sort((a, b) => a.line - b.line) };
}

function readFormat(text: string): {
  readonly found: readonly FoundChapter[];
  readonly losses: readonly Loss[];
} {
  if (isWebVtt(text)) {
    const { found, losses } = cuesOfWebVtt(text);
    return { found: found.map((cue) => ({ ...cue, title: cue.text })), losses };
  }
  if (isFfmetadata(text)) return readFfmetadata(text);
  return isJson(text) ? readChaptersJson(text) : readChapterLines(text);
}

function orderLosses(found: readonly FoundChapter[]): readonly Loss[] {
  let latest = 0;
  return found.flatMap(({ line, startMs, title }) => {
    const late = startMs < latest;
    latest = Math.max(latest, startMs);
    return late ? [lossOf('out-of-order', line, title)] : [];
  });
}

/** Ends that are not the next one's start; a lesson's chapters follow each other without a gap. */
const endLosses = (ordered: readonly FoundChapter[]): readonly Loss[] =>
  ordered.flatMap(({ line, endMs, title }, index) => {
    const next = ordered[index + 1];
    const says = next && endMs !== null && Math.abs(endMs - next.startMs) > SAME_MS;
    return says ? [lossOf('chapter-end', line, title)] : [];
  });

/** A title as a lesson holds it; a pair of surrogates is not cut in two. */
const cutTitle = (title: string): string =>
  title.slice(0, LONGEST_TITLE - (/[\uD800-\uDBFF]/.test(title.charAt(LONGEST_TITLE - 1)) ? 1 : 0));

function kindOf(title: string, first: boolean): ChapterKind {
  const words = title.toLowerCase();
  return CHAPTER_KINDS.find((kind) => words.includes(kind)) ?? (first ? 'opening' : 'setup');
}
