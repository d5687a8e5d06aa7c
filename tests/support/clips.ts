/** Short recordings made by ffmpeg's own test sources, and the tool to make them. */
import { execFile } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { type Examined, examine } from '#lib/recording/examine.ts';
import type { RecordingFault } from '#lib/recording/fault.ts';
import { type Ffmpeg, findFfmpeg } from '#lib/recording/find-ffmpeg.ts';
import type { Result } from '#lib/result.ts';

const run = promisify(execFile);

/** ffmpeg as the program finds it; tests of recordings cannot do without. */
export async function testFfmpeg(): Promise<Ffmpeg> {
  const found = await findFfmpeg(process.env['FFMPEG_BIN'], process.env['PATH'] ?? '');
  if (!found) throw new Error('ffmpeg is missing: install it, or name it in FFMPEG_BIN');
  return found;
}

/** Runs ffmpeg for a test, bare; returns what it printed. */
export async function makeWithFfmpeg(...args: string[]): Promise<string> {
  const program = process.env['FFMPEG_BIN'] ?? 'ffmpeg';
  return (await run(program, ['-nostdin', '-hide_banner', '-y', ...args])).stderr;
}

/** Two seconds of moving picture and a tone, as ffmpeg inputs 0 and 1. */
export const twoSeconds = (size = '320x240', rate = 25): string[] => [
  ...['-f', 'lavfi', '-i', `testsrc=size=${size}:rate=${rate}:duration=2`],
  ...['-f', 'lavfi', '-i', 'sine=frequency=440:duration=2'],
];

/** Examines a file in a folder of its own. `look` sees the result before the folder goes. */
export async function examineFile(
  ffmpeg: Ffmpeg,
  path: string,
  look?: (examined: Examined) => Promise<void>,
): Promise<Result<Examined, RecordingFault>> {
  const folder = await mkdtemp(join(tmpdir(), 'examine-'));
  try {
    const result = await examine(ffmpeg, {
      path,
      folder,
      signal: AbortSignal.timeout(120_000),
      onStep: () => {},
    });
    if (result.ok) await look?.(result.value);
    return result;
  } finally {
    await rm(folder, { recursive: true });
  }
}
