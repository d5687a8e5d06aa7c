/**
 * Makes the demo lesson's recording: `node prisma/demo/make-recording.ts`.
 * Run by hand when the narration or a picture changes; needs espeak-ng, ffmpeg
 * and Chromium. Writes recording.mp4, recording.vtt (what an automatic
 * transcript would hear) and moments.json (when each piece is spoken).
 */
import { execFileSync, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium, type Page } from 'playwright-core';
import { HEIGHT, SCENES, WIDTH } from './scenes.ts';
import { readNarration, type Spoken, speak, waveFile } from './voice.ts';

/** Pictures a second while something moves. */
const RATE = 12;

const here = (name: string) => fileURLToPath(new URL(name, import.meta.url));
const { samples, spoken } = speak(readNarration(here('narration.json')));
const lengthMs = Math.round((samples.length / 22_050) * 1000);

const work = mkdtempSync(join(tmpdir(), 'demo-recording-'));
try {
  writeFileSync(join(work, 'voice.wav'), waveFile(samples));
  await film(spoken, lengthMs, join(work, 'picture.mp4'));
  execFileSync('ffmpeg', [
    ...['-v', 'error', '-y', '-i', join(work, 'picture.mp4'), '-i', join(work, 'voice.wav')],
    ...['-map', '0:v', '-map', '1:a', '-c:v', 'copy', '-c:a', 'aac', '-b:a', '48k', '-ar', '44100'],
    ...['-af', 'highpass=f=80,lowpass=f=7500,volume=0.9', '-movflags', '+faststart'],
    ...['-map_metadata', '-1', '-fflags', '+bitexact', '-flags:v', '+bitexact', '-flags:a', '+bitexact'],
    here('recording.mp4'),
  ]);
  writeFileSync(here('recording.vtt'), transcript(spoken));
  const moments = Object.fromEntries(spoken.map(({ id, startMs, endMs }) => [id, [startMs, endMs]]));
  writeFileSync(here('moments.json'), `${JSON.stringify(moments, null, 2)}\n`);
} finally {
  rmSync(work, { recursive: true, force: true });
}

/** Draws every picture and pipes it into the encoder, each as often as it stays. */
async function film(pieces: readonly Spoken[], endMs: number, out: string): Promise<void> {
  const browser = await chromium.launch({
    executablePath: '/usr/bin/chromium',
    args: ['--no-sandbox', '--disable-gpu', '--force-color-profile=srgb'],
  });
  const page = await browser.newPage({ viewport: { width: WIDTH, height: HEIGHT } });
  await page.setContent(`<style>${style()}</style><main></main>`);
  const encoder = spawn(
    'ffmpeg',
    [
      ...['-v', 'error', '-y', '-f', 'image2pipe', '-framerate', String(RATE), '-c:v', 'png', '-i', 'pipe:0'],
      ...[
        '-c:v',
        'libx264',
        '-preset',
        'slower',
        '-tune',
        'animation',
        '-crf',
        '29',
        '-g',
        String(RATE * 20),
      ],
      ...['-threads', '1', '-pix_fmt', 'yuv420p', '-an', out],
    ],
    { stdio: ['pipe', 'inherit', 'inherit'] },
  );
  const ended = once(encoder, 'close');
  let last = '';
  let picture: Buffer = Buffer.alloc(0);
  for (let frame = 0; frame * 1000 < endMs * RATE; frame += 1) {
    const svg = pictureAt(pieces, (frame * 1000) / RATE);
    if (svg !== last) picture = await photograph(page, svg);
    last = svg;
    if (!encoder.stdin.write(picture)) await once(encoder.stdin, 'drain');
  }
  encoder.stdin.end();
  await ended;
  await browser.close();
}

function pictureAt(pieces: readonly Spoken[], ms: number): string {
  const current = pieces.findLast((piece) => piece.startMs - 200 <= ms) ?? pieces[0];
  if (!current) throw new Error('the narration is empty');
  const scene = SCENES[current.scene];
  if (!scene) throw new Error(`no scene is called ${current.scene}`);
  // A scene runs on through the pieces that share it.
  const first = pieces.find((piece) => piece.scene === current.scene) ?? current;
  const span = first.endMs - first.startMs + 500;
  const moved = scene.moving ? Math.min(1, Math.max(0, (ms - first.startMs) / span)) : 1;
  return scene.draw(moved);
}

async function photograph(page: Page, svg: string): Promise<Buffer> {
  await page.evaluate((markup) => {
    const main = document.querySelector('main');
    if (main) main.innerHTML = markup;
    return document.fonts.ready.then(() => undefined);
  }, svg);
  return page.screenshot({ type: 'png' });
}

function style(): string {
  const font = (name: string) =>
    readFileSync(here(`../../node_modules/@fontsource-variable/${name}`)).toString('base64');
  const face = (family: string, name: string) =>
    `@font-face{font-family:${family};src:url(data:font/woff2;base64,${font(name)})}`;
  return [
    face('Read', 'literata/files/literata-latin-wght-normal.woff2'),
    face('Work', 'hanken-grotesk/files/hanken-grotesk-latin-wght-normal.woff2'),
    'body{margin:0}svg{display:block}text{text-anchor:middle;fill:#25211b}',
    '.title{font:600 62px Read}.under{font:400 34px Read;fill:#5c554a}',
    '.measure{font:600 32px Work;fill:#1d675a}.figure{font:500 22px Work}',
  ].join('');
}

/** WebVTT with the words as an automatic transcript would have heard them. */
function transcript(pieces: readonly Spoken[]): string {
  const cues = pieces.map(
    ({ id, heard, startMs, endMs }) => `${id}\n${stamp(startMs)} --> ${stamp(endMs)}\n${heard}\n`,
  );
  return `WEBVTT\n\n${cues.join('\n')}`;
}

/** WebVTT's `00:01:02.345`. */
function stamp(ms: number): string {
  return new Date(ms).toISOString().slice(11, 23);
}
