/**
 * A drawn picture as PNG, for print and for those who show a page's picture
 * beside its address. Drawn in native code that is loaded with the first one.
 */

import { faces } from '#app/paper/signs.ts';

/** The paper that pictures lie on. */
const PAPER = '#fffdf8';

export interface PngSize {
  /** Pixels. */
  readonly width: number;
  readonly height: number;
}

/** What networks show beside an address: 1200 by 630, from their common practice. */
export const SOCIAL: PngSize = { width: 1200, height: 630 };
/** Longer side of a picture to print: 150 mm at 300 dots to the inch. */
const PRINTED = 1772;

const sizeOf = (svg: string): PngSize => {
  const [, width = '1', height = '1'] = /<svg[^>]* width="([\d.]+)" height="([\d.]+)"/.exec(svg) ?? [];
  return { width: Number(width), height: Number(height) };
};

/** What numbers in pictures are drawn in: our own face, so that every machine gives the same pixels. */
const NUMBERS = 'Numbers in pictures';

// Loaded when the first picture is asked for.
const load = async () => {
  const [skia, { 'DejaVu Sans': dejaVu }] = await Promise.all([import('@napi-rs/canvas'), faces()]);
  skia.GlobalFonts.registerFromPath(dejaVu.bold, NUMBERS);
  return skia;
};
let loaded: ReturnType<typeof load> | null = null;

/** The picture in the words that Skia understands: placed copies by the older name of their address, our face by its name. */
const forSkia = (svg: string): string =>
  svg
    .replaceAll('<use href=', '<use xlink:href=')
    .replace('<svg ', '<svg xmlns:xlink="http://www.w3.org/1999/xlink" ')
    .replaceAll('font-family="sans-serif"', `font-family="${NUMBERS}"`);

/** Fits the picture into a size with room round it; null: as large as it is printed. */
export async function pngOf(svg: string, into: PngSize | null): Promise<Uint8Array<ArrayBuffer>> {
  loaded ??= load();
  const { createCanvas, loadImage } = await loaded;
  const drawn = sizeOf(svg);
  const longer = Math.max(drawn.width, drawn.height);
  const paper = into ?? {
    width: Math.round((PRINTED * drawn.width) / longer),
    height: Math.round((PRINTED * drawn.height) / longer),
  };
  const room = into ? 0.9 : 1;
  const by = Math.min((room * paper.width) / drawn.width, (room * paper.height) / drawn.height);
  const [width, height] = [Math.round(drawn.width * by), Math.round(drawn.height * by)];
  const sized = svg.replace(/ width="[\d.]+" height="[\d.]+"/, ` width="${width}" height="${height}"`);
  const picture = await loadImage(Buffer.from(forSkia(sized)));
  const canvas = createCanvas(paper.width, paper.height);
  const context = canvas.getContext('2d');
  context.fillStyle = PAPER;
  context.fillRect(0, 0, paper.width, paper.height);
  context.drawImage(picture, (paper.width - width) / 2, (paper.height - height) / 2);
  // At once and not in a thread of its own: letters drawn in two threads at a time end the process.
  return Uint8Array.from(canvas.toBuffer('image/png'));
}
