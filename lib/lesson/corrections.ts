/** Corrections as pupils meet them: at their moment, and newest first in a list. */
import type { Content, Correction } from './content.ts';

type Stated = Content['corrections'][number];

/** The newest revision first; inside one revision in order of time, those about no moment last. */
export const correctionsNewestFirst = (corrections: Content['corrections']): Content['corrections'] =>
  corrections.toSorted(
    (one, other) =>
      (other.revision ?? Number.MAX_SAFE_INTEGER) - (one.revision ?? Number.MAX_SAFE_INTEGER) ||
      (one.startMs ?? Number.MAX_SAFE_INTEGER) - (other.startMs ?? Number.MAX_SAFE_INTEGER),
  );

/** Corrections whose span holds the moment; the end does not belong to it. */
export const correctionsAt = (corrections: Content['corrections'], atMs: number): Content['corrections'] =>
  corrections.filter((correction) => {
    const { startMs, endMs } = correction;
    return startMs !== null && endMs !== null && atMs >= startMs && atMs < endMs;
  });

/** Corrections whose span shares a moment with `[startMs, endMs)`: what stands beside a cue. */
export const correctionsDuring = (
  corrections: Content['corrections'],
  span: { readonly startMs: number; readonly endMs: number },
): Content['corrections'] =>
  corrections.filter(
    (correction) =>
      correction.startMs !== null &&
      correction.endMs !== null &&
      correction.startMs < span.endMs &&
      span.startMs < correction.endMs,
  );

/** A correction before anything was said about it. */
export const emptyCorrection = (id: string): Correction => ({
  id,
  kind: 'said wrongly',
  startMs: null,
  endMs: null,
  wrong: '',
  right: '',
  affects: '',
  kitsChange: false,
  of: null,
  effects: [],
  revision: null,
});

/** Whether a correction was published: then it stands for ever. */
export const isPublished = (correction: Stated): boolean => correction.revision !== null;
