/**
 * Invented lessons in different voices, with the chapters that whoever wrote
 * them meant (tests/chapters/lessons). Each line is a sentence; `== kind |
 * title` begins a chapter, `~ n` is a pause of n seconds, `%` a remark. Times
 * follow from the words: captions of at most ten words, 0.38 s a word.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Chapter, ChapterKind } from '#lib/chapters/chapter.ts';
import type { Span } from '#lib/time/time.ts';
import type { Cue } from '#lib/transcript/cue.ts';

const FOLDER = fileURLToPath(new URL('../chapters/lessons/', import.meta.url));
const WORD_MS = 380;
const BREATH_MS = 250;
const WORDS_A_CUE = 10;

export interface ToldLesson {
  readonly name: string;
  readonly cues: readonly Cue[];
  readonly pauses: readonly Span[];
  readonly chapters: readonly Chapter[];
  readonly durationMs: number;
}

export const toldLessonNames = (): readonly string[] =>
  readdirSync(FOLDER)
    .map((file) => file.replace('.txt', ''))
    .sort();

export function readToldLesson(name: string): ToldLesson {
  const cues: Cue[] = [];
  const pauses: Span[] = [];
  const chapters: Chapter[] = [];
  let atMs = 0;
  for (const line of readFileSync(`${FOLDER}${name}.txt`, 'utf8').split('\n')) {
    if (line === '' || line.startsWith('%')) continue;
    if (line.startsWith('== ')) {
      const [kind = '', title = ''] = line.slice(3).split(' | ');
      chapters.push({ id: `chapter-${chapters.length}`, kind: kind as ChapterKind, title, startMs: atMs });
    } else if (line.startsWith('~ ')) {
      const endMs = atMs + Number(line.slice(2)) * 1_000;
      pauses.push({ startMs: atMs, endMs });
      atMs = endMs;
      // The chapter begins where its first words do.
    } else {
      const words = line.split(' ');
      for (let from = 0; from < words.length; from += WORDS_A_CUE) {
        const some = words.slice(from, from + WORDS_A_CUE);
        const endMs = atMs + some.length * WORD_MS;
        cues.push({ id: `cue-${cues.length}`, startMs: atMs, endMs, text: some.join(' '), settings: '' });
        atMs = endMs;
      }
      atMs += BREATH_MS;
    }
  }
  return { name, cues, pauses, chapters, durationMs: atMs };
}
