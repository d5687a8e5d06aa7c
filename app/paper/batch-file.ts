/** The files that kits of a class or a batch are given out as. */
import { type PickedKit, pickingCsv } from '#lib/kit/batch-csv.ts';
import { BATCH_RULES, batchOf } from '#lib/kit/kit-batch.ts';
import { kitFor } from '#lib/kit/kit-list.ts';
import type { Content } from '#lib/lesson/content.ts';
import { failed, ok, type Result } from '#lib/result.ts';
import type { MadeFile } from './kit-file.ts';
import type { SheetLesson } from './kit-sheet.ts';
import { makePdf } from './make-pdf.ts';
import { kitLabels, MOST_LABELS, pickingSheet } from './picking-sheet.ts';

const BATCH_FILES = ['picking-sheet.pdf', 'picking-sheet.csv', 'labels.pdf'] as const;
export type BatchFileName = (typeof BATCH_FILES)[number];
export const isBatchFile = (name: string): name is BatchFileName => BATCH_FILES.some((one) => one === name);

export interface BatchFileFault {
  readonly code: 'no-kits' | 'too-many-labels';
}

export async function batchFile(
  name: BatchFileName,
  lesson: SheetLesson,
  content: Content,
  query: URLSearchParams,
): Promise<Result<MadeFile, BatchFileFault>> {
  const sizes = pickedOf(content, query);
  const kits = sizes.reduce((sum, size) => sum + size.times, 0);
  if (kits === 0) return failed({ code: 'no-kits' });
  const rule = BATCH_RULES.find((one) => one === query.get('spare')) ?? 'per kit';
  switch (name) {
    case 'picking-sheet.pdf':
      return ok({ body: await makePdf(pickingSheet(lesson, sizes, rule)), type: 'application/pdf' });
    case 'picking-sheet.csv':
      return ok({
        body: pickingCsv(sizes, batchOf(sizes, rule), content.currency),
        type: 'text/csv; charset=utf-8',
      });
    case 'labels.pdf':
      return kits > MOST_LABELS
        ? failed({ code: 'too-many-labels' })
        : ok({ body: await makePdf(kitLabels(lesson, sizes)), type: 'application/pdf' });
  }
}

/** `kits=3 <size>`, once a size; sizes that are not there, or that no kit can be made for, are left out. */
function pickedOf(content: Content, query: URLSearchParams): readonly PickedKit[] {
  const asked = new Map(
    query.getAll('kits').flatMap((text) => {
      const match = /^(\d{1,5}) (.+)$/.exec(text);
      return match?.[1] && match[2] ? [[match[2], Number(match[1])] as const] : [];
    }),
  );
  return content.sizes.flatMap((size, index) => {
    const times = asked.get(size.id) ?? 0;
    const kit = kitFor(content, size.bodyMm);
    return times > 0 && kit.ok ? [{ name: size.name || `size ${index + 1}`, kit: kit.value, times }] : [];
  });
}
