/** A chapter as a file or a text has it. */
export interface FoundChapter {
  /** Line where it stands, from 1. */
  readonly line: number;
  /** From the recording's start, ms; not yet checked. */
  readonly startMs: number;
  /** Where the file says that it ends, ms; null where it does not. */
  readonly endMs: number | null;
  readonly title: string;
}
