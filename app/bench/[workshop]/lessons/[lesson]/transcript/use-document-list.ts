/**
 * The rows of the document that are near the window: which there are, where
 * each lies, and how one is brought into view.
 */
import { defaultRangeExtractor, useWindowVirtualizer } from '@tanstack/react-virtual';
import { useCallback, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import type { Chapter } from '#lib/lesson/content.ts';
import type { Cue } from '#lib/transcript/cue.ts';
import { type DocumentItem, documentItems, pauseHeight } from './document-items.ts';

const LINE_PX = 28.5;
const LETTER_PX = 8.4;
const CHAPTER_PX = 138;

/** @param activeId the item that is always there, wherever the window is, so that the keyboard's place is never lost. */
export function useDocumentList(
  list: React.RefObject<HTMLElement | null>,
  {
    cues,
    chapters,
    activeId,
    coveredTop,
  }: {
    readonly cues: readonly Cue[];
    readonly chapters: readonly Chapter[];
    readonly activeId: string | null;
    /** Height of what lies over the window's top, px. */
    readonly coveredTop: () => number;
  },
) {
  const former = useRef<ReadonlyMap<string, DocumentItem>>(new Map());
  const items = useMemo(() => documentItems(cues, chapters, former.current), [cues, chapters]);
  const indexById = useMemo(() => new Map(items.map((item, at) => [item.id, at])), [items]);
  useEffect(() => {
    former.current = new Map(items.map((item) => [item.id, item]));
  }, [items]);

  const { margin, letters } = useListPlace(list);
  const activeIndex = activeId === null ? -1 : (indexById.get(activeId) ?? -1);
  const virtualizer = useWindowVirtualizer({
    count: items.length,
    estimateSize: (at) => estimate(items[at], letters),
    getItemKey: (at) => items[at]?.id ?? at,
    overscan: 6,
    scrollMargin: margin,
    scrollPaddingStart: 0,
    rangeExtractor: (range) => {
      const indexes = defaultRangeExtractor(range);
      return activeIndex >= 0 && !indexes.includes(activeIndex)
        ? [...indexes, activeIndex].sort((a, b) => a - b)
        : indexes;
    },
  });

  /** `near`: moves only where the row is out of sight. `middle`: always. */
  const scrollTo = useCallback(
    (at: number, place: 'near' | 'middle') => {
      let last: number | null = null;
      const go = (triesLeft: number) => {
        const { start, size: height = LINE_PX } = virtualizer.measurementsCache[at] ?? {};
        if (start === undefined || start === last) return;
        const top = coveredTop() + 12;
        const room = window.innerHeight - top;
        const [seenFrom, seenTo] = [window.scrollY + top, window.scrollY + window.innerHeight - 12];
        if (place === 'near' && start >= seenFrom && start + Math.min(height, room) <= seenTo) return;
        window.scrollTo({ top: start - top - Math.max(0, (room - height) / 3) });
        last = start;
        // Rows about it are measured only now that they are near, and may push it elsewhere.
        if (triesLeft > 0) requestAnimationFrame(() => requestAnimationFrame(() => go(triesLeft - 1)));
      };
      go(5);
    },
    [virtualizer, coveredTop],
  );

  return { items, indexById, virtualizer, margin, scrollTo };
}

/** Height of a row before it has been measured, px. */
function estimate(item: DocumentItem | undefined, letters: number): number {
  if (item?.kind !== 'cue') return CHAPTER_PX;
  const lines = Math.max(1, Math.ceil(item.cue.text.length / letters));
  return lines * LINE_PX + pauseHeight(item.pauseMs);
}

/** Where the list begins in the page, and about how many letters fit into its line. */
function useListPlace(list: React.RefObject<HTMLElement | null>) {
  const [place, setPlace] = useState({ margin: 0, letters: 66 });
  useLayoutEffect(() => {
    const look = () => {
      const box = list.current?.getBoundingClientRect();
      if (!box) return;
      const margin = Math.round(box.top + window.scrollY);
      const letters = Math.max(20, Math.floor((Math.min(box.width, 700) - 130) / LETTER_PX));
      setPlace((now) => (now.margin === margin && now.letters === letters ? now : { margin, letters }));
    };
    look();
    const observer = new ResizeObserver(look);
    observer.observe(document.body);
    return () => observer.disconnect();
  }, [list]);
  return place;
}
