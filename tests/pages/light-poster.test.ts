/** The poster of a public page: inside it where it is light, asked for where not, and never missing. */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createCanvas, loadImage } from '@napi-rs/canvas';
import { expect, onTestFinished, test } from 'vitest';
import { posterOf } from '#app/lesson-page/light-poster.ts';
import { publicAddresses } from '#app/lesson-page/page-addresses.ts';
import { writtenInPage } from '#app/lesson-page/poster-in-page.ts';
import type { MadeFile } from '#lib/lesson/made-files.ts';
import { drawPoster } from '#lib/recording/draw-poster.ts';
import { openLocalDisk } from '#lib/storage/local-disk.ts';

const addresses = publicAddresses('kettle-row', 'a-bracelet', 3, 'latest');
const elsewhere = publicAddresses('kettle-row', 'another-bracelet', 1, 'latest');
const posterKey = 'recordings/r/poster.jpg';
const storageKey = 'revisions/0123/poster.webp';
const ready: MadeFile = { name: 'poster.webp', state: 'ready', storageKey, sizeBytes: 1 };

async function anEmptyDisk() {
  const folder = await mkdtemp(join(tmpdir(), 'light-poster-'));
  onTestFinished(() => rm(folder, { recursive: true, force: true }));
  return openLocalDisk(folder);
}

/** A frame of a recording; the more strokes, the heavier it is. */
function aFrame(strokes: number): Uint8Array {
  const canvas = createCanvas(1280, 720);
  const context = canvas.getContext('2d');
  context.fillStyle = '#f7f4ec';
  context.fillRect(0, 0, 1280, 720);
  for (let at = 0; at < strokes; at++) {
    context.strokeStyle = `hsl(${(at * 47) % 360} 60% 50%)`;
    context.strokeRect((at * 131) % 1280, (at * 89) % 720, 20 + (at % 40), 15 + (at % 30));
  }
  return canvas.toBuffer('image/jpeg', 90);
}

test('a light poster stands in the page, the very bytes that were drawn', async () => {
  const disk = await anEmptyDisk();
  const drawn = await drawPoster(aFrame(12));
  await disk.put(storageKey, drawn);
  const address = await posterOf(disk, { posterKey, madeFiles: [ready] }, addresses);
  expect(address).toBe(addresses.madeFile('poster.webp'));
  const [head, bytes] = writtenInPage(address ?? '').split(',');
  expect(head).toBe('data:image/webp;base64');
  expect(Buffer.from(bytes ?? '', 'base64').equals(drawn)).toBe(true);
  const picture = await loadImage(drawn);
  expect([picture.width, picture.height]).toEqual([800, 450]);
});

test('one that is not light, not drawn yet or gone from the disk is asked for by its address', async () => {
  const disk = await anEmptyDisk();
  const asked = (madeFiles: readonly MadeFile[]) => posterOf(disk, { posterKey, madeFiles }, addresses);
  expect(await asked([])).toBe(addresses.poster);
  expect(await asked([{ name: 'poster.webp', state: 'waiting' }])).toBe(addresses.poster);
  expect(await asked([ready])).toBe(addresses.poster);
  await disk.put(storageKey, new Uint8Array(200_000));
  const heavy = await posterOf(disk, { posterKey, madeFiles: [ready] }, elsewhere);
  expect(heavy).toBe(elsewhere.madeFile('poster.webp'));
  expect(writtenInPage(heavy ?? '')).toBe(heavy);
  expect(await posterOf(disk, { posterKey: null, madeFiles: [ready] }, addresses)).toBeNull();
});

test('a busy picture is drawn lighter, the same each time', async () => {
  const [calm, busy] = await Promise.all([drawPoster(aFrame(12)), drawPoster(aFrame(900))]);
  const again = await drawPoster(aFrame(900));
  expect(Buffer.from(again).equals(busy)).toBe(true);
  const image = await loadImage(aFrame(900));
  const canvas = createCanvas(800, 450);
  const context = canvas.getContext('2d');
  context.imageSmoothingQuality = 'high';
  context.drawImage(image, 0, 0, 800, 450);
  expect(busy.length).toBeLessThan(canvas.toBuffer('image/webp', 68).length);
  expect(calm.length).toBeLessThan(12_000);
});
