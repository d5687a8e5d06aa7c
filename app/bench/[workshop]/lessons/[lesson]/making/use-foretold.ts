'use client';
/** What a piece's rings foretell, a moment after they changed; from a worker of this screen. */
import { useEffect, useRef, useState } from 'react';
import { type Pictured, shapeKey } from '#lib/lesson/pictured.ts';
import type { Asked, Told } from './foretell.worker.ts';

/** Asks one thing at a time: of what is asked meanwhile only the last is asked. */
class Asker {
  private readonly worker: Worker;
  private isAsked = false;
  private next: Asked | null = null;

  constructor(onTold: (told: Told) => void, onRefused: () => void) {
    this.worker = new Worker(new URL('./foretell.worker.ts', import.meta.url), { type: 'module' });
    this.worker.onmessage = ({ data }: MessageEvent<Told>) => {
      this.isAsked = false;
      if (this.next) this.ask(this.next);
      else onTold(data);
    };
    this.worker.onerror = onRefused;
  }

  ask(asked: Asked): void {
    this.next = this.isAsked ? asked : null;
    if (this.isAsked) return;
    this.isAsked = true;
    this.worker.postMessage(asked);
  }

  end(): void {
    this.worker.terminate();
  }
}

/** Null until it is told, and where the browser gives no worker: the server's answer stands in, a little later. */
export function useForetold(making: Pictured): Told | null {
  const asker = useRef<Asker | null>(null);
  const [told, setTold] = useState<Told | null>(null);
  const key = shapeKey(making);
  useEffect(() => {
    try {
      asker.current = new Asker(setTold, () => {
        asker.current = null;
        setTold(null);
      });
    } catch {
      // Some settings of a browser refuse workers by throwing.
    }
    return () => {
      asker.current?.end();
      asker.current = null;
    };
  }, []);
  // biome-ignore lint/correctness/useExhaustiveDependencies: only what the shape depends on asks anew
  useEffect(() => asker.current?.ask({ key, making }), [key]);
  return told;
}
