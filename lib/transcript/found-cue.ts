/** One timed piece of a file, as a reader found it, its text already plain. */
export interface FoundCue {
  readonly line: number;
  readonly startMs: number;
  readonly endMs: number;
  readonly text: string;
  readonly settings: string;
}

/** Time that a text takes to be read, ms: 15 characters a second, a second at least (common practice). */
export const readingMs = (text: string): number => Math.max(1_000, Math.ceil((text.length * 1_000) / 15));
