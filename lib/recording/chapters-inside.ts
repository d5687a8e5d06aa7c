/** Chapters that stand inside a media file: ffmpeg tells them, lib/chapters reads what it tells. */
import { open, readFile, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { readChapters } from '#lib/chapters/chapters-read.ts';
import { originalOf } from '#lib/data/recordings.ts';
import type { Ffmpeg } from './find-ffmpeg.ts';
import { inputArguments } from './plan-ingest.ts';
import { type RecordingWork, withFolder } from './recording-work.ts';
import { runFfmpeg } from './run-ffmpeg.ts';
import { SNIFF_BYTES, sniff } from './sniff.ts';

/** Reading what a file says of itself, ms. */
const LONGEST_MS = 60_000;
/** More text than this is no list of chapters, bytes. */
const MOST_BYTES = 4_000_000;

type Found = ReturnType<typeof readChapters>;
const NONE: Found = { chapters: [], losses: [] };

/** The chapters of a recording's own file; none where it has none, or where ffmpeg cannot read it. */
export async function readChaptersInside(
  work: RecordingWork,
  recordingId: string,
  { newId, signal }: { readonly newId: () => string; readonly signal: AbortSignal },
): Promise<Found> {
  const { ffmpeg } = work;
  const key = await originalOf(work.db, recordingId);
  if (!ffmpeg || key === null || (await work.storage.size(key)) === null) return NONE;
  return withFolder(work, async (folder) => {
    const path = await work.storage.lend(key, folder, 'input');
    const text = await tellMetadata(ffmpeg, { path, folder, signal });
    if (text === null) return NONE;
    const { chapters, losses } = readChapters(text, newId);
    // Title, artist and encoder of the file are no chapters, and nobody asked for them.
    return { chapters, losses: losses.filter(({ code }) => code !== 'header-text') };
  });
}

async function headOf(path: string): Promise<Uint8Array> {
  await using file = await open(path);
  const { buffer, bytesRead } = await file.read(new Uint8Array(SNIFF_BYTES), 0, SNIFF_BYTES, 0);
  return buffer.subarray(0, bytesRead);
}

/** What a media file says of itself, as ffmetadata; null where ffmpeg cannot tell. */
export async function tellMetadata(
  ffmpeg: Ffmpeg,
  { path, folder, signal }: { readonly path: string; readonly folder: string; readonly signal: AbortSignal },
): Promise<string | null> {
  const container = sniff(await headOf(path));
  if (!container.ok) return null;
  const output = join(folder, 'chapters.txt');
  const run = await runFfmpeg(ffmpeg, {
    // Without -copyts the chapters of an MP3 come early by its encoder's delay.
    args: ['-copyts', ...inputArguments(container.value, path), '-f', 'ffmetadata', `file:${output}`],
    folder,
    signal,
    limitMs: LONGEST_MS,
  });
  if (run.end !== 'done' || (await stat(output)).size > MOST_BYTES) return null;
  return readFile(output, 'utf8');
}
