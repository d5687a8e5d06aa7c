/** What outside readers find in a PDF: its text, and the codes on its pages. */
import { createCanvas } from '@napi-rs/canvas';
import jsQrModule from 'jsqr';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

// jsqr is CommonJS whose default export is wrapped once more.
const jsQr = ('default' in jsQrModule ? jsQrModule.default : jsQrModule) as unknown as (
  pixels: Uint8ClampedArray,
  width: number,
  height: number,
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
