/** Sets a sheet as PDF. The same sheet gives the same bytes; nothing is fetched, and of files only the fonts are read. */
import type { Content, TDocumentDefinitions } from 'pdfmake/interfaces';

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
}

/** A4 is the paper of most of the world and of ISO 216; a letter page takes it scaled by 6 %. */
const PAGE = 'A4';

// Loaded when the first sheet is asked for: most who start the site print nothing.
const load = async () => {
  const [{ default: pdfmake }, { default: fonts }] = await Promise.all([
    import('pdfmake'),
    import('pdfmake/fonts/Roboto.js'),
  ]);
  const files = new Set(Object.values(fonts).flatMap((faces) => Object.values(faces)));
  pdfmake.setFonts(fonts);
  pdfmake.setUrlAccessPolicy(() => false);
  pdfmake.setLocalAccessPolicy((path) => files.has(path));
  return pdfmake;
};
let loaded: ReturnType<typeof load> | null = null;

export async function makePdf(sheet: Sheet): Promise<Uint8Array<ArrayBuffer>> {
  loaded ??= load();
  const pdfmake = await loaded;
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
    content: sheet.content,
    defaultStyle: { font: 'Roboto', fontSize: 11, lineHeight: 1.15 },
    styles: {
      title: { fontSize: 20, bold: true, margin: [0, 0, 0, 4] },
      heading: { fontSize: 14, bold: true, margin: [0, 12, 0, 4] },
      head: { bold: true, color: '#444444', fontSize: 10 },
      small: { fontSize: 9, color: '#333333' },
    },
    footer: (page, pages) => ({
      columns: [
        { text: sheet.foot, style: 'small' },
        { text: `${page} of ${pages}`, style: 'small', alignment: 'right', width: 60 },
      ],
      margin: [40, 12, 40, 0],
    }),
  };
  return Uint8Array.from(await pdfmake.createPdf(definition).getBuffer());
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
