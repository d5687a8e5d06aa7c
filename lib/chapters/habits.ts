/** How a workshop parts its lessons, from the chapters that its teachers have set. */
import type { Cue } from '#lib/transcript/cue.ts';
import { wordsOf } from './content-words.ts';
import { type Habits, openingsOf } from './openers.ts';
import { sentencesOf } from './sentences.ts';

/** Where a chapter of another lesson begins, and the first cues said in it, in order of time. */
export interface ChapterBeginning {
  readonly cues: readonly Cue[];
  /** Length of the chapter, ms; null for a lesson's last one. */
  readonly lengthMs: number | null;
}

/** Fewer chapters tell no usual length. */
const LENGTHS_FOR_USUAL = 6;

/** Counts openings; the usual length is the median. A lesson's first chapter opens with a greeting and is best left out. */
export function habitsOf(beginnings: readonly ChapterBeginning[]): Habits {
  const openings = new Map<string, number>();
  for (const { cues } of beginnings) {
    const first = sentencesOf(cues)[0];
    for (const opening of first ? openingsOf(wordsOf(first.text)) : [])
      openings.set(opening, (openings.get(opening) ?? 0) + 1);
  }
  const lengths = beginnings.flatMap(({ lengthMs }) => lengthMs ?? []).sort((a, b) => a - b);
  return {
    chapters: beginnings.length,
    openings,
    usualMs: lengths.length < LENGTHS_FOR_USUAL ? null : (lengths[Math.floor(lengths.length / 2)] ?? null),
  };
}
