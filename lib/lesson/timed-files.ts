/** The WebVTT files of a lesson: what is said, and its chapters. The same content gives the same bytes. */

import type { Chapter } from '#lib/chapters/chapter.ts';
import { chapterSpans } from '#lib/chapters/chapter-rules.ts';
import type { Cue } from '#lib/transcript/cue.ts';
import { writeWebVtt } from '#lib/transcript/webvtt-write.ts';
import { plainLine } from './plain-line.ts';

/** Captions as a `.vtt` file. */
export const captionsFile = (cues: readonly Cue[]): string => writeWebVtt(cues);

/**
 * Chapters as a `.vtt` file: plain titles, one after the other, never
 * overlapping. Chapters at or behind the end, or without title, are left out:
 * a reader would refuse them. Without a recording nothing tells where the last
 * one ends; it is given its shortest length.
 */
export const chaptersFile = (chapters: readonly Chapter[], durationMs: number | null): string =>
  writeWebVtt(
    chapterSpans(chapters, durationMs)
      .map(({ id, startMs, endMs, title }) => ({
        id,
        startMs,
        endMs: endMs ?? startMs + 10_000,
        text: plainLine(title),
      }))
      .filter((span) => span.endMs > span.startMs),
  );
