/**
 * What taking a 1080p recording in costs beside the one ffmpeg command that
 * makes the same outputs, in one run on one machine: all of our work on files
 * (identifying, strict decoding, web copy, sound, hash, poster), without the
 * database's few small rows. Prints both times and their ratio; the aim is at
 * most 1.1. Run it with `npx node tests/bench/ingest.bench.ts [seconds]`; 600 is
 * the full length, 15 the usual one.
 */
import { execFile } from 'node:child_process';
import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { mkdir, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { examine } from '#lib/recording/examine.ts';
import { takePicture } from '#lib/recording/take-picture.ts';
import { makeWithFfmpeg, testFfmpeg } from '#tests/support/clips.ts';

const seconds = Number(process.argv[2] ?? 15);
const folder = await mkdtemp(join(tmpdir(), 'ingest-bench-'));
const ffmpeg = await testFfmpeg();
const input = join(folder, 'camera.mkv');
console.log(`Making ${seconds} s of 1080p …`);
await makeWithFfmpeg(
  ...['-f', 'lavfi', '-i', `testsrc2=size=1920x1080:rate=30:duration=${seconds},noise=alls=8:allf=t`],
  ...['-f', 'lavfi', '-i', `sine=frequency=330:duration=${seconds}`],
  // A codec that browsers do not play, so that a copy must be made.
  ...['-c:v', 'mpeg4', '-q:v', '5', '-c:a', 'flac', input],
);

async function timed(work: () => Promise<unknown>): Promise<number> {
  const start = performance.now();
  await work();
  return (performance.now() - start) / 1000;
}

/** The same decode and the same outputs, by hand; at the same priority, so that a busy machine slows both alike. */
const reference = (): Promise<unknown> =>
  promisify(execFile)(
    'nice',
    [
      ...[
        '-n',
        '10',
        'ffmpeg',
        '-nostdin',
        '-hide_banner',
        '-v',
        'error',
        '-y',
        '-i',
        input,
        '-filter_complex',
      ],
      '[0:1]asplit=2[s][w];[s]ebur128=framelog=verbose,aresample=8000,aformat=sample_fmts=s16:channel_layouts=mono[p]',
      ...['-map', '[p]', '-f', 's16le', join(folder, 'sound.raw'), '-map', '0:0', '-map', '[w]'],
      ...[
        '-c:v',
        'libx264',
        '-preset',
        'veryfast',
        '-crf',
        '21',
        '-profile:v',
        'high',
        '-pix_fmt',
        'yuv420p',
      ],
      ...['-force_key_frames', 'expr:gte(t,n_forced*2)', '-c:a', 'aac', '-b:a', '160k'],
      ...['-movflags', '+faststart', join(folder, 'reference.mp4')],
    ],
    { maxBuffer: 16 * 1024 * 1024 },
  );

async function ours(): Promise<void> {
  const own = join(folder, 'attempt');
  await mkdir(own, { recursive: true });
  const signal = AbortSignal.timeout(4 * 3_600_000);
  const hashing = (async () => {
    const hash = createHash('sha256');
    for await (const chunk of createReadStream(input, { highWaterMark: 1024 * 1024 })) hash.update(chunk);
    return hash.digest('hex');
  })();
  const examined = await examine(ffmpeg, { path: input, folder: own, signal, onStep: () => {} });
  if (!examined.ok) throw new Error(JSON.stringify(examined.fault));
  const { playablePath, facts } = examined.value;
  await takePicture(ffmpeg, { path: playablePath, atMs: facts.durationMs / 10, folder: own, signal });
  await hashing;
}

try {
  // Twice in turn, the better of each: the first run also warms the disk's cache.
  const theirs: number[] = [];
  const mine: number[] = [];
  for (let round = 0; round < 2; round++) {
    theirs.push(await timed(reference));
    mine.push(await timed(ours));
  }
  const [one, other] = [Math.min(...theirs), Math.min(...mine)];
  console.log(`one ffmpeg command   ${one.toFixed(2)} s   (${theirs.map((t) => t.toFixed(2)).join(', ')})`);
  console.log(`the whole ingest     ${other.toFixed(2)} s   (${mine.map((t) => t.toFixed(2)).join(', ')})`);
  console.log(`ratio                ${(other / one).toFixed(3)}   (aim: at most 1.1)`);
} finally {
  await rm(folder, { recursive: true, force: true });
}
