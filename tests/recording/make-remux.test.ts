/**
 * Copies of a recording with captions and chapters inside, read back by
 * ffmpeg, which knows nothing of how they were made: ISO/IEC 14496-12 and
 * 3GPP TS 26.245 (MP4), RFC 9559 (Matroska).
 */
import { execFile } from 'node:child_process';
import { mkdir, mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readChapters } from '#lib/chapters/chapters-read.ts';
import type { Content } from '#lib/lesson/content.ts';
import { makeRemux, remuxKey, remuxParts } from '#lib/recording/make-remux.ts';
import { languageCode, type RemuxEnding } from '#lib/recording/plan-remux.ts';
import type { Cue } from '#lib/transcript/cue.ts';
import { readTranscript } from '#lib/transcript/read-transcript.ts';
import { aContent } from '#tests/support/a-content.ts';
import { makeWithFfmpeg, testFfmpeg } from '#tests/support/clips.ts';

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'copies-'));
});
afterAll(() => rm(folder, { recursive: true }));

const run = promisify(execFile);
async function ffmpegOutput(...args: string[]): Promise<Buffer> {
  const program = process.env['FFMPEG_BIN'] ?? 'ffmpeg';
  const options = { encoding: 'buffer', maxBuffer: 2 ** 26 } as const;
  return (await run(program, ['-nostdin', '-v', 'error', ...args, '-'], options)).stdout;
}

const SECONDS = 20;
const clips: Record<string, { args: string[]; type: string; hasVideo: boolean }> = {
  // Pictures out of order, and sound that begins before its beginning, as encoders make them.
  'picture.mp4': {
    args: [
      ...['-f', 'lavfi', '-i', `testsrc=size=160x90:rate=25:duration=${SECONDS}`],
      ...['-f', 'lavfi', '-i', `sine=frequency=440:duration=${SECONDS}`],
      ...['-c:v', 'libx264', '-preset', 'veryfast', '-bf', '3', '-c:a', 'aac', '-movflags', '+faststart'],
    ],
    type: 'video/mp4',
    hasVideo: true,
  },
  'late.mp4': {
    args: [
      ...['-f', 'lavfi', '-i', `testsrc=size=160x90:rate=25:duration=${SECONDS}`],
      ...['-c:v', 'libx264', '-preset', 'veryfast', '-output_ts_offset', '0.7', '-movflags', '+faststart'],
    ],
    type: 'video/mp4',
    hasVideo: true,
  },
  'sound.m4a': {
    args: ['-f', 'lavfi', '-i', `sine=frequency=440:duration=${SECONDS}`, '-c:a', 'aac', '-f', 'mp4'],
    type: 'audio/mp4',
    hasVideo: false,
  },
  'sound.mp3': {
    args: ['-f', 'lavfi', '-i', `sine=frequency=440:duration=${SECONDS}`],
    type: 'audio/mpeg',
    hasVideo: false,
  },
};

const cue = (id: string, startMs: number, endMs: number, text: string): Cue => ({
  id,
  startMs,
  endMs,
  text,
  settings: '',
});
const cues = [
  cue('a', 1_001, 2_999, 'Take an 18 gauge ring.'),
  cue('b', 2_999, 3_333, 'Close it: ½ turn,\nno gap. 🧵'),
  cue('c', 7_007, 12_345, '18'),
  cue('d', 19_001, 19_999, 'The end'),
];
const chapters: Content['chapters'] = [
  { id: 'x', kind: 'opening', title: 'Welcome; a=b #1 \\ ½', startMs: 0 },
  { id: 'y', kind: 'repeat unit', title: 'The repeat unit', startMs: 5_017 },
  { id: 'z', kind: 'finishing', title: 'Verschluss schließen, 輪を閉じる', startMs: 12_346 },
];

const recordingOf = (name: string) => ({
  id: 'r',
  durationMs: SECONDS * 1000,
  hasVideo: clips[name]?.hasVideo ?? true,
  hasAudio: true,
  width: 160,
  height: 90,
  mediaType: clips[name]?.type ?? '',
  mediaKey: `recordings/r/${name}`,
  posterKey: null,
});

let made = 0;
async function copyOf(
  name: string,
  ending: RemuxEnding,
  over: { cues?: readonly Cue[]; chapters?: Content['chapters'] } = {},
) {
  const source = join(folder, name);
  const clip = clips[name];
  if (!clip) throw new Error(name);
  if (!(await readFile(source).catch(() => null))) await makeWithFfmpeg(...clip.args, source);
  const own = join(folder, `run-${made++}`);
  await mkdir(own);
  const recording = recordingOf(name);
  const content = aContent({ title: 'Byzantine bracelet', chapters: over.chapters ?? chapters });
  const parts = remuxParts(ending, { recording, content, cues: over.cues ?? cues });
  const path = await makeRemux(await testFfmpeg(), ending, {
    recording,
    parts,
    path: source,
    folder: own,
    signal: AbortSignal.timeout(60_000),
  });
  return { path, source, key: remuxKey(ending, recording, parts) };
}

async function captionsIn(path: string): Promise<readonly (readonly [number, number, string])[]> {
  const srt = await ffmpegOutput('-copyts', '-i', path, '-map', '0:s:0', '-f', 'srt');
  const read = readTranscript(new Uint8Array(srt), { recordingMs: null, newId: () => 'id' });
  if (!read.ok || read.value.kind !== 'read') throw new Error('ffmpeg gave no SRT');
  return read.value.cues.map(({ startMs, endMs, text }) => [startMs, endMs, text] as const);
}

async function chaptersIn(path: string): Promise<readonly (readonly [number, string])[]> {
  const text = (await ffmpegOutput('-copyts', '-i', path, '-f', 'ffmetadata')).toString();
  return readChapters(text, () => 'id').chapters.map(({ startMs, title }) => [startMs, title] as const);
}

const ENDINGS = ['mp4', 'mkv'] as const;

describe.each(ENDINGS)('%s', (ending) => {
  test.each(Object.keys(clips))('%s: captions and chapters come back to the millisecond', async (name) => {
    const { path } = await copyOf(name, ending);
    expect(await captionsIn(path)).toEqual(cues.map(({ startMs, endMs, text }) => [startMs, endMs, text]));
    expect(await chaptersIn(path)).toEqual(chapters.map(({ startMs, title }) => [startMs, title]));
  });

  test('a first chapter that begins later does so in the copy', async () => {
    const later = chapters.slice(1);
    const { path } = await copyOf('picture.mp4', ending, { chapters: later });
    // MP4 cannot leave the beginning out: it gets the lesson's name there.
    const before = ending === 'mp4' ? [[0, 'Byzantine bracelet']] : [];
    expect(await chaptersIn(path)).toEqual([
      ...before,
      ...later.map(({ startMs, title }) => [startMs, title]),
    ]);
  });

  test('pictures are those of the recording, bit by bit, at their times', async () => {
    const { path, source } = await copyOf('picture.mp4', ending);
    const packets = async (file: string) =>
      (await ffmpegOutput('-i', file, '-map', '0:v', '-c', 'copy', '-f', 'streamhash')).toString();
    expect(await packets(path)).toBe(await packets(source));
    const times = async (file: string) =>
      (await ffmpegOutput('-copyts', '-i', file, '-map', '0:v', '-f', 'framemd5'))
        .toString()
        .split('\n')
        .filter((line) => !line.startsWith('#'));
    // Frames of 40 ms, counted by their own rate.
    expect(await times(path)).toEqual(await times(source));
  });

  test('the same content gives the same bytes and the same place', async () => {
    const [one, other] = [await copyOf('picture.mp4', ending), await copyOf('picture.mp4', ending)];
    expect((await readFile(one.path)).equals(await readFile(other.path))).toBe(true);
    expect(one.key).toBe(other.key);
    const changed = await copyOf('picture.mp4', ending, { cues: cues.slice(1) });
    expect(changed.key).not.toBe(one.key);
  });

  test('the spoken language is named', async () => {
    const { path } = await copyOf('picture.mp4', ending);
    expect(await makeWithFfmpeg('-i', path, '-f', 'null', '-')).toMatch(/Stream #0:2\S*\(eng\): Subtitle/);
  });
});

test('words that look like marking stay words in MP4', async () => {
  const hostile = ['<b>bold</b> {\\an8}\\N x', '<img src=x onerror=alert(1)>', '{y:i}a', 'a \\h b &amp; <i>'];
  const { path } = await copyOf('picture.mp4', 'mp4', {
    cues: hostile.map((text, at) => cue(`h${at}`, at * 1_000, at * 1_000 + 500, text)),
  });
  const samples = await ffmpegOutput('-i', path, '-map', '0:s:0', '-c', 'copy', '-f', 'data');
  const texts: string[] = [];
  for (let at = 0; at < samples.length; ) {
    const length = samples.readUInt16BE(at);
    if (length > 0) texts.push(samples.toString('utf8', at + 2, at + 2 + length));
    at += 2 + length;
  }
  expect(texts).toEqual(hostile);
});

test('captions at the same time stand below each other in MP4', async () => {
  const { path } = await copyOf('picture.mp4', 'mp4', {
    cues: [cue('a', 1_000, 4_000, 'above'), cue('b', 2_000, 5_000, 'below')],
  });
  expect(await captionsIn(path)).toEqual([
    [1_000, 2_000, 'above'],
    [2_000, 4_000, 'above\nbelow'],
    [4_000, 5_000, 'below'],
  ]);
});

test('a recording of which nothing is written down still gets its chapters', async () => {
  const { path } = await copyOf('picture.mp4', 'mkv', { cues: [] });
  expect(await chaptersIn(path)).toHaveLength(3);
});

// Codes of ISO 639-2/T beside those of ISO 639-1, from the Library of Congress's list (from memory).
test.each([
  ['en', 'eng'],
  ['en-GB', 'eng'],
  ['de', 'deu'],
  ['fr-CA', 'fra'],
  ['nl', 'nld'],
  ['ja', 'jpn'],
  ['cs', 'ces'],
  ['cy', 'cym'],
  ['gsw', 'gsw'],
  ['not a tag', null],
])('%s is %s', (tag, code) => {
  expect(languageCode(tag)).toBe(code);
});
