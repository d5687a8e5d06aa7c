/** One picture out of a recording, as JPEG. */
import { readFile, rm } from 'node:fs/promises';
import { join } from 'node:path';
import type { Ffmpeg } from './find-ffmpeg.ts';
import { inputArguments } from './plan-ingest.ts';
import { runFfmpeg } from './run-ffmpeg.ts';

const LONGEST_MS = 120_000;
/** Sharp at the width of a page on a fine screen; a telephone on a slow line waits for the poster, and twice as wide is four times as heavy. */
const MOST_PX = 1280;
const SHOWN_SIZE = `scale=w='min(iw,${MOST_PX})':h='min(ih,${MOST_PX})':force_original_aspect_ratio=decrease:force_divisible_by=2`;
/** The last picture may stand long before the end: how far back it is looked for, ms. */
const LOOK_BACK_MS = [0, 250, 1_000, 4_000, 16_000, 64_000];

interface Picture {
  /** Absolute path of an MP4. */
  readonly path: string;
  readonly atMs: number;
  readonly folder: string;
  readonly signal: AbortSignal;
}

/**
 * The picture that is seen at a moment, turned as a player turns it; at the
 * end of a recording the last one there is. Null where there is none.
 */
export async function takePicture(ffmpeg: Ffmpeg, picture: Picture): Promise<Uint8Array | null> {
  for (const back of LOOK_BACK_MS) {
    const found = await pictureAt(ffmpeg, picture, Math.max(0, picture.atMs - back));
    if (found) return found;
    if (back >= picture.atMs) return null;
  }
  return null;
}

async function pictureAt(
  ffmpeg: Ffmpeg,
  { path, folder, signal }: Picture,
  atMs: number,
): Promise<Uint8Array | null> {
  const output = join(folder, 'picture.jpg');
  await runFfmpeg(ffmpeg, {
    args: [
      ...['-ss', (atMs / 1000).toFixed(3)],
      ...inputArguments('mov', path),
      ...['-map', '0:v:0', '-frames:v', '1'],
      // Pixels that are not square are made so: a JPEG has no word for them.
      ...['-vf', `scale='max(2,trunc(iw*sar/2)*2)':ih,${SHOWN_SIZE},setsar=1,format=yuvj420p`],
      ...['-q:v', '4', '-f', 'image2', '-update', '1', `file:${output}`],
    ],
    folder,
    signal,
    limitMs: LONGEST_MS,
  });
  try {
    const bytes = await readFile(output);
    return bytes.length > 0 ? bytes : null;
  } catch {
    return null;
  } finally {
    await rm(output, { force: true });
  }
}
