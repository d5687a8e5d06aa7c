/** Every kind of job there is: what it is told, and how patient the queue is with it. Add one here. */
import { createHash } from 'node:crypto';
import { availableParallelism } from 'node:os';
import { z } from 'zod';
import { MADE_FILES, type MadeFileName } from '#lib/lesson/made-files.ts';
import { momentMs } from '#lib/time/time.ts';

const id = z.string().min(1).max(64);

/** How a kind of job is told and treated. */
interface JobKind<S extends z.ZodType> {
  readonly payload: S;
  /** Of jobs with the same key, one runs at a time and at most one more waits behind it. */
  readonly key: (payload: z.infer<S>) => string;
  /** How many run side by side in one worker process. */
  readonly atOnce: number;
  /** Longest time that one attempt may take, seconds. */
  readonly longestSeconds: number;
  /** How often it is tried again after a failure or a killed worker. */
  readonly retries: number;
  /** What was asked for last is done first: what came before it may be wanted by nobody any more. */
  readonly isNewestFirst?: boolean;
}

const kind = <S extends z.ZodType>(of: JobKind<S>): JobKind<S> => of;

export const jobKinds = {
  /** Looks at an uploaded recording and makes what the lesson needs from it. */
  'ingest-recording': kind({
    payload: z.object({ recordingId: id }),
    key: ({ recordingId }) => recordingId,
    // A media program keeps a core busy by itself.
    atOnce: availableParallelism(),
    longestSeconds: 12 * 3600,
    retries: 20,
  }),
  /** Takes a picture out of a recording. */
  'take-still': kind({
    payload: z.object({ recordingId: id, atMs: momentMs }),
    key: ({ recordingId, atMs }) => `${recordingId} ${atMs}`,
    atOnce: availableParallelism(),
    longestSeconds: 300,
    retries: 5,
  }),
  /** Reads a portable copy that was sent to a workshop. */
  'bring-in-copy': kind({
    payload: z.object({ copyId: id }),
    key: ({ copyId }) => copyId,
    atOnce: 1,
    longestSeconds: 12 * 3600,
    retries: 5,
  }),
  /** Makes a file of a published revision. */
  'make-revision-file': kind({
    payload: z.object({ revisionId: id, name: z.enum(Object.keys(MADE_FILES) as [MadeFileName]) }),
    key: ({ revisionId, name }) => `${revisionId} ${name}`,
    // A copy keeps the disk busy, not a core.
    atOnce: 1,
    longestSeconds: 2 * 3600,
    retries: 5,
  }),
  /** Derives the shape in space of a sequence that is none of the stored weaves. */
  'derive-shape': kind({
    payload: z.object({ key: z.string().min(1).max(2_000) }),
    key: ({ key }) => createHash('sha256').update(key).digest('base64url'),
    // Reckons in this process, a piece at a time: two would only take turns.
    atOnce: 1,
    longestSeconds: 15 * 60,
    retries: 3,
    // While a sequence is written down, every stage of it is asked for.
    isNewestFirst: true,
  }),
  /** Compares the sound of a lesson's recording with that of one that may take its place. */
  'compare-recordings': kind({
    payload: z.object({ comparisonId: id }),
    key: ({ comparisonId }) => comparisonId,
    atOnce: 1,
    longestSeconds: 2 * 3600,
    retries: 5,
  }),
};

export type JobName = keyof typeof jobKinds;
export type JobPayload<N extends JobName> = z.infer<(typeof jobKinds)[N]['payload']>;
export const JOB_NAMES = Object.keys(jobKinds) as readonly JobName[];
