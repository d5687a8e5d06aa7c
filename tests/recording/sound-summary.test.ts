/** Peaks against arithmetic, pauses against ffmpeg's own silence detector, loudness against EBU Tech 3341. */
import { spawnSync } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findPauses, listenToSound } from '#lib/recording/sound-summary.ts';
import { examineFile, makeWithFfmpeg, testFfmpeg } from '#tests/support/clips.ts';

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'sound-'));
});
afterAll(() => rm(folder, { recursive: true }));

const bytesOf = (samples: readonly number[]): Uint8Array => new Uint8Array(Int16Array.from(samples).buffer);

describe('peaks', () => {
  it('are the largest absolute amplitude of each 50 ms', () => {
    const sound = listenToSound();
    const samples = new Array(1200).fill(0);
    samples[10] = 32_767;
    samples[399] = -100;
    samples[400] = -32_768;
    samples[900] = 16_384;
    sound.take(bytesOf(samples));
    expect([...sound.finish().peaks]).toEqual([255, 255, 128]);
  });
  it('of no sound are none', () => {
    expect(listenToSound().finish()).toEqual({ peaks: new Uint8Array(0), pauses: [], durationMs: 0 });
  });
  it('are the same however the bytes are cut', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -32_768, max: 32_767 }), { maxLength: 2000 }),
        fc.array(fc.integer({ min: 1, max: 900 }), { minLength: 1, maxLength: 20 }),
        (samples, cuts) => {
          const bytes = bytesOf(samples);
          const whole = listenToSound();
          whole.take(bytes);
          const parted = listenToSound();
          for (let at = 0, turn = 0; at < bytes.length; turn++) {
            const length = cuts[turn % cuts.length] ?? 1;
            parted.take(bytes.subarray(at, at + length));
            at += length;
          }
          expect(parted.finish()).toEqual(whole.finish());
        },
      ),
    );
  });
});

describe('pauses', () => {
  it('lie where ffmpeg’s silencedetect hears silence', async () => {
    const path = join(folder, 'speech-like.wav');
    // Noise that stops twice: from 2 to 3 s, and from 5 to 5.6 s.
    await makeWithFfmpeg(
      ...['-f', 'lavfi', '-i', 'anoisesrc=duration=8:amplitude=0.3:seed=7:sample_rate=16000'],
      ...['-af', "volume=0.002:enable='between(t,2,3)+between(t,5,5.6)'", path],
    );
    const result = await examineFile(await testFfmpeg(), path);
    if (!result.ok) throw new Error('refused');
    const heard = await makeWithFfmpeg(
      '-i',
      path,
      '-af',
      'silencedetect=noise=-40dB:duration=0.4',
      '-f',
      'null',
      '-',
    );
    const starts = [...heard.matchAll(/silence_start: ([\d.]+)/g)].map((match) => Number(match[1]) * 1000);
    const ends = [...heard.matchAll(/silence_end: ([\d.]+)/g)].map((match) => Number(match[1]) * 1000);
    const pauses = result.value.sound?.pauses ?? [];
    expect(pauses.length).toBe(2);
    expect(starts.length).toBe(2);
    pauses.forEach((pause, index) => {
      // Ours are cut to whole windows of 50 ms.
      expect(Math.abs(pause.startMs - (starts[index] ?? 0))).toBeLessThanOrEqual(75);
      expect(Math.abs(pause.endMs - (ends[index] ?? 0))).toBeLessThanOrEqual(75);
    });
  });
  it('are none in even sound, and all of it in silence', () => {
    expect(findPauses(new Float32Array(200).fill(-20))).toEqual([]);
    expect(findPauses(new Float32Array(200).fill(-90))).toEqual([{ startMs: 0, endMs: 10_000 }]);
  });
  it('shorter than 400 ms are none', () => {
    const levels = new Float32Array(200).fill(-20);
    levels.fill(-70, 50, 57);
    levels.fill(-70, 100, 120);
    expect(findPauses(levels)).toEqual([{ startMs: 5000, endMs: 6000 }]);
  });
});

it('a tone of 1 kHz at -23 dBFS in both channels measures -23 LUFS (EBU Tech 3341, case 1, within 0.1)', async () => {
  const path = join(folder, 'tone.wav');
  await makeWithFfmpeg(
    ...[
      '-f',
      'lavfi',
      '-i',
      'aevalsrc=pow(10\\,-23/20)*sin(2*PI*1000*t)|pow(10\\,-23/20)*sin(2*PI*1000*t):s=48000:d=20',
    ],
    ...['-c:a', 'pcm_s24le', path],
  );
  const result = await examineFile(await testFfmpeg(), path);
  if (!result.ok) throw new Error('refused');
  expect(result.value.loudnessLufs).toBeGreaterThanOrEqual(-23.1);
  expect(result.value.loudnessLufs).toBeLessThanOrEqual(-22.9);
});

it('the limits of memory and priority are in force where the machine has the tools', async () => {
  const { command } = await testFfmpeg();
  if (spawnSync('prlimit', ['--version']).error) return console.log('skipped: no prlimit on this machine');
  expect(command.join(' ')).toMatch(/prlimit .*--data=\d+.* -- .*nice -n 10/);
});
