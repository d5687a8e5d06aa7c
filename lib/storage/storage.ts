/**
 * Where files lie: recordings as they came, and what was made from them. A
 * stored file never changes: what is made anew gets a new key. Keys are made
 * by us (storage-key.ts) and hold nothing that a person typed.
 *
 * The interface is what an object store can offer too: whole files in, spans
 * of bytes out. Programs that need a path are lent one.
 */

/** Bytes `[start, end)` of a file. */
export interface ByteSpan {
  readonly start: number;
  readonly end: number;
}

export interface Storage {
  /** How many bytes lie under a key, or null where nothing does. */
  size(key: string): Promise<number | null>;
  /** A span of a stored file as a stream. Nothing is opened before the first read; cancelling closes it. */
  read(key: string, span: ByteSpan): ReadableStream<Uint8Array>;
  /**
   * Takes over a finished file from this machine's disk: it is there whole and
   * durable when the promise resolves, or not at all.
   */
  adopt(key: string, path: string): Promise<void>;
  /** Stores a few bytes, whole or not at all. */
  put(key: string, bytes: Uint8Array): Promise<void>;
  /** Lends a stored file as `folder/name`, for programs that need a path. It must not be written to. */
  lend(key: string, folder: string, name: string): Promise<string>;
  /** Removes a file; removing what is not there is no fault. */
  remove(key: string): Promise<void>;
}
