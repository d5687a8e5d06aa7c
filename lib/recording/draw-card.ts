/**
 * The picture that stands for a lesson where somebody links to it: its poster,
 * or its weave, beside its name. Drawn with Skia by the worker, with the fonts
 * of the pages; the same lesson gives the same bytes. Signs that these lack are
 * left out.
 */
import type { Image, SKRSContext2D } from '@napi-rs/canvas';
import { CARD_SIZE } from '#lib/lesson/made-files.ts';
import { cardFaces, cardSigns } from './card-signs.ts';

export interface CardWords {
  readonly title: string;
  readonly workshop: string;
  /** Below the title: the weave, how hard it is. */
  readonly facts: string;
}

/** A drawing has some paper round it; an upright photograph fills its half, any other is shown whole. */
export interface CardPicture {
  readonly bytes: Uint8Array;
  readonly how: 'photograph' | 'drawing';
}

const EDGE = 56;
const PICTURE_WIDTH = 600;
const COLOURS = { paper: '#f8f4ec', sheet: '#fffdf8', ink: '#25211b', soft: '#5c554a', copper: '#96461b' };

// Loaded when the first card is drawn: it brings a drawing engine of 30 MB.
const load = async () => {
  const skia = await import('@napi-rs/canvas');
  const { read, work } = await cardFaces();
  const registered = (faces: typeof read): string => {
    for (const { family, path } of faces) skia.GlobalFonts.registerFromPath(path, family);
    return faces.map(({ family }) => `"${family}"`).join(', ');
  };
  return { ...skia, read: registered(read), work: registered(work), signs: await cardSigns() };
};
let loaded: ReturnType<typeof load> | null = null;

/** PNG, 1200 × 630. */
export async function drawCard(words: CardWords, picture: CardPicture | null): Promise<Uint8Array> {
  loaded ??= load();
  const { createCanvas, loadImage, read, work, signs } = await loaded;
  const workshop = signs.shown(words.workshop);
  const facts = signs.shown(words.facts);
  const canvas = createCanvas(CARD_SIZE.width, CARD_SIZE.height);
  const context = canvas.getContext('2d');
  context.fillStyle = COLOURS.paper;
  context.fillRect(0, 0, CARD_SIZE.width, CARD_SIZE.height);
  if (picture) place(context, await loadImage(picture.bytes), picture.how);
  context.fillStyle = COLOURS.copper;
  context.fillRect(0, CARD_SIZE.height - 14, CARD_SIZE.width, 14);
  const room = CARD_SIZE.width - 2 * EDGE - (picture ? PICTURE_WIDTH : 0);
  context.textBaseline = 'alphabetic';
  context.font = `500 30px ${work}`;
  context.fillText(cut(context, workshop, room), EDGE, EDGE + 30);
  context.fillStyle = COLOURS.soft;
  context.fillText(cut(context, facts, room), EDGE, CARD_SIZE.height - EDGE - 14);
  context.fillStyle = COLOURS.ink;
  // A title in letters that no face has gives way to what can be read.
  writeTitle(context, signs.shown(words.title) || facts || workshop, room, read);
  // At once and not in a thread of its own: letters drawn in two threads at a time end the process.
  return canvas.toBuffer('image/png');
}

function place(context: SKRSContext2D, image: Image, how: CardPicture['how']): void {
  const left = CARD_SIZE.width - PICTURE_WIDTH;
  const box = { width: PICTURE_WIDTH, height: CARD_SIZE.height };
  context.save();
  context.beginPath();
  context.rect(left, 0, box.width, box.height);
  context.clip();
  context.fillStyle = how === 'drawing' ? COLOURS.sheet : COLOURS.ink;
  context.fillRect(left, 0, box.width, box.height);
  const inside = how === 'drawing' ? 40 : 0;
  const scales = [(box.width - 2 * inside) / image.width, (box.height - 2 * inside) / image.height];
  const fills = how === 'photograph' && image.height >= image.width;
  const scale = fills ? Math.max(...scales) : Math.min(...scales);
  const [width, height] = [image.width * scale, image.height * scale];
  context.drawImage(image, left + (box.width - width) / 2, (box.height - height) / 2, width, height);
  context.restore();
}

const SIZES = [72, 64, 56, 48, 42];
const TITLE_ROOM = 360;

/** As large as all of it fits; of one that fits at no size, as much as does. */
function writeTitle(context: SKRSContext2D, title: string, room: number, face: string): void {
  for (const size of SIZES) {
    context.font = `600 ${size}px ${face}`;
    const height = Math.round(size * 1.18);
    const most = Math.floor(TITLE_ROOM / height);
    const lines = wrap(context, title, room);
    const isLast = size === SIZES.at(-1);
    if ((lines.length > most || lines.some((line) => context.measureText(line).width > room)) && !isLast)
      continue;
    const shown = lines.slice(0, most);
    if (lines.length > most) shown.push(`${shown.pop() ?? ''} …`);
    const top = EDGE + 30 + 70 + size * 0.75;
    for (const [index, line] of shown.entries())
      context.fillText(cut(context, line, room), EDGE, top + index * height);
    return;
  }
}

function wrap(context: SKRSContext2D, text: string, room: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(/\s+/).filter((one) => one !== '')) {
    const line = lines.at(-1);
    const longer = line === undefined ? word : `${line} ${word}`;
    if (line !== undefined && context.measureText(longer).width <= room) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}

/** A line that fits, with an ellipsis where something is left out. */
function cut(context: SKRSContext2D, line: string, room: number): string {
  if (context.measureText(line).width <= room) return line;
  const signs = [...line.slice(0, 400)];
  while (signs.length > 1 && context.measureText(`${signs.join('')}…`).width > room) signs.pop();
  return `${signs.join('')}…`;
}
