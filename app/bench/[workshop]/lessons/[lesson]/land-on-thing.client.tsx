'use client';
/**
 * Other screens lead to a thing of a stage by its id in the address. Here the
 * keyboard follows: what encloses the thing is opened, and its field, or the
 * first one in it, gets the focus as soon as it is there.
 */
import { usePathname } from 'next/navigation';
import { useEffect } from 'react';

/** A list that comes from the server is there within this time, or the teacher has gone on. */
const PATIENCE_MS = 3_000;
const FIELDS = 'input, select, textarea, button, summary, a[href]';

export function LandOnThing() {
  const path = usePathname();
  // biome-ignore lint/correctness/useExhaustiveDependencies: each stage is landed on anew
  useEffect(() => {
    let stop: (() => void) | null = null;
    const land = () => {
      stop?.();
      stop = landOn(thingInAddress());
    };
    land();
    window.addEventListener('hashchange', land);
    return () => {
      window.removeEventListener('hashchange', land);
      stop?.();
    };
  }, [path]);
  return null;
}

/** The id that the address names after its `#`, or an empty text. */
export function thingInAddress(): string {
  try {
    return decodeURIComponent(window.location.hash.slice(1));
  } catch {
    return '';
  }
}

/** @returns what ends the waiting. */
function landOn(id: string): () => void {
  if (id === '') return () => {};
  const before = document.activeElement;
  const from = performance.now();
  let frame = 0;
  const look = () => {
    // Whoever has gone on by themselves is not called back.
    const now = document.activeElement;
    if (now !== before && now !== document.body) return;
    const field = fieldOf(document.getElementById(id));
    if (field) {
      for (let at = field.closest('details'); at; at = at.parentElement?.closest('details') ?? null)
        at.open = true;
      field.focus({ preventScroll: true });
      field.scrollIntoView({ block: 'center' });
    } else if (performance.now() - from < PATIENCE_MS) frame = requestAnimationFrame(look);
  };
  frame = requestAnimationFrame(look);
  return () => cancelAnimationFrame(frame);
}

function fieldOf(thing: HTMLElement | null): HTMLElement | null {
  if (!thing) return null;
  return thing.matches(FIELDS) ? thing : thing.querySelector<HTMLElement>(FIELDS);
}
