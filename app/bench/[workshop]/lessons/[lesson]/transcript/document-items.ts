/** The transcript as one column: cues in order of time, chapters as headings between them. Pure. */
import type { Chapter } from '#lib/lesson/content.ts';
import type { Cue } from '#lib/transcript/cue.ts';

export type DocumentItem =
  | { readonly kind: 'chapter'; readonly id: string; readonly chapter: Chapter }
  | {
      readonly kind: 'cue';
      readonly id: string;
      readonly cue: Cue;
      /** Silence until the next cue begins, ms; 0 where they touch or overlap, or at the end. */
      readonly pauseMs: number;
    };

/**
 * A chapter stands before the first cue of which the greater part lies in it.
 * Items of cues that did not change are the same objects as in `before`, so
 * that their rows need not be drawn again.
 */
export function documentItems(
  cues: readonly Cue[],
  chapters: readonly Chapter[],
  before: ReadonlyMap<string, DocumentItem> = new Map(),
): readonly DocumentItem[] {
  const items: DocumentItem[] = [];
  const headings = [...chapters].sort((a, b) => a.startMs - b.startMs);
  let next = 0;
  const headingsUntil = (ms: number) => {
    for (let one = headings[next]; one && one.startMs <= ms; one = headings[++next])
      items.push(heading(one, before));
  };
  cues.forEach((cue, at) => {
    headingsUntil((cue.startMs + cue.endMs) / 2);
    const pauseMs = Math.max(0, (cues[at + 1]?.startMs ?? cue.endMs) - cue.endMs);
    const old = before.get(cue.id);
    items.push(
      old?.kind === 'cue' && old.cue === cue && old.pauseMs === pauseMs
        ? old
        : { kind: 'cue', id: cue.id, cue, pauseMs },
    );
  });
  headingsUntil(Number.POSITIVE_INFINITY);
  return items;
}

function heading(chapter: Chapter, before: ReadonlyMap<string, DocumentItem>): DocumentItem {
  const id = `chapter ${chapter.id}`;
  const old = before.get(id);
  return old?.kind === 'chapter' && old.chapter === chapter ? old : { kind: 'chapter', id, chapter };
}

/** Index of the last cue that starts at or before a moment; -1 before the first. */
export function cueIndexAt(cues: readonly Cue[], atMs: number): number {
  let low = 0;
  let high = cues.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((cues[middle]?.startMs ?? 0) <= atMs) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}

/** Height of the ribbon's stretch for a pause, px: longer pauses are longer, within reason. */
export const pauseHeight = (pauseMs: number): number =>
  pauseMs < 100 ? 9 : Math.round(Math.min(44, 11 + pauseMs / 110));
