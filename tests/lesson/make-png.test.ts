/** PNGs of drawn pictures, read back by their header (PNG specification, W3C, section 11.2.2) and their pixels. */
import { createRequire } from 'node:module';
import { createCanvas, GlobalFonts, loadImage } from '@napi-rs/canvas';
import { expect, test } from 'vitest';
import { pngOf, SOCIAL } from '#app/pictures/make-png.ts';
import { drawRings } from '#lib/weave/picture/draw-rings.ts';
import { framePicture } from '#lib/weave/picture/frame-picture.ts';
import { viewAt } from '#lib/weave/picture/view.ts';

const blueRing = framePicture(
  drawRings(
    [
      {
        ring: { centre: [0, 0, 0], normal: [0, 0, 1], radius: 3, wire: 1 },
        colour: '#2b4fb0',
        role: 'plain',
      },
    ],
    viewAt(0),
  ),
  { title: 'One ring', description: 'One ring, seen from the front.' },
);

const sizeIn = (png: Uint8Array): readonly [number, number] => {
  const view = new DataView(png.buffer, png.byteOffset);
  expect([...png.slice(1, 4)]).toEqual([...Buffer.from('PNG')]);
  return [view.getUint32(16), view.getUint32(20)];
};

async function pixel(png: Uint8Array, x: number, y: number): Promise<readonly number[]> {
  const image = await loadImage(Buffer.from(png));
  const canvas = createCanvas(image.width, image.height);
  const context = canvas.getContext('2d');
  context.drawImage(image, 0, 0);
  return [...context.getImageData(x, y, 1, 1).data];
}

test('to print: 150 mm at 300 dots to the inch on the longer side, paper in the opening, wire round it', async () => {
  const png = await pngOf(blueRing, null);
  expect(sizeIn(png)).toEqual([1772, 1772]);
  expect(await pixel(png, 886, 886)).toEqual([0xff, 0xfd, 0xf8, 0xff]);
  // The middle of the wire at the right: 36 of a half width of 42 + 14 units.
  const [red = 0, , blue = 0] = await pixel(png, Math.round(886 + (36 / 56) * 886), 886);
  expect(blue).toBeGreaterThan(red + 60);
});

test('for networks: their size, the picture whole and in the middle', async () => {
  const png = await pngOf(blueRing, SOCIAL);
  expect(sizeIn(png)).toEqual([1200, 630]);
  expect(await pixel(png, 5, 315)).toEqual([0xff, 0xfd, 0xf8, 0xff]);
  expect(await pixel(png, 600, 315)).toEqual([0xff, 0xfd, 0xf8, 0xff]);
  const [red = 0, , blue = 0] = await pixel(png, Math.round(600 + (36 / 56) * 0.45 * 630), 315);
  expect(blue).toBeGreaterThan(red + 60);
});

test('copies that are placed again and again are drawn at every place, cut where the picture cuts them', async () => {
  const bar = '<rect x="0" y="0" width="40" height="20" fill="#2b4fb0"/>';
  const cut = '<clipPath id="c"><rect x="0" y="0" width="10" height="20"/></clipPath>';
  const placed = [10, 60].map((x) => `<use href="#s0" x="${x}" y="0"/>`).join('');
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="100" height="20" viewBox="0 0 100 20"><defs>${cut}<g id="s0" clip-path="url(#c)">${bar}</g></defs>${placed}</svg>`;
  const png = await pngOf(svg, null);
  const isBlue = async (x: number): Promise<boolean> => ((await pixel(png, x, 170))[0] ?? 255) < 100;
  const seen = await Promise.all([15, 30, 65, 80].map((x) => isBlue(Math.round(x * 17.72))));
  expect(seen).toEqual([true, false, true, false]);
});

test('numbers are drawn in the face that comes along, whatever the machine has', async () => {
  const numbered = (face: string): string =>
    `<svg xmlns="http://www.w3.org/2000/svg" width="100" height="50" viewBox="0 0 100 50"><text x="50" y="40" font-size="40" font-weight="700" font-family="${face}" text-anchor="middle" fill="#000">12</text></svg>`;
  const drawn = await pngOf(numbered('sans-serif'), null);
  const bold = createRequire(import.meta.url).resolve('dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf');
  GlobalFonts.registerFromPath(bold, 'Only In This Test');
  expect(drawn).toEqual(await pngOf(numbered('Only In This Test'), null));
});
