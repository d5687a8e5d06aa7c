/**
 * What taking a 1080p recording in costs beside the one ffmpeg command that
 * makes the same outputs, in one run on one machine: all of our work on files
 * (identifying, strict decoding, web copy, sound, hash, poster), without the
 * database's few small rows. Prints both times, as they pass and of processor,
 * and their ratios; the aim is at most 1.1. Time of processor tells the cost
 * also where other work runs beside it. Run it with
 * `npx node tests/bench/ingest.bench.ts [seconds] [rounds]`; 600 is the full
 * length; the usual run is short, so that what is done once weighs more in it.
 */
import { execFile } from 'node:child_process';
import { createHash } from 'node:crypto';
import { createReadStream, readFileSync } from 'node:fs';
import { mkdir, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { examine } from '#lib/recording/examine.ts';
import { takePicture } from '#lib/recording/take-picture.ts';
import { makeWithFfmpeg, testFfmpeg } from '#tests/support/clips.ts';

const seconds = Number(process.argv[2] ?? 4);
const rounds = Number(process.argv[3] ?? 1);
const folder = await mkdtemp(join(tmpdir(), 'ingest-bench-'));
const ffmpeg = await testFfmpeg();
const input = join(folder, 'camera.mkv');
console.log(`Making ${seconds} s of 1080p …`);
await makeWithFfmpeg(
  ...['-f', 'lavfi', '-i', `testsrc2=size=1920x1080:rate=30:duration=${seconds},noise=alls=3:allf=t`],
  ...['-f', 'lavfi', '-i', `sine=frequency=330:duration=${seconds}`],
  // A codec that browsers do not play, so that a copy must be made.
  ...['-c:v', 'mpeg4', '-q:v', '5', '-c:a', 'flac', input],
);

interface Cost {
  /** As it passes, s. */
  readonly wall: number;
  /** Of processor, s: of this process and of all that it ran and that has ended. */
  readonly processor: number;
}

/** Hundredths of a second in which Linux tells the processor time of ended children (getconf CLK_TCK). */
const TICKS = 100;

function processorSeconds(): number {
  const { user, system } = process.cpuUsage();
  // proc(5): the 16th and 17th field, counted from the 3rd behind the name in brackets.
  const fields = readFileSync('/proc/self/stat', 'utf8').split(') ')[1]?.split(' ') ?? [];
  return (user + system) / 1e6 + (Number(fields[13]) + Number(fields[14])) / TICKS;
}

async function costOf(work: () => Promise<unknown>): Promise<Cost> {
  const [start, used] = [performance.now(), processorSeconds()];
  await work();
  return { wall: (performance.now() - start) / 1000, processor: processorSeconds() - used };
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
  // In turn, the better of each: the first run also warms the disk's cache.
  const theirs: Cost[] = [];
  const mine: Cost[] = [];
  for (let round = 0; round < rounds; round++) {
    theirs.push(await costOf(reference));
    mine.push(await costOf(ours));
  }
  for (const [of, words] of [
    ['wall', 'as it passes'],
    ['processor', 'of processor'],
  ] as const) {
    const [one, other] = [theirs, mine].map((costs) => Math.min(...costs.map((cost) => cost[of])));
    const all = (costs: readonly Cost[]): string => costs.map((cost) => cost[of].toFixed(2)).join(', ');
    console.log(`${words}: one ffmpeg command ${all(theirs)} s, the whole ingest ${all(mine)} s`);
    console.log(`  ratio ${((other ?? 0) / (one ?? 1)).toFixed(3)} (aim: at most 1.1)`);
  }
} finally {
  await rm(folder, { recursive: true, force: true });
}
