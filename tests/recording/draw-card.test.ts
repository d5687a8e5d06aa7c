/** The picture for links, decoded again: its size, its parts, and the same bytes for the same lesson. */
import { createCanvas, loadImage } from '@napi-rs/canvas';
import { expect, test } from 'vitest';
import { cardSigns } from '#lib/recording/card-signs.ts';
import { type CardPicture, drawCard } from '#lib/recording/draw-card.ts';

const words = { title: 'Byzantine bracelet', workshop: 'Kettle Row Rings', facts: 'byzantine' };
const blue = createCanvas(320, 180);
const paint = blue.getContext('2d');
paint.fillStyle = '#0000ff';
paint.fillRect(0, 0, 320, 180);
const photograph: CardPicture = { bytes: blue.toBuffer('image/jpeg'), how: 'photograph' };

async function pixelsOf(png: Uint8Array) {
  const image = await loadImage(png);
  const context = createCanvas(image.width, image.height).getContext('2d');
  context.drawImage(image, 0, 0);
  const at = (x: number, y: number) => [...context.getImageData(x, y, 1, 1).data];
  const dark = (left: number, width: number) => {
    const { data } = context.getImageData(left, 0, width, image.height - 20);
    let count = 0;
    for (let index = 0; index < data.length; index += 4) if ((data[index] ?? 255) < 90) count += 1;
    return count;
  };
  return { width: image.width, height: image.height, at, dark };
}

test('holds the name on the left and the picture on the right', async () => {
  const { width, height, at, dark } = await pixelsOf(await drawCard(words, photograph));
  expect([width, height]).toEqual([1200, 630]);
  const [red = 0, , blueOfPicture = 0] = at(900, 315);
  expect(blueOfPicture).toBeGreaterThan(200);
  expect(red).toBeLessThan(60);
  expect(dark(0, 590)).toBeGreaterThan(2_000);
});

test('a lesson without a picture has its name across', async () => {
  const long = { ...words, title: 'Byzantine bracelet in copper and aluminium' };
  const { dark } = await pixelsOf(await drawCard(long, null));
  expect(dark(640, 560)).toBeGreaterThan(500);
});

test('a drawing is shown', async () => {
  const svg =
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 40"><rect width="40" height="40" fill="#000"/></svg>';
  const { at } = await pixelsOf(
    await drawCard(words, { bytes: new TextEncoder().encode(svg), how: 'drawing' }),
  );
  expect(at(900, 315).slice(0, 3)).toEqual([0, 0, 0]);
});

test('the same lesson gives the same bytes; no title is too long or too strange', async () => {
  const strange = { ...words, title: `${'輪🧵 \u202E'.repeat(60)}${'W'.repeat(200)}` };
  const [one, other] = [await drawCard(strange, photograph), await drawCard(strange, photograph)];
  expect(Buffer.from(one).equals(Buffer.from(other))).toBe(true);
});

test('signs that no face has are left out, and a title of nothing else gives way', async () => {
  const card = async (title: string) => Buffer.from(await drawCard({ ...words, title }, photograph));
  const plain = await card('Byzantine bracelet');
  for (const title of ['輪 Byzantine 🧵🏽 bracelet ⚒️👩‍🏭', '編み輪Byzantine bracelet 🪡'])
    expect(plain.equals(await card(title.replace('⚒️', ''))), title).toBe(true);
  expect((await card('編み輪の腕輪 🪡')).equals(await card(words.facts))).toBe(true);
  // Letters of these alphabets are in the faces, and stay.
  for (const title of ['Византийский браслет', 'Βυζαντινό βραχιόλι', 'צמיד', 'Հայաստան'])
    expect((await card(title)).equals(await card('')), title).toBe(false);
});

test('tells which signs a card leaves out', async () => {
  const { lostIn } = await cardSigns();
  expect(lostIn('Ring 輪輪 ✓ 🧵 Žluťoučký Ελληνικά шнур')).toEqual(['輪', '🧵']);
});

// Skia draws letters for one thread at a time: drawn in two, they ended the process within a few dozen cards.
test('many cards at a time are drawn one after the other, each the same as alone', async () => {
  const words = { title: 'A long title that goes over more than one line', workshop: 'Withy', facts: 'box' };
  const alone = Buffer.from(await drawCard(words, null));
  const together = await Promise.all(Array.from({ length: 60 }, () => drawCard(words, null)));
  for (const card of together) expect(alone.equals(card)).toBe(true);
});
