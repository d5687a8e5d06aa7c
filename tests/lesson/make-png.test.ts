/** PNGs of drawn pictures, read back by their header (PNG specification, W3C, section 11.2.2) and their pixels. */
import { createCanvas, loadImage } from '@napi-rs/canvas';
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
