'use client';

import { type RefObject, useEffect, useState } from 'react';
import { readFragment } from '#lib/time/media-fragment.ts';

/** Where a pupil followed a time from, to lead her back. */
export interface CameFrom {
  readonly id: string;
  readonly name: string;
}

/** Lets every link with a moment on the page play from there, and brings the player into view. */
export function useMomentLinks(
  player: RefObject<HTMLElement | null>,
  playFrom: (atMs: number, untilMs?: number | null) => void,
): CameFrom | null {
  const [cameFrom, setCameFrom] = useState<CameFrom | null>(null);
  useEffect(() => {
    const follow = (event: MouseEvent) => {
      if (event.defaultPrevented || event.button !== 0 || event.ctrlKey || event.metaKey || event.shiftKey)
        return;
      const link = event.target instanceof Element ? event.target.closest('a[data-at]') : null;
      if (!(link instanceof HTMLAnchorElement)) return;
      event.preventDefault();
      const { at, from, fromName } = link.dataset;
      playFrom(Number(at));
      setCameFrom(from && fromName ? { id: from, name: fromName } : null);
      const box = player.current?.getBoundingClientRect();
      if (box && (box.top < 0 || box.top > window.innerHeight / 2)) player.current?.scrollIntoView();
    };
    document.addEventListener('click', follow);
    const named = readFragment(window.location.hash);
    if (named) playFrom(named.startMs, named.endMs);
    return () => document.removeEventListener('click', follow);
  }, [player, playFrom]);
  return cameFrom;
}
