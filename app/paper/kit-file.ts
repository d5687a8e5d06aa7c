/** The files that a kit is given out as. */

import { environment } from '#lib/config/environment.ts';
import { kitCsv } from '#lib/kit/kit-csv.ts';
import { kitDocumentOf } from '#lib/kit/kit-json.ts';
import type { KitList } from '#lib/kit/kit-list.ts';
import { kitSheet, type SheetLesson } from './kit-sheet.ts';
import { makePdf } from './make-pdf.ts';

const KIT_FILES = ['kit.pdf', 'kit.csv', 'kit.json'] as const;
export type KitFileName = (typeof KIT_FILES)[number];
export const isKitFile = (name: string): name is KitFileName => KIT_FILES.some((one) => one === name);

export interface MadeFile {
  readonly body: string | Uint8Array<ArrayBuffer>;
  /** Media type with its charset. */
  readonly type: string;
}

/** Address of the published schema of kit.json. */
const schemaAddress = (): string => `${environment().BENCHLEAF_ADDRESS}/schema/kit-1.json`;

export async function kitFile(name: KitFileName, lesson: SheetLesson, kit: KitList): Promise<MadeFile> {
  switch (name) {
    case 'kit.pdf':
      return { body: await makePdf(kitSheet(lesson, kit)), type: 'application/pdf' };
    case 'kit.csv':
      return { body: kitCsv(kit), type: 'text/csv; charset=utf-8' };
    case 'kit.json': {
      const { title, address, revision } = lesson;
      const document = kitDocumentOf(kit, { title, address, revision }, schemaAddress());
      return { body: `${JSON.stringify(document, null, 2)}\n`, type: 'application/json' };
    }
  }
}
