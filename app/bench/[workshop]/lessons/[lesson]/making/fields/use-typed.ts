/**
 * A field whose text has to be understood before it can be taken. What is
 * understood goes into the draft at once; what is not stays in the field, and
 * in this window's storage, until it is: nothing typed is lost by a reload.
 */
import { useRef, useState } from 'react';
import type { Result } from '#lib/result.ts';

/** A field's place: under it unread text is kept. Say it so that no two fields share one. */
const keyOf = (place: string): string => `benchleaf.unread/${place}`;

function kept(place: string): string | null {
  try {
    return sessionStorage.getItem(keyOf(place));
  } catch {
    return null;
  }
}

function keep(place: string, text: string | null): void {
  try {
    if (text === null) sessionStorage.removeItem(keyOf(place));
    else sessionStorage.setItem(keyOf(place), text);
  } catch {
    // Without storage the text still stands in the field.
  }
}

export interface Typed<F> {
  readonly text: string;
  /** Why what stands there could not be taken; null where it was. */
  readonly fault: F | null;
  readonly onChange: (text: string) => void;
  readonly onFocus: () => void;
  readonly onBlur: () => void;
  /** Puts the draft's own value back in place of what was typed. */
  readonly settle: () => void;
}

/** @param take gets what was read, and a name for this stay in the field, so that undo takes it back at once. */
export function useTyped<T, F>(options: {
  readonly place: string;
  readonly shown: string;
  readonly read: (text: string) => Result<T, F>;
  readonly take: (value: T, run: string) => void;
}): Typed<F> {
  const { place, shown, read, take } = options;
  const [typed, setTyped] = useState<string | null>(() => kept(place));
  const run = useRef('');
  const reading = typed === null ? null : read(typed);
  const settle = () => {
    setTyped(null);
    keep(place, null);
  };
  return {
    text: typed ?? shown,
    fault: reading && !reading.ok ? reading.fault : null,
    onChange(text) {
      setTyped(text);
      const now = read(text);
      keep(place, now.ok ? null : text);
      if (now.ok) take(now.value, run.current);
    },
    onFocus() {
      run.current = crypto.randomUUID();
    },
    onBlur() {
      // What was never touched, or was taken, shows as the draft writes it.
      if (typed === null || typed === shown || read(typed).ok) settle();
    },
    settle,
  };
}
