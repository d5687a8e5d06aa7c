/** Foretells a piece away from the screen, so that typing never waits; what was told last is kept. */
import { type Foretold, foretell } from '#lib/lesson/foretell.ts';
import type { Pictured } from '#lib/lesson/pictured.ts';
import type { Result } from '#lib/result.ts';
import type { PieceShapeFault } from '#lib/weave/space/piece-in-space.ts';

export interface Asked {
  /** Equal keys have equal shapes. */
  readonly key: string;
  readonly making: Pictured;
}
export type Told = Result<Foretold, PieceShapeFault>;

const KEPT = 60;
const kept = new Map<string, Told>();

self.onmessage = ({ data: { key, making } }: MessageEvent<Asked>) => {
  const told = kept.get(key) ?? foretell(making);
  kept.delete(key);
  kept.set(key, told);
  const [oldest] = kept.keys();
  if (kept.size > KEPT && oldest !== undefined) kept.delete(oldest);
  self.postMessage(told);
};
