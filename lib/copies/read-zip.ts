/**
 * Reads a zip that anybody may have made. The whole directory is looked at
 * before a file is read; each file is read up to its limit and held against
 * its checksum. Nothing is ever written under a name from the archive.
 */
import { createWriteStream } from 'node:fs';
import { Transform } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { crc32 } from 'node:zlib';
import { type Entry, openPromise, type ZipFile } from 'yauzl';
import { CopyRefused } from './copy-fault.ts';
import { type ClaimedEntry, entriesFault, MOST_FILES, shown } from './entry-rules.ts';

export interface OpenCopy {
  /** Names of all files, folders left out. */
  readonly names: readonly string[];
  /** Bytes of a file as the archive claims them; null where it has none of this name. */
  readonly size: (name: string) => number | null;
  /** A small file whole. @throws CopyRefused */
  readonly read: (name: string, mostBytes: number) => Promise<Buffer>;
  /** A large one into a file of ours. @throws CopyRefused */
  readonly extract: (name: string, to: string, mostBytes: number, signal: AbortSignal) => Promise<void>;
  readonly close: () => void;
}

/** @throws CopyRefused where the archive cannot be read, or must not be. */
export async function openCopy(path: string): Promise<OpenCopy> {
  const zip = await openPromise(path, { autoClose: false, strictFileNames: true }).catch((error: unknown) => {
    if (error instanceof Error && 'code' in error) throw error;
    throw new CopyRefused({ code: 'not-a-zip' });
  });
  try {
    const files = await directoryOf(zip);
    return over(zip, files);
  } catch (error) {
    zip.close();
    throw error;
  }
}

async function directoryOf(zip: ZipFile): Promise<ReadonlyMap<string, Entry>> {
  if (zip.entryCount > MOST_FILES) throw new CopyRefused({ code: 'too-many-files', most: MOST_FILES });
  const entries: Entry[] = [];
  try {
    for await (const entry of zip.eachEntry()) {
      entries.push(entry);
      if (entries.length > MOST_FILES) throw new CopyRefused({ code: 'too-many-files', most: MOST_FILES });
    }
  } catch (error) {
    throw error instanceof CopyRefused ? error : directoryRefusal(error);
  }
  const fault = entriesFault(entries.map(claimOf));
  if (fault) throw new CopyRefused(fault);
  return new Map(
    entries.filter(({ fileName }) => !fileName.endsWith('/')).map((entry) => [entry.fileName, entry]),
  );
}

/** The reader's own checks come first: names that lead elsewhere, and stored files of two lengths. */
function directoryRefusal(error: unknown): CopyRefused {
  const message = error instanceof Error ? error.message : '';
  const name = /^(?:absolute path|invalid relative path|invalid characters in fileName): (.*)$/s.exec(
    message,
  );
  return new CopyRefused(
    name ? { code: 'name-not-plain', name: shown(name[1] ?? '') } : { code: 'not-a-zip' },
  );
}

const claimOf = (entry: Entry): ClaimedEntry => ({
  name: entry.fileName,
  isLocked: entry.isEncrypted(),
  method: entry.compressionMethod,
  mode: entry.externalFileAttributes >>> 16,
  packedBytes: entry.compressedSize,
  bytes: entry.uncompressedSize,
  at: entry.relativeOffsetOfLocalHeader,
  headBytes: 30 + entry.fileNameRaw.byteLength,
});

function over(zip: ZipFile, files: ReadonlyMap<string, Entry>): OpenCopy {
  const entryOf = (name: string, mostBytes: number): Entry => {
    const entry = files.get(name);
    if (!entry) throw new CopyRefused({ code: 'file-missing', name });
    if (entry.uncompressedSize > mostBytes)
      throw new CopyRefused({ code: 'file-too-large', name, mostBytes });
    return entry;
  };
  /** Passes the bytes of a file on and counts them; what is not as claimed is refused. */
  const pass = async (
    entry: Entry,
    take: (source: AsyncIterable<Buffer>) => Promise<void>,
  ): Promise<void> => {
    const name = entry.fileName;
    const source = await zip.openReadStreamPromise(entry).catch((error: unknown) => {
      throw refusalOf(error, name);
    });
    let sum = 0;
    const counted = source.pipe(
      new Transform({
        transform(chunk: Buffer, _encoding, done) {
          sum = crc32(chunk, sum);
          done(null, chunk);
        },
      }),
    );
    source.once('error', (error) => counted.destroy(error));
    try {
      await take(counted);
    } catch (error) {
      throw refusalOf(error, name);
    } finally {
      source.destroy();
    }
    if (sum !== entry.crc32) throw new CopyRefused({ code: 'file-damaged', name });
  };
  return {
    names: [...files.keys()],
    size: (name) => files.get(name)?.uncompressedSize ?? null,
    async read(name, mostBytes) {
      const chunks: Buffer[] = [];
      await pass(entryOf(name, mostBytes), async (source) => {
        for await (const chunk of source) chunks.push(chunk);
      });
      return Buffer.concat(chunks);
    },
    extract: (name, to, mostBytes, signal) =>
      pass(entryOf(name, mostBytes), (source) => pipeline(source, createWriteStream(to), { signal })),
    close: () => zip.close(),
  };
}

/** Faults of the archive are refusals; those of our disk and of a stop are not. */
function refusalOf(error: unknown, name: string): unknown {
  const isOurs =
    error instanceof CopyRefused ||
    (error instanceof Error &&
      (error.name === 'AbortError' || ('code' in error && /^E[A-Z]+$/.test(String(error.code)))));
  return isOurs ? error : new CopyRefused({ code: 'file-damaged', name });
}
