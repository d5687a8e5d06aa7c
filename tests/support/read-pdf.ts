/** What outside readers find in a PDF: its text, and the codes on its pages. */
import { createCanvas } from '@napi-rs/canvas';
import jsQrModule from 'jsqr';
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';

// jsqr is CommonJS whose default export is wrapped once more.
const jsQr = ('default' in jsQrModule ? jsQrModule.default : jsQrModule) as unknown as (
  pixels: Uint8ClampedArray,
  width: number,
  height: number,
  options?: { readonly inversionAttempts: 'dontInvert' },
) => { readonly data: string } | null;

const open = (bytes: Uint8Array) =>
  getDocument({ data: Uint8Array.from(bytes), verbosity: 0, disableFontFace: true }).promise;

/** The text of every page, white space as single spaces. */
export async function pdfText(bytes: Uint8Array): Promise<string> {
  const file = await open(bytes);
  const pages: string[] = [];
  for (let number = 1; number <= file.numPages; number++) {
    const { items } = await (await file.getPage(number)).getTextContent();
    pages.push(items.map((item) => ('str' in item ? `${item.str}${item.hasEOL ? '\n' : ''}` : '')).join(''));
  }
  return pages.join('\n').replace(/\s+/g, ' ');
}

/** What the code on the first page says, as a telephone sees it: painted, then decoded. Null where none is found. */
export async function pdfCode(bytes: Uint8Array): Promise<string | null> {
  const page = await (await open(bytes)).getPage(1);
  const viewport = page.getViewport({ scale: 2 });
  const canvas = createCanvas(viewport.width, viewport.height);
  const context = canvas.getContext('2d');
  await page.render({ canvas: null, canvasContext: context as never, viewport }).promise;
  const { data, width, height } = context.getImageData(0, 0, canvas.width, canvas.height);
  return jsQr(new Uint8ClampedArray(data), width, height)?.data ?? null;
}

export const pdfPages = async (bytes: Uint8Array): Promise<number> => (await open(bytes)).numPages;

/** Side of what a telephone is held over, points: a code of up to 98 points lies in one of them. */
const WINDOW_PT = 126;
const STEP_PT = 28;

/** A code is half dark; where less of a window is, there is only text. */
const LEAST_DARK = 0.15;

function darkShare(pixels: Uint8ClampedArray): number {
  let dark = 0;
  // Every fourth pixel will do.
  for (let at = 0; at < pixels.length; at += 16) if ((pixels[at] ?? 255) < 128) dark += 1;
  return (dark * 16) / pixels.length;
}

/** What all codes of all pages say, each looked at by itself, as a telephone that is held over it sees it. */
export async function pdfCodes(bytes: Uint8Array): Promise<ReadonlySet<string>> {
  const found = new Set<string>();
  const file = await open(bytes);
  for (let number = 1; number <= file.numPages; number++) {
    const page = await file.getPage(number);
    const viewport = page.getViewport({ scale: 2 });
    const canvas = createCanvas(viewport.width, viewport.height);
    const context = canvas.getContext('2d');
    await page.render({ canvas: null, canvasContext: context as never, viewport }).promise;
    for (let y = 0; y < viewport.height; y += STEP_PT * 2)
      for (let x = 0; x < viewport.width; x += STEP_PT * 2) {
        const { data, width, height } = context.getImageData(x, y, WINDOW_PT * 2, WINDOW_PT * 2);
        if (darkShare(data) < LEAST_DARK) continue;
        const code = jsQr(new Uint8ClampedArray(data), width, height, { inversionAttempts: 'dontInvert' });
        if (code) found.add(code.data);
      }
  }
  return found;
}

/** How many glyphs are drawn that the face does not have: glyph 0, the box of OpenType's `.notdef`. */
export async function pdfBoxes(bytes: Uint8Array): Promise<number> {
  const file = await open(bytes);
  let boxes = 0;
  for (let number = 1; number <= file.numPages; number++) {
    const { fnArray, argsArray } = await (await file.getPage(number)).getOperatorList();
    fnArray.forEach((operator, index) => {
      if (operator !== OPS.showText) return;
      const glyphs: readonly unknown[] = argsArray[index]?.[0] ?? [];
      for (const glyph of glyphs)
        if (glyph !== null && typeof glyph === 'object' && 'originalCharCode' in glyph)
          if (glyph.originalCharCode === 0) boxes += 1;
    });
  }
  return boxes;
}
