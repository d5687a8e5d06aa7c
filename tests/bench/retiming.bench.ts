/**
 * What comparing a long recording with its re-edited copy costs: how many times
 * faster than both play, on one core and with decoding, and how much memory.
 * The reference beside it is ffmpeg decoding the same two files. Run it with
 * `npx node tests/bench/retiming.bench.ts [minutes]`; 120 is the full length.
 * Aims: at least 300 times as fast as playing, below 500 MB.
 */
import { execFileSync } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { extractSound, openSoundFile } from '#lib/recording/sound-file.ts';
import { compareSound } from '#lib/retiming/compare-sound.ts';
import { editListOf } from '#lib/retiming/edit-list.ts';
import { MADE_RATE, mix, speak, VOICES, workshop } from '#tests/retiming/made-sound.ts';
import { testFfmpeg } from '#tests/support/clips.ts';

const minutes = Number(process.argv[2] ?? 20);
const folder = await mkdtemp(join(tmpdir(), 'retiming-bench-'));
const ffmpeg = await testFfmpeg();
const signal = AbortSignal.timeout(3_600_000);

/** Ten minutes at a time, so that making the sound takes less memory than comparing it. */
function make(name: string, cuts: boolean): string {
  const path = join(folder, name);
  const [voice = { pitch: 110, mouth: 1, syllablesPerSecond: 4 }] = VOICES;
  const raw = join(folder, `${name}.pcm`);
  const encode = ['-c:a', 'aac', '-b:a', cuts ? '48k' : '96k'];
  for (let part = 0; part * 10 < minutes; part++) {
    const seconds = Math.min(10, minutes - part * 10) * 60;
    const sound = mix([speak(voice, seconds, 900 + part), 1], [workshop(seconds, 950 + part), 0.6]);
    // 8 s are taken out of the middle of every part.
    const at = (seconds / 2) * MADE_RATE;
    const kept = cuts ? [sound.subarray(0, at), sound.subarray(at + 8 * MADE_RATE)] : [sound];
    for (const piece of kept) {
      const bytes = Buffer.from(Int16Array.from(piece, (value) => value * 32_000).buffer);
      execFileSync('sh', ['-c', 'cat >> "$0"', raw], { input: bytes });
    }
  }
  const input = ['-f', 's16le', '-ar', String(MADE_RATE), '-ac', '1', '-i', raw];
  execFileSync(process.env['FFMPEG_BIN'] ?? 'ffmpeg', ['-v', 'error', '-y', ...input, ...encode, path]);
  return path;
}

try {
  console.log(`Making ${minutes} minutes twice …`);
  const files = [make('old.m4a', false), make('new.m4a', true)];
  const seconds = 2 * minutes * 60;
  globalThis.gc?.();
  const sounds: string[] = [];
  const decodeAt = performance.now();
  for (const [k, path] of files.entries()) {
    const sound = await extractSound(ffmpeg, { path, folder, name: `sound-${k}`, signal });
    if (!sound) throw new Error('it has sound');
    sounds.push(sound);
  }
  const decoding = (performance.now() - decodeAt) / 1000;
  const [old, heard] = sounds.map(openSoundFile);
  if (!old || !heard) throw new Error('there are two');
  const before = process.cpuUsage();
  let most = process.memoryUsage().rss;
  const turns = compareSound(old, heard);
  let turn = turns.next();
  while (!turn.done) {
    most = Math.max(most, process.memoryUsage().rss);
    turn = turns.next();
  }
  const used = process.cpuUsage(before);
  const comparing = (used.user + used.system) / 1e6;
  const { edits } = editListOf(turn.value);
  console.log(`decoding by ffmpeg   ${decoding.toFixed(1)} s`);
  console.log(
    `comparing            ${comparing.toFixed(1)} s of one core: ${(seconds / comparing).toFixed(0)} times as fast as playing`,
  );
  console.log(
    `both                 ${(seconds / (comparing + decoding)).toFixed(0)} times as fast as playing (aim: at least 300)`,
  );
  console.log(`ratio to decoding    ${(comparing / decoding).toFixed(2)}`);
  console.log(`most memory          ${(most / 1e6).toFixed(0)} MB (aim: below 500)`);
  console.log(
    `cuts found           ${edits.filter(({ kind }) => kind === 'cut').length} of ${Math.ceil(minutes / 10)}`,
  );
} finally {
  await rm(folder, { recursive: true, force: true });
}
