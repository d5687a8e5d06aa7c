/**
 * What comparing a long recording with its re-edited copy costs: how many times
 * faster than both play, on one core and with decoding, and how much memory.
 * The reference beside it is ffmpeg decoding the same two files. Run it with
 * `npx node tests/bench/retiming.bench.ts [minutes]`; 120 is the full length.
 * Aims: at least 300 times as fast as playing, below 500 MB.
 */
import { execFileSync } from 'node:child_process';
import { appendFileSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { extractSound, openSoundFile } from '#lib/recording/sound-file.ts';
import { compareSound } from '#lib/retiming/compare-sound.ts';
import { editListOf } from '#lib/retiming/edit-list.ts';
import { MADE_RATE, mix, speak, VOICES, workshop } from '#tests/retiming/made-sound.ts';
import { testFfmpeg } from '#tests/support/clips.ts';

const [, , first = '5', ...rest] = process.argv;

/** Compares two files of plain samples; in a process of its own, so that what made them does not count. */
function compare([oldPath = '', newPath = '']: readonly string[]): void {
  const old = openSoundFile(oldPath);
  const heard = openSoundFile(newPath);
  const before = process.cpuUsage();
  const turns = compareSound(old, heard);
  let turn = turns.next();
  while (!turn.done) turn = turns.next();
  const used = process.cpuUsage(before);
  const { edits } = editListOf(turn.value);
  const cuts = edits.filter(({ kind }) => kind === 'cut').length;
  const seconds = (used.user + used.system) / 1e6;
  console.log(JSON.stringify({ seconds, megabytes: process.resourceUsage().maxRSS / 1000, cuts }));
}

/** A recording and its re-edited copy: 8 s are taken out of the middle of every ten minutes. */
function make(minutes: number, folder: string): readonly string[] {
  const [voice = { pitch: 110, mouth: 1, syllablesPerSecond: 4 }] = VOICES;
  const raw = ['old', 'new'].map((name) => join(folder, `${name}.pcm`));
  for (let part = 0; part * 10 < minutes; part++) {
    const seconds = Math.min(10, minutes - part * 10) * 60;
    const sound = mix([speak(voice, seconds, 900 + part), 1], [workshop(seconds, 950 + part), 0.6]);
    const samples = Int16Array.from(sound, (value) => value * 32_000);
    const at = (seconds / 2) * MADE_RATE;
    appendFileSync(raw[0] ?? '', bytesOf(samples));
    appendFileSync(raw[1] ?? '', bytesOf(samples.subarray(0, at)));
    appendFileSync(raw[1] ?? '', bytesOf(samples.subarray(at + 8 * MADE_RATE)));
  }
  return raw.map((path, k) => {
    const input = ['-f', 's16le', '-ar', String(MADE_RATE), '-ac', '1', '-i', path];
    const encode = ['-c:a', 'aac', '-b:a', k === 0 ? '96k' : '48k', `${path}.m4a`];
    execFileSync(process.env['FFMPEG_BIN'] ?? 'ffmpeg', ['-v', 'error', '-y', ...input, ...encode]);
    return `${path}.m4a`;
  });
}

const bytesOf = (samples: Int16Array): Uint8Array =>
  new Uint8Array(samples.buffer, samples.byteOffset, samples.byteLength);

async function measure(minutes: number): Promise<void> {
  const folder = await mkdtemp(join(tmpdir(), 'retiming-bench-'));
  try {
    console.log(`Making ${minutes} minutes twice …`);
    const files = make(minutes, folder);
    const ffmpeg = await testFfmpeg();
    const signal = AbortSignal.timeout(3_600_000);
    const decodeAt = performance.now();
    const sounds: string[] = [];
    for (const [k, path] of files.entries()) {
      const sound = await extractSound(ffmpeg, { path, folder, name: `sound-${k}`, signal });
      if (!sound) throw new Error('it has sound');
      sounds.push(sound);
    }
    const decoding = (performance.now() - decodeAt) / 1000;
    const told = execFileSync(process.execPath, [import.meta.filename, 'compare', ...sounds]).toString();
    const { seconds, megabytes, cuts } = JSON.parse(told) as {
      seconds: number;
      megabytes: number;
      cuts: number;
    };
    const playing = 2 * minutes * 60;
    const times = (taken: number): string => `${(playing / taken).toFixed(0)} times as fast as playing`;
    console.log(`decoding by ffmpeg   ${decoding.toFixed(1)} s`);
    console.log(`comparing            ${seconds.toFixed(1)} s of one core: ${times(seconds)}`);
    console.log(`both                 ${times(seconds + decoding)} (aim: at least 300)`);
    console.log(`ratio to decoding    ${(seconds / decoding).toFixed(2)}`);
    console.log(`most memory          ${megabytes.toFixed(0)} MB, the whole process (aim: below 500)`);
    console.log(`cuts found           ${cuts} of ${Math.ceil(minutes / 10)}`);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

if (first === 'compare') compare(rest);
else await measure(Number(first));
