/**
 * What a list of chapters means and must be. Ends are never stored: a chapter
 * ends where the next one starts, so chapters can neither overlap nor leave a
 * gap behind the first.
 */
import type { Chapter } from './chapter.ts';

/** Shortest chapter that the hosts of recordings take, ms. Common practice, from memory. */
export const SHORTEST_CHAPTER_MS = 10_000;

/** A chapter's span `[startMs, endMs)`; the end is null where the recording's length is not known. */
export interface ChapterSpan {
  readonly startMs: number;
  readonly endMs: number | null;
}

/** Chapters in order of time; equal starts keep the order of the list. */
export const chaptersInOrder = (chapters: readonly Chapter[]): readonly Chapter[] =>
  chapters.toSorted((one, other) => one.startMs - other.startMs);

/** The chapter that holds a moment: the last that starts at or before it; null before the first. */
export const chapterAt = (chapters: readonly Chapter[], atMs: number): Chapter | null =>
  chaptersInOrder(chapters).findLast((chapter) => chapter.startMs <= atMs) ?? null;

/** Chapters in order, each with its span; `durationMs` is the recording's length, null where unknown. */
export const chapterSpans = (
  chapters: readonly Chapter[],
  durationMs: number | null,
): readonly (Chapter & ChapterSpan)[] => {
  const ordered = chaptersInOrder(chapters);
  return ordered.map((chapter, index) => ({
    ...chapter,
    endMs:
      ordered[index + 1]?.startMs ?? (durationMs === null ? null : Math.max(durationMs, chapter.startMs)),
  }));
};

export const CHAPTER_FAULTS = [
  /** The first chapter starts later than the recording. */
  'chapter-late-start',
  'chapter-nameless',
  /** Starts where the recording has ended already. */
  'chapter-after-end',
  /** Shorter than hosts take; also one that starts together with the next. */
  'chapter-short',
] as const;
export type ChapterFaultCode = (typeof CHAPTER_FAULTS)[number];

/** What is wrong with a list of chapters, in order of time; every fault, not the first. */
export function chapterFaults(
  chapters: readonly Chapter[],
  durationMs: number | null,
): readonly { readonly code: ChapterFaultCode; readonly chapter: Chapter }[] {
  return chapterSpans(chapters, durationMs).flatMap((chapter, index) => {
    const codes: ChapterFaultCode[] = [];
    const after = durationMs !== null && chapter.startMs >= durationMs;
    if (index === 0 && chapter.startMs !== 0) codes.push('chapter-late-start');
    if (chapter.title.trim() === '') codes.push('chapter-nameless');
    if (after) codes.push('chapter-after-end');
    else if (chapter.endMs !== null && chapter.endMs - chapter.startMs < SHORTEST_CHAPTER_MS)
      codes.push('chapter-short');
    return codes.map((code) => ({ code, chapter }));
  });
}
