/**
 * Runs ffmpeg on a file that nobody vouches for: no shell, no input from us,
 * an environment of its own, limits of time and memory, and a process group
 * that can be ended whole.
 */
import { type ChildProcess, type SpawnOptions, spawn } from 'node:child_process';
import { createInterface } from 'node:readline';
import type { Readable } from 'node:stream';
import type { Ffmpeg } from './find-ffmpeg.ts';

/** No progress for so long counts as stuck, ms. */
const STALL_MS = 180_000;
const REPORT_START_CHARS = 48_000;
const REPORT_END_CHARS = 24_000;

export interface FfmpegRun {
  readonly args: readonly string[];
  /** A folder of its own: working folder and home. */
  readonly folder: string;
  readonly signal: AbortSignal;
  readonly limitMs: number;
  /** Called about twice a second with the time that is done, ms. */
  readonly onProgress?: (doneMs: number) => void;
  /** Takes what leaves on pipe 3. */
  readonly onSound?: (bytes: Uint8Array) => void;
}

export interface FfmpegEnd {
  readonly end: 'done' | 'failed' | 'too-long';
  /** What it printed: beginning and end where that is long. */
  readonly report: string;
  /** Time of the last output, ms. */
  readonly doneMs: number;
}

/** @throws the signal's reason where it aborts, and the system's error where ffmpeg cannot start. */
export async function runFfmpeg(ffmpeg: Ffmpeg, run: FfmpegRun): Promise<FfmpegEnd> {
  run.signal.throwIfAborted();
  const [program, ...before] = ffmpeg.command;
  const fixed = ['-nostdin', '-hide_banner', '-nostats', '-y', '-progress', 'pipe:1', '-stats_period', '0.4'];
  const options: SpawnOptions = {
    cwd: run.folder,
    env: bareEnvironment(run.folder),
    stdio: ['ignore', 'pipe', 'pipe', 'pipe'],
    detached: true,
  };
  const child: ChildProcess = spawn(program, [...before, ...fixed, ...run.args], options);
  const killing = { tooLong: false };
  const kill = (): void => killGroup(child);
  const stop = (): void => {
    killing.tooLong = true;
    kill();
  };
  const whole = setTimeout(stop, run.limitMs);
  let stalled = setTimeout(stop, STALL_MS);
  run.signal.addEventListener('abort', kill, { once: true });

  let doneMs = 0;
  const [, progress, errors, sound] = child.stdio as unknown as [null, Readable, Readable, Readable];
  createInterface({ input: progress }).on('line', (line) => {
    const match = /^out_time_us=(\d{1,15})$/.exec(line);
    if (!match) return;
    const ms = Math.round(Number(match[1]) / 1000);
    if (ms > doneMs) {
      doneMs = ms;
      clearTimeout(stalled);
      stalled = setTimeout(stop, STALL_MS);
    }
    run.onProgress?.(doneMs);
  });
  const report = collect(errors);
  sound.on('data', (chunk: Uint8Array) => run.onSound?.(chunk));
  sound.on('error', () => {});

  try {
    const code = await new Promise<number | null>((resolve, reject) => {
      child.once('error', reject);
      child.once('close', resolve);
    });
    run.signal.throwIfAborted();
    return { end: killing.tooLong ? 'too-long' : code === 0 ? 'done' : 'failed', report: report(), doneMs };
  } finally {
    clearTimeout(whole);
    clearTimeout(stalled);
    run.signal.removeEventListener('abort', kill);
  }
}

/** Nothing of ours: no secrets, no settings that ffmpeg would heed. */
const bareEnvironment = (folder: string): NodeJS.ProcessEnv => ({
  PATH: '/usr/local/bin:/usr/bin:/bin',
  HOME: folder,
  TMPDIR: folder,
  LC_ALL: 'C',
  NODE_ENV: 'production',
});

/** Keeps the beginning and the end of what a broken file may make endless. */
function collect(stream: Readable): () => string {
  let start = '';
  let end = '';
  stream.setEncoding('utf8');
  stream.on('data', (text: string) => {
    const room = REPORT_START_CHARS - start.length;
    start += text.slice(0, room);
    if (text.length > room) end = (end + text.slice(Math.max(0, room))).slice(-REPORT_END_CHARS);
  });
  return () => (end === '' ? start : `${start}\n${end}`);
}

function killGroup(child: ChildProcess): void {
  if (child.pid === undefined || child.exitCode !== null || child.signalCode !== null) return;
  try {
    process.kill(-child.pid, 'SIGKILL');
  } catch {
    // It ended in this very moment.
  }
}
