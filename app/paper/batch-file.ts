/** The files that kits of a class or a batch are given out as. */
import { type PickedKit, pickingCsv } from '#lib/kit/batch-csv.ts';
import { BATCH_RULES, type BatchRule, batchOf } from '#lib/kit/kit-batch.ts';
import { kitFor } from '#lib/kit/kit-list.ts';
import type { RecordedBatch } from '#lib/kit/recorded-batch.ts';
import type { Content } from '#lib/lesson/content.ts';
import { failed, ok, type Result } from '#lib/result.ts';
import type { MadeFile } from './kit-file.ts';
import { kitInserts, kitLabels, MOST_LABELS } from './kit-labels.ts';
import type { SheetLesson } from './kit-sheet.ts';
import { makePdf } from './make-pdf.ts';
import { pickingSheet } from './picking-sheet.ts';

const BATCH_FILES = ['picking-sheet.pdf', 'picking-sheet.csv', 'labels.pdf', 'inserts.pdf'] as const;
export type BatchFileName = (typeof BATCH_FILES)[number];
export const isBatchFile = (name: string): name is BatchFileName => BATCH_FILES.some((one) => one === name);

export interface BatchFileFault {
  readonly code: 'no-kits' | 'too-many-labels';
}

/** Kits of one content: how many of each size, and how their spare is reckoned. */
export interface PickedBatch {
  readonly content: Content;
  readonly sizes: readonly PickedKit[];
  readonly rule: BatchRule;
  /** Number of the first kit that is given a label or leaf; null: all, or none where they are too many. */
  readonly from: number | null;
}

export async function batchFile(
  name: BatchFileName,
  lesson: SheetLesson,
  { content, sizes, rule, from }: PickedBatch,
): Promise<Result<MadeFile, BatchFileFault>> {
  const kits = sizes.reduce((sum, size) => sum + size.times, 0);
  if (kits === 0) return failed({ code: 'no-kits' });
  switch (name) {
    case 'picking-sheet.pdf':
      return ok({ body: await makePdf(pickingSheet(lesson, sizes, rule)), type: 'application/pdf' });
    case 'picking-sheet.csv':
      return ok({
        body: pickingCsv(sizes, batchOf(sizes, rule), content.currency),
        type: 'text/csv; charset=utf-8',
      });
    case 'labels.pdf':
    case 'inserts.pdf': {
      if (from === null && kits > MOST_LABELS) return failed({ code: 'too-many-labels' });
      const part = { rule, from: from ?? 1 };
      const sheet =
        name === 'labels.pdf' ? kitLabels(lesson, sizes, part) : kitInserts(lesson, content, sizes, part);
      return ok({ body: await makePdf(sheet), type: 'application/pdf' });
    }
  }
}

/** `kits=3 <size>`, once a size; sizes that are not there, or that no kit can be made for, are left out. */
export function pickedByQuery(content: Content, query: URLSearchParams): PickedBatch {
  const asked = new Map(
    query.getAll('kits').flatMap((text) => {
      const match = /^(\d{1,5}) (.+)$/.exec(text);
      return match?.[1] && match[2] ? [[match[2], Number(match[1])] as const] : [];
    }),
  );
  const sizes = content.sizes.flatMap((size, index) => {
    const times = asked.get(size.id) ?? 0;
    const kit = kitFor(content, size.bodyMm);
    return times > 0 && kit.ok ? [{ name: size.name || `size ${index + 1}`, kit: kit.value, times }] : [];
  });
  return {
    content,
    sizes,
    rule: BATCH_RULES.find((one) => one === query.get('spare')) ?? 'per kit',
    from: null,
  };
}

/** The kits of a batch that was recorded, by the content of its revision; those that no kit can be made for are left out. */
export const pickedByRecord = (
  content: Content,
  { kits, rule }: RecordedBatch,
  from: number,
): PickedBatch => ({
  content,
  sizes: kits.flatMap(({ name, bodyMm, times }) => {
    const kit = kitFor(content, bodyMm);
    return kit.ok ? [{ name, kit: kit.value, times }] : [];
  }),
  rule,
  from,
});
