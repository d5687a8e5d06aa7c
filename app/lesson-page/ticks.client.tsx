'use client';

import { useEffect, useRef } from 'react';

/** Leaves the line to the recording first. */
const PICTURES_AFTER_MS = 4_000;

/** Keeps on the device which boxes a pupil ticked; without it they are plain boxes. Has pictures ready for the printer. */
export function Ticks({ placeKey }: { readonly placeKey: string }) {
  const here = useRef<HTMLSpanElement>(null);
  useEffect(() => {
    const article = here.current?.closest('article');
    if (!article) return;
    const boxes = () => [...article.querySelectorAll<HTMLInputElement>('input[data-tick]')];
    try {
      const kept: unknown = JSON.parse(localStorage.getItem(placeKey) ?? '[]');
      const ticked = new Set(Array.isArray(kept) ? kept : []);
      for (const box of boxes()) box.checked = box.checked || ticked.has(box.dataset['tick']);
    } catch {
      // A device that keeps nothing, or kept something else.
    }
    const keep = () => {
      try {
        const ticked = boxes().flatMap((box) => (box.checked ? [box.dataset['tick']] : []));
        localStorage.setItem(placeKey, JSON.stringify(ticked));
      } catch {
        // Private windows may refuse to store.
      }
    };
    article.addEventListener('change', keep);
    return () => article.removeEventListener('change', keep);
  }, [placeKey]);
  useEffect(() => {
    // Pictures that were not yet in the window would be blank on paper. People print from wide windows, mostly.
    const load = () => {
      for (const picture of here.current?.closest('article')?.querySelectorAll('img') ?? [])
        picture.loading = 'eager';
    };
    const wide = window.matchMedia('(min-width: 60rem)').matches ? setTimeout(load, PICTURES_AFTER_MS) : 0;
    window.addEventListener('beforeprint', load);
    return () => {
      clearTimeout(wide);
      window.removeEventListener('beforeprint', load);
    };
  }, []);
  return <span ref={here} hidden />;
}
