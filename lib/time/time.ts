/**
 * Time on a recording. Every moment is a whole number of milliseconds from the
 * recording's start; every span is half-open: it holds its start and not its
 * end. Nothing here reads a clock.
 */
import { z } from 'zod';
import { LONGEST_MS } from './longest-time.ts';

/** A moment: whole milliseconds from the start of a recording. */
export const momentMs = z.int().min(0).max(LONGEST_MS);

/** A span `[startMs, endMs)`. */
export interface Span {
  readonly startMs: number;
  readonly endMs: number;
}
