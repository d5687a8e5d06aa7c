/** Sets a sheet as PDF. The same sheet gives the same bytes; nothing is fetched, and of files only the fonts are read. */
import type { Content, TDocumentDefinitions } from 'pdfmake/interfaces';
import { invariant } from '#lib/result.ts';
import { facesFor } from './set-faces.ts';
import { faces, LOST, signs } from './signs.ts';

export interface Sheet {
  readonly title: string;
  /** BCP 47 tag. */
  readonly language: string;
  /** When what it shows was published; stands in the file in place of the clock. */
  readonly at: Date;
  readonly content: Content[];
  /** At the foot of every page, before its number. */
  readonly foot: string;
  readonly landscape?: boolean;
  /** Of the body type, points; headings go by it. */
  readonly size?: number;
}

/** A4 is the paper of most of the world and of ISO 216; a letter page takes it scaled by 6 %. */
const PAGE = 'A4';

// Loaded when the first sheet is asked for: most who start the site print nothing.
const load = async () => {
  const [{ default: pdfmake }, fonts, known] = await Promise.all([import('pdfmake'), faces(), signs()]);
  const files = new Set(Object.values(fonts).flatMap((styles) => Object.values(styles)));
  pdfmake.setFonts(fonts);
  pdfmake.setUrlAccessPolicy(() => false);
  pdfmake.setLocalAccessPolicy((path) => files.has(path));
  return { pdfmake, known };
};
let loaded: ReturnType<typeof load> | null = null;

export const makePdf = async (sheet: Sheet): Promise<Uint8Array<ArrayBuffer>> =>
  (await setSheet(sheet)).bytes;

/**
 * The sheet in the largest of these sizes that keeps it to so many pages; the
 * smallest where none does.
 * @param sizes of the body type, points, the largest first
 */
export async function makePdfWithin(
  pages: number,
  sizes: readonly number[],
  sheetAt: (size: number) => Sheet,
): Promise<Uint8Array<ArrayBuffer>> {
  let made: Made | null = null;
  for (const size of sizes) {
    made = await setSheet(sheetAt(size));
    if (made.pages <= pages) break;
  }
  invariant(made !== null, 'a sheet has a size');
  return made.bytes;
}

const lostNote = (lost: boolean): Content[] =>
  lost
    ? [
        {
          text: `${LOST} stands for letters or signs that this sheet cannot print. The lesson page shows them.`,
          style: 'small',
          margin: [0, 8, 0, 0],
        },
      ]
    : [];

interface Made {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly pages: number;
}

async function setSheet(sheet: Sheet): Promise<Made> {
  loaded ??= load();
  const { pdfmake, known } = await loaded;
  const inFaces = facesFor(known);
  const size = sheet.size ?? 11;
  let count = 0;
  const definition: TDocumentDefinitions = {
    pageSize: PAGE,
    pageOrientation: sheet.landscape ? 'landscape' : 'portrait',
    pageMargins: [40, 40, 40, 48],
    language: sheet.language,
    info: {
      title: sheet.title,
      creator: 'Benchleaf',
      producer: 'Benchleaf',
      creationDate: sheet.at,
      modDate: sheet.at,
    },
    content: [...sheet.content.map((part) => inFaces(part)), ...lostNote(inFaces.lost())],
    defaultStyle: { font: 'Roboto', fontSize: size, lineHeight: 1.15 },
    styles: {
      title: { fontSize: size + 9, bold: true, margin: [0, 0, 0, 4] },
      heading: { fontSize: size + 3, bold: true, margin: [0, size + 1, 0, 4] },
      head: { bold: true, color: '#444444', fontSize: size - 1 },
      small: { fontSize: size - 2, color: '#333333' },
    },
    footer: (page, pages) => {
      count = pages;
      return {
        columns: [
          inFaces({ text: sheet.foot, style: 'small' }),
          { text: `${page} of ${pages}`, style: 'small', alignment: 'right', width: 60 },
        ],
        margin: [40, 12, 40, 0],
      };
    },
  };
  return { bytes: Uint8Array.from(await pdfmake.createPdf(definition).getBuffer()), pages: count };
}

/** A box to tick with a pen. */
export const tickBox = (size = 11): Content => ({
  canvas: [{ type: 'rect', x: 0, y: 1, w: size, h: size, lineWidth: 1 }],
});

/** A code that a telephone reads, with the address beneath it for who has none. */
export const addressCode = (address: string, size = 88): Content => ({
  stack: [
    { qr: address, fit: size, eccLevel: 'M', alignment: 'right' },
    { text: address, link: address, fontSize: 7, color: '#333333', alignment: 'right', margin: [0, 3, 0, 0] },
  ],
});

/** Lines between rows and none at the sides. */
export const rowLines = {
  hLineWidth: () => 0.5,
  vLineWidth: () => 0,
  hLineColor: () => '#aaaaaa',
  paddingLeft: () => 4,
  paddingRight: () => 4,
  paddingTop: () => 3,
  paddingBottom: () => 3,
} as const;
