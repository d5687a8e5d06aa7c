/** What work on recordings needs: the database, the files, ffmpeg, and a place to work in. */
import { randomUUID } from 'node:crypto';
import { mkdir, mkdtemp, rm } from 'node:fs/promises';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { environment } from '#lib/config/environment.ts';
import { programPath } from '#lib/config/program-path.ts';
import { type Database, database } from '#lib/data/database.ts';
import { openStorage } from '#lib/storage/open-storage.ts';
import type { Storage } from '#lib/storage/storage.ts';
import { type Ffmpeg, findFfmpeg } from './find-ffmpeg.ts';

export interface RecordingWork {
  readonly db: Database;
  readonly storage: Storage;
  /** Null where the machine has none. */
  readonly ffmpeg: Ffmpeg | null;
  /** Absolute folder below which uploads arrive and attempts work. */
  readonly filesFolder: string;
  readonly newId: () => string;
}

/** The running program's own. */
export async function openRecordingWork(): Promise<RecordingWork> {
  const { BENCHLEAF_FILES, FFMPEG_BIN } = environment();
  return {
    db: database(),
    storage: openStorage(),
    ffmpeg: await findFfmpeg(FFMPEG_BIN, programPath()),
    filesFolder: BENCHLEAF_FILES,
    newId: randomUUID,
  };
}

/** Where bytes of an upload are collected until they are all there. */
export const uploadsFolder = (filesFolder: string): string => join(filesFolder, 'uploads');

/** Where attempts have their folders. What a killed one leaves is swept. */
export const workFolder = (filesFolder: string): string => join(filesFolder, 'work');

/** Whose an attempt's folder is; null for what is none. */
export function readAttemptFolder(name: string): { readonly host: string; readonly pid: number } | null {
  const match = /^attempt_(.+)_(\d+)_[^_]+$/.exec(name);
  return match ? { host: match[1] ?? '', pid: Number(match[2]) } : null;
}

/** Runs `use` with an empty folder of its own, which is gone afterwards. */
export async function withFolder<T>(
  work: Pick<RecordingWork, 'filesFolder'>,
  use: (folder: string) => Promise<T>,
): Promise<T> {
  const parent = workFolder(work.filesFolder);
  await mkdir(parent, { recursive: true });
  const folder = await mkdtemp(join(parent, `attempt_${hostname()}_${process.pid}_`));
  try {
    return await use(folder);
  } finally {
    await rm(folder, { recursive: true, force: true, maxRetries: 3 });
  }
}
