/**
 * The steps of a lesson in the order in which a pupil takes them: placements
 * in their part of the sequence, and between them the steps that add no rings,
 * put where their moment in the recording lies.
 */
import type { Chapter } from '#lib/chapters/chapter.ts';
import { chapterAt, chaptersInOrder } from '#lib/chapters/chapter-rules.ts';
import type { Span } from '#lib/time/time.ts';
import { type Content, type Placement, SEQUENCE_PARTS } from './content.ts';
import { stillText } from './placement-words.ts';

/** `setup` holds steps that come before the first ring. */
export const PAGE_PARTS = ['setup', ...SEQUENCE_PARTS] as const;
export type PagePart = (typeof PAGE_PARTS)[number];

/** What a part of the page is called. */
export const PART_TITLES: Readonly<Record<PagePart, string>> = {
  setup: 'Setting up',
  start: 'The start',
  repeat: 'The repeat unit',
  finishing: 'Finishing',
};

/** A part's title on a page with these steps: one that says nothing of rings or repeats has no setting up before them. */
export const partTitle = (part: PagePart, steps: readonly Pick<PageStep, 'part'>[]): string =>
  part === 'setup' && steps.every((step) => step.part === 'setup') ? 'The steps' : PART_TITLES[part];

export interface PageStep {
  readonly id: string;
  readonly part: PagePart;
  /** Counted from 1 inside its part. */
  readonly number: number;
  readonly sentence: string;
  readonly atMs: number | null;
  /** Null for a step that adds no rings. */
  readonly placement: Placement | null;
  /** Text alternative of its still: the teacher's, or made from the placement's facts. */
  readonly stillText: string;
}

/** Where a step stands on the page: the id of its element. */
export const stepAnchor = (step: Pick<PageStep, 'part' | 'number'>): string => `${step.part}-${step.number}`;

/**
 * The span of a recording in which a step is taken: from its moment until the
 * next step's, or the next chapter, or the end. Null for a step without a
 * moment, or with one behind the end.
 */
export function stepSpan(
  step: Pick<PageStep, 'atMs'>,
  steps: readonly Pick<PageStep, 'atMs'>[],
  chapters: Content['chapters'],
  durationMs: number,
): Span | null {
  const { atMs } = step;
  if (atMs === null || atMs >= durationMs) return null;
  const later = [...steps.flatMap((other) => other.atMs ?? []), ...chapters.map(({ startMs }) => startMs)];
  return { startMs: atMs, endMs: Math.min(durationMs, ...later.filter((ms) => ms > atMs)) };
}

type Source = Pick<Content, 'start' | 'repeat' | 'finishing' | 'steps' | 'chapters' | 'ringKinds'>;
type Item = Pick<PageStep, 'id' | 'sentence' | 'atMs' | 'placement'> & { readonly pictureText: string };

/** All steps, part by part in order; parts without steps are simply absent. */
export function pageSteps(content: Source): readonly PageStep[] {
  const parts: Record<PagePart, Item[]> = {
    setup: [],
    start: content.start.map(itemOf),
    repeat: content.repeat.map(itemOf),
    finishing: content.finishing.map(itemOf),
  };
  for (const step of content.steps) {
    const part = partOfStep(content, step.atMs);
    const items = parts[part];
    // Before the first ring that is shown later; a ring without a moment stays behind the one it follows.
    const { atMs } = step;
    const later = items.findIndex((item) => item.atMs !== null && atMs !== null && item.atMs > atMs);
    items.splice(later < 0 ? items.length : later, 0, { ...step, placement: null });
  }
  const told = PAGE_PARTS.flatMap((part) => parts[part].map(() => ({ part })));
  return PAGE_PARTS.flatMap((part) =>
    parts[part].map(({ pictureText, ...item }, index) => ({
      ...item,
      part,
      number: index + 1,
      stillText:
        pictureText.trim() ||
        stillText(content, `${partTitle(part, told)}, step ${index + 1}`, item.placement),
    })),
  );
}

const itemOf = (placement: Placement): Item => ({
  id: placement.id,
  sentence: placement.sentence,
  atMs: placement.atMs,
  pictureText: placement.pictureText,
  placement,
});

/** Kinds of chapters that settle it by themselves. */
const PART_OF_CHAPTER: Readonly<Partial<Record<Chapter['kind'], PagePart>>> = {
  'repeat unit': 'repeat',
  finishing: 'finishing',
  clasp: 'finishing',
};

/** A step's part: told by the chapter that its moment lies in, else by the last ring placed or chapter begun before it. */
function partOfStep(content: Source, atMs: number | null): PagePart {
  if (atMs === null) return 'setup';
  const kind = chapterAt(content.chapters, atMs)?.kind;
  if (kind && PART_OF_CHAPTER[kind]) return PART_OF_CHAPTER[kind];
  if (kind === 'setup' || kind === 'materials' || kind === 'terms' || kind === 'opening') {
    const begun = content.start.some((placement) => placement.atMs !== null && placement.atMs <= atMs);
    return begun ? 'start' : 'setup';
  }
  const before = SEQUENCE_PARTS.findLast((part) =>
    content[part].some((placement) => placement.atMs !== null && placement.atMs <= atMs),
  );
  const begun = chaptersInOrder(content.chapters).filter(({ startMs }) => startMs <= atMs);
  return before ?? begun.flatMap(({ kind }) => PART_OF_CHAPTER[kind] ?? []).at(-1) ?? 'setup';
}
