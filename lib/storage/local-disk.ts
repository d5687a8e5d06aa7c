/** Storage on this machine's disk, below one folder. */
import { randomUUID } from 'node:crypto';
import { constants } from 'node:fs';
import { copyFile, type FileHandle, link, mkdir, open, rename, rm, stat } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { invariant } from '#lib/result.ts';
import type { Storage } from './storage.ts';
import { isStorageKey } from './storage-key.ts';

/** What one read takes at most: large enough to be fast, small enough to hold for many viewers. */
const CHUNK_BYTES = 128 * 1024;

/** Opens the storage below `root`, an absolute path; folders are made as they are needed. */
export function openLocalDisk(root: string): Storage {
  const pathOf = (key: string): string => {
    invariant(isStorageKey(key), `not a storage key: ${key}`);
    return join(root, 'stored', key);
  };

  const settle = async (temporary: string, target: string): Promise<void> => {
    await sync(temporary);
    await mkdir(dirname(target), { recursive: true });
    await rename(temporary, target);
    await sync(dirname(target));
  };

  return {
    async size(key) {
      try {
        return (await stat(pathOf(key))).size;
      } catch (error) {
        if (isMissing(error)) return null;
        throw error;
      }
    },

    read: (key, span) => readFile(pathOf(key), span.start, span.end),

    async adopt(key, path) {
      const target = pathOf(key);
      // In one step from its name to its key: who is killed between two finds it under neither.
      try {
        await settle(path, target);
      } catch (error) {
        if (codeOf(error) !== 'EXDEV') throw error;
        const temporary = `${target}.${randomUUID()}`;
        await copyFile(path, temporary);
        await settle(temporary, target);
        await rm(path, { force: true });
      }
    },

    async put(key, bytes) {
      const target = pathOf(key);
      const temporary = `${target}.${randomUUID()}`;
      await mkdir(dirname(target), { recursive: true });
      const file = await open(temporary, 'wx');
      try {
        await file.writeFile(bytes);
      } finally {
        await file.close();
      }
      await settle(temporary, target);
    },

    async lend(key, folder, name) {
      const lent = join(folder, name);
      try {
        await link(pathOf(key), lent);
      } catch (error) {
        if (isMissing(error)) throw error;
        // A disk without hard links, or another disk.
        await copyFile(pathOf(key), lent, constants.COPYFILE_FICLONE);
      }
      return lent;
    },

    async remove(key) {
      await rm(pathOf(key), { force: true });
    },
  };
}

/**
 * Bytes `[start, end)` of a file. Made by hand: Node's own bridge from a file
 * stream throws outside every handler when a viewer leaves in the middle.
 */
function readFile(path: string, start: number, end: number): ReadableStream<Uint8Array> {
  let file: FileHandle | undefined;
  let at = start;
  const close = async (): Promise<void> => {
    const open = file;
    file = undefined;
    await open?.close();
  };
  return new ReadableStream<Uint8Array>(
    {
      async pull(controller) {
        try {
          if (at < end) file ??= await open(path, 'r');
          const wanted = Math.min(CHUNK_BYTES, end - at);
          const chunk = new Uint8Array(wanted);
          const { bytesRead } = file ? await file.read(chunk, 0, wanted, at) : { bytesRead: 0 };
          at += bytesRead;
          if (bytesRead > 0) controller.enqueue(chunk.subarray(0, bytesRead));
          if (bytesRead === 0 || at >= end) {
            await close();
            controller.close();
          }
        } catch (error) {
          await close();
          throw error;
        }
      },
      cancel: close,
    },
    { highWaterMark: 0 },
  );
}

async function sync(path: string): Promise<void> {
  const handle = await open(path, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

const codeOf = (error: unknown): string | undefined =>
  error instanceof Error && 'code' in error ? String(error.code) : undefined;

const isMissing = (error: unknown): boolean => codeOf(error) === 'ENOENT';
