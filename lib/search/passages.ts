/** Passages in which all that is sought stands together, from single lines in which some of it was found. */
import type { Sought } from './sought.ts';
import { termsOf } from './sought.ts';

/** A line of a lesson in which at least one term was found. */
export interface FoundLine {
  readonly lessonId: string;
  readonly kind: 'chapter' | 'cue';
  /** Id of the chapter or cue; empty where it has none. */
  readonly id: string;
  readonly startMs: number;
  readonly endMs: number;
  readonly text: string;
  /** Indexes into the terms that were found here. */
  readonly hits: readonly number[];
}

export interface Passage {
  readonly kind: 'chapter' | 'cue';
  /** Of its first line. */
  readonly id: string;
  /** When its first found word's line begins. */
  readonly startMs: number;
  readonly text: string;
}

export interface LessonPassages {
  readonly lessonId: string;
  /** In order of time, chapters' titles before what is said in the same second. */
  readonly passages: readonly Passage[];
}

/** Lines that are further apart than this belong to different passages, ms. */
const WITHIN_MS = 20_000;
/** Between two lines that follow each other lies no more than this, ms. */
const BREATH_MS = 500;

/**
 * The passages of each lesson; lessons with the most of them come first.
 * `needed` are the indexes of terms that can be found at all: words such as
 * `the` cannot, and ask for nothing.
 */
export function passagesOf(
  lines: readonly FoundLine[],
  sought: Sought,
  needed: readonly number[],
): readonly LessonPassages[] {
  if (needed.length === 0) return [];
  const lessons = new Map<string, FoundLine[]>();
  for (const line of lines) {
    const known = lessons.get(line.lessonId);
    if (known) known.push(line);
    else lessons.set(line.lessonId, [line]);
  }
  return [...lessons]
    .map(([lessonId, found]) => ({ lessonId, passages: passagesIn(found, sought, needed) }))
    .filter(({ passages }) => passages.length > 0)
    .sort((a, b) => b.passages.length - a.passages.length || (a.lessonId < b.lessonId ? -1 : 1));
}

function passagesIn(
  found: readonly FoundLine[],
  sought: Sought,
  needed: readonly number[],
): readonly Passage[] {
  const titles = found
    .filter(({ kind }) => kind === 'chapter')
    .flatMap((line) => passageFrom([line], sought, needed));
  const cues = found.filter(({ kind }) => kind === 'cue').toSorted((a, b) => a.startMs - b.startMs);
  const said: Passage[] = [];
  let from = 0;
  while (from < cues.length) {
    const window = shortestWindow(cues, from, needed);
    const passage = window === null ? [] : passageFrom(cues.slice(from, window + 1), sought, needed);
    said.push(...passage);
    // Lines of a passage that was found are not found again.
    from = passage.length > 0 && window !== null ? window + 1 : from + 1;
  }
  return [...titles, ...said].sort(
    (a, b) => a.startMs - b.startMs || (a.kind === b.kind ? 0 : a.kind === 'chapter' ? -1 : 1),
  );
}

/** Index of the line by which all that is needed was said, from this line on; null where it takes too long. */
function shortestWindow(cues: readonly FoundLine[], from: number, needed: readonly number[]): number | null {
  const startMs = cues[from]?.startMs ?? 0;
  const missing = new Set(needed);
  for (let to = from; to < cues.length; to++) {
    const cue = cues[to];
    if (!cue || cue.startMs - startMs > WITHIN_MS) return null;
    for (const hit of cue.hits) missing.delete(hit);
    if (missing.size === 0) return to;
  }
  return null;
}

function passageFrom(
  lines: readonly FoundLine[],
  sought: Sought,
  needed: readonly number[],
): readonly Passage[] {
  const [first] = lines;
  if (!first) return [];
  const hits = new Set(lines.flatMap((line) => line.hits));
  const text = textOf(lines);
  if (!needed.every((term) => hits.has(term)) || !sought.phrases.every((phrase) => says(text, phrase)))
    return [];
  return [{ kind: first.kind, id: first.id, startMs: first.startMs, text }];
}

/** The lines in one; what may have been left out between them is shown as such. */
const textOf = (lines: readonly FoundLine[]): string =>
  lines
    .map((line, index) => {
      const before = lines[index - 1];
      return `${before && line.startMs - before.endMs > BREATH_MS ? '… ' : ''}${line.text.replace(/\s+/g, ' ').trim()}`;
    })
    .join(' ');

const says = (text: string, phrase: readonly string[]): boolean =>
  ` ${termsOf(text).join(' ')} `.includes(` ${phrase.join(' ')} `);
