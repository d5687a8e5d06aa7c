/**
 * Chapters as a WebVTT file for a `<track kind="chapters">`: one cue a
 * chapter, its title as plain text, since chapters as WebVTT allow no markup
 * tags (W3C WebVTT, section 4). Chapters follow each other without overlap.
 */
import { writeWebVtt } from '#lib/transcript/webvtt-write.ts';
import type { Chapter } from './chapter.ts';
import { chapterSpans } from './chapter-rules.ts';
import { chapterTitle } from './chapters-json.ts';

/**
 * The file. `endMs` is where the last chapter ends; where it lies before that
 * chapter's start (a length that is not known is 0), the chapter gets a second.
 * A chapter without a title goes by its kind; one that starts together with
 * the next has no time of its own and is left out.
 */
export const writeChaptersWebVtt = (chapters: readonly Chapter[], endMs: number): string =>
  writeWebVtt(
    chapterSpans(chapters, null)
      .map((chapter) => ({
        id: chapter.id,
        startMs: chapter.startMs,
        endMs: chapter.endMs ?? Math.max(endMs, chapter.startMs + 1_000),
        text: chapterTitle(chapter),
      }))
      .filter((cue) => cue.endMs > cue.startMs),
  );
