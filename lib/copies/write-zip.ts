/**
 * Writes a zip while it is being read: one file after the other, none held
 * whole. Files are stored, not packed (recordings would not shrink), and bear
 * no time: the same files give the same bytes, whatever packs or asks.
 */
import { Readable } from 'node:stream';
import { ZipFile } from 'yazl';

/** A file of the archive; its content is asked for when its turn has come. */
export interface CopyEntry {
  /** Below the archive's top, parted by `/`. */
  readonly path: string;
  readonly content: () => Promise<Uint8Array | ReadableStream<Uint8Array>>;
}

/** Of an archive's clock, which knows no zone; years begin at 1980. */
const NO_TIME = new Date(1980, 0, 1, 0, 0, 0);
const OPTIONS = { mtime: NO_TIME, mode: 0o100644, compress: false, forceDosTimestamp: true } as const;

/** The archive as a stream. Nothing is opened before the first read; cancelling closes what is open. */
export function writeZip(entries: AsyncIterable<CopyEntry>): ReadableStream<Uint8Array> {
  const zip = new ZipFile();
  const left = new AbortController();
  const output = zip.outputStream as Readable;
  const fail = (error: unknown): void => {
    left.abort(error);
    output.destroy(error instanceof Error ? error : new Error(String(error)));
  };
  // Its own errors would otherwise end the process.
  zip.on('error', fail);
  output.on('error', () => {});
  let reading: AsyncIterator<Uint8Array> | undefined;
  const begin = (): AsyncIterator<Uint8Array> => {
    addAll(zip, entries, left.signal).catch(fail);
    return output[Symbol.asyncIterator]();
  };
  return new ReadableStream<Uint8Array>(
    {
      async pull(controller) {
        reading ??= begin();
        const { done, value } = await reading.next();
        if (done) controller.close();
        else controller.enqueue(value);
      },
      cancel(reason) {
        fail(reason ?? new Error('The reader left'));
      },
    },
    { highWaterMark: 0 },
  );
}

async function addAll(zip: ZipFile, entries: AsyncIterable<CopyEntry>, left: AbortSignal): Promise<void> {
  for await (const { path, content } of entries) {
    left.throwIfAborted();
    const source = sourceOf(await content());
    const leave = (): void => void source.destroy();
    left.addEventListener('abort', leave);
    await new Promise<void>((resolve, reject) => {
      source.once('end', resolve).once('error', reject).once('close', resolve);
      zip.addReadStream(source, path, OPTIONS);
    });
    left.removeEventListener('abort', leave);
  }
  left.throwIfAborted();
  zip.end();
}

const sourceOf = (content: Uint8Array | ReadableStream<Uint8Array>): Readable =>
  content instanceof Uint8Array
    ? Readable.from([Buffer.from(content.buffer, content.byteOffset, content.byteLength)])
    : Readable.from(chunksOf(content), { objectMode: false });

/** By hand: Node's own bridge throws outside every handler when a reader leaves in the middle. */
async function* chunksOf(stream: ReadableStream<Uint8Array>): AsyncGenerator<Uint8Array> {
  const reader = stream.getReader();
  try {
    for (let next = await reader.read(); !next.done; next = await reader.read()) yield next.value;
  } finally {
    await reader.cancel().catch(() => {});
  }
}
