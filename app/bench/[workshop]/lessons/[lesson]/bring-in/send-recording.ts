/**
 * Sends a recording's bytes so that it can go on after a break: a lost
 * network, a restarted server, a closed window. The address of an unfinished
 * upload is kept in this browser, under the file and the lesson.
 */
import { Upload } from 'tus-js-client';

/** Small enough for servers in front that limit a request's size. */
const CHUNK_BYTES = 32 * 1024 * 1024;
/** A server that restarts is back within these, ms; then it waits for her. */
const RETRY_MS = [500, 1_000, 2_000, 3_000, 5_000, 5_000, 10_000, 10_000, 20_000, 30_000, 60_000];

export interface Sending {
  readonly pause: () => Promise<void>;
  readonly goOn: () => void;
  /** Stops, and removes what has arrived. */
  readonly cancel: () => Promise<void>;
}

export interface SendEvents {
  readonly onProgress: (sentBytes: number) => void;
  readonly onDone: () => void;
  readonly onStop: (why: StopReason) => void;
}

/** Why sending stopped by itself. */
export type StopReason = 'signed-out' | 'refused' | 'too-large' | 'disk-full' | 'unreachable';

export interface SendTo {
  readonly workshop: string;
  /** Null for a portable copy, which brings lessons of its own. */
  readonly lesson: string | null;
}

export async function sendRecording(file: File, to: SendTo, events: SendEvents): Promise<Sending> {
  const upload: Upload = new Upload(file, {
    endpoint: '/api/uploads',
    chunkSize: CHUNK_BYTES,
    retryDelays: RETRY_MS,
    removeFingerprintOnSuccess: true,
    metadata: {
      workshop: to.workshop,
      ...(to.lesson === null ? {} : { lesson: to.lesson }),
      filename: file.name,
      filetype: file.type,
    },
    fingerprint: async () => fingerprintOf(file, to.lesson ?? `copy ${to.workshop}`),
    onProgress: (sent) => events.onProgress(sent),
    onSuccess: () => events.onDone(),
    onShouldRetry: (error) => {
      const status = error.originalResponse?.getStatus() ?? 0;
      return status === 0 || status === 409 || status === 423 || (status >= 500 && status !== 507);
    },
    onError: (error) => {
      const status = 'originalResponse' in error ? (error.originalResponse?.getStatus() ?? 0) : 0;
      events.onStop(stopReason(status));
    },
  });
  const [previous] = await upload.findPreviousUploads();
  if (previous) upload.resumeFromPreviousUpload(previous);
  upload.start();
  return {
    pause: () => upload.abort(),
    goOn: () => upload.start(),
    cancel: () => upload.abort(true),
  };
}

function stopReason(status: number): StopReason {
  if (status === 401) return 'signed-out';
  if (status === 413) return 'too-large';
  if (status === 507) return 'disk-full';
  return status >= 400 && status < 500 ? 'refused' : 'unreachable';
}

/** Whether this browser knows an unfinished upload of this very file to this place. */
const fingerprintOf = (file: File, place: string): string =>
  ['benchleaf', place, file.name, file.size, file.lastModified].join(' ');
