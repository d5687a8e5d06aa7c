/**
 * A cue is WebVTT's word for one timed piece of a transcript. Its text is what
 * is said, as plain text that may hold WebVTT cue-text tags; its id stays with
 * it for life, so that notes, corrections and a re-edited recording can follow
 * it. This folder reads and writes transcripts; it knows no lesson.
 */
import { z } from 'zod';
import { momentMs } from '#lib/time/time.ts';

/** Most cues that one lesson holds. Three hours of speech have about 5,000. */
export const MOST_CUES = 20_000;

export const cueId = z.string().min(1).max(64);

/**
 * How a cue's times came about, where they were not heard: spread over the
 * speech by the length of the text; or, from such a spreading, with a start
 * that somebody heard.
 */
export const CUE_TIMINGS = ['approximate', 'start heard'] as const;

export const cue = z
  .object({
    id: cueId,
    startMs: momentMs,
    endMs: momentMs,
    /** At most 5,000 characters; lines are parted by `\n`, no blank line. */
    text: z.string().max(5_000),
    /** WebVTT cue settings as they stood behind the times, or empty. */
    settings: z.string().max(500),
    /** Absent where both times are as they were heard or as a file gave them. */
    timing: z.enum(CUE_TIMINGS).optional(),
  })
  .refine((c) => c.endMs > c.startMs, { message: 'A cue ends after it starts.', path: ['endMs'] });

export type Cue = Readonly<z.infer<typeof cue>>;

/** In order of time; cues that start together keep the longer one first, then by id. */
export const compareCues = (a: Cue, b: Cue): number =>
  a.startMs - b.startMs || b.endMs - a.endMs || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);
