/** Kits of a class or a batch on paper: what to pick for each kit, in all, and what to buy. */
import type { TableCell } from 'pdfmake/interfaces';
import { batchRows } from '#app/words/batch-rows.ts';
import { kitRows, type RingRow, type SupplyRow } from '#app/words/kit-rows.ts';
import type { PickedKit } from '#lib/kit/batch-csv.ts';
import { type BatchRule, batchOf } from '#lib/kit/kit-batch.ts';
import { footOf, type SheetLesson, sheetHead } from './kit-sheet.ts';
import { rowLines, type Sheet, tickBox } from './make-pdf.ts';

const right = (text: string, bold = false): TableCell => ({ text, alignment: 'right', bold });

const isRing = (row: RingRow | SupplyRow): row is RingRow => 'opened' in row;

/** One row a thing, one column a size: what goes into each kit, and the sum of all. */
export function pickingSheet(lesson: SheetLesson, sizes: readonly PickedKit[], rule: BatchRule): Sheet {
  const batch = batchOf(sizes, rule);
  const all = batchRows(batch, sizes[0]?.kit.currency ?? 'EUR');
  const kits = sizes.map((size) => kitRows(size.kit));
  const each = (row: RingRow | SupplyRow, index: number): string => {
    const kit = kits[index];
    const found = [...(kit?.rings ?? []), ...(kit?.supplies ?? [])].find((one) => one.id === row.id);
    if (!found) return '–';
    // Where the spare is pooled it lies on one tray, not in the kits.
    return rule === 'pooled' && isRing(found)
      ? String(Number(found.needed.text) - Number(found.spare.text))
      : found.needed.text;
  };
  const rows: readonly (RingRow | SupplyRow)[] = [...all.rings, ...all.supplies];
  return {
    title: `Picking sheet: ${lesson.title}`,
    language: lesson.language,
    at: lesson.at,
    foot: footOf(lesson),
    landscape: sizes.length > 3,
    content: [
      sheetHead(lesson, 'Picking sheet', [
        `${batch.kits} ${batch.kits === 1 ? 'kit' : 'kits'}: ${sizes.map(({ times, name }) => `${times} × ${name}`).join(', ')}.`,
        rule === 'pooled'
          ? 'Kits hold what the piece takes; the spare for all lies on one tray.'
          : 'Every kit holds its own spare.',
      ]),
      { text: 'In each kit', style: 'heading' },
      {
        layout: rowLines,
        table: {
          headerRows: 1,
          dontBreakRows: true,
          widths: ['*', ...sizes.map(() => 'auto'), 'auto', 'auto', 'auto'],
          body: [
            [
              { text: 'What', style: 'head' },
              ...sizes.map(
                ({ name, times }): TableCell => ({
                  text: `${name}\n(${times})`,
                  style: 'head',
                  alignment: 'right',
                }),
              ),
              { text: rule === 'pooled' ? 'Spare tray' : 'Spare in it', style: 'head', alignment: 'right' },
              { text: 'In all', style: 'head', alignment: 'right' },
              '',
            ],
            ...rows.map((row) => [
              {
                stack: [
                  { text: row.name, bold: true },
                  ...(isRing(row) ? [{ text: row.facts, style: 'small' }] : []),
                ],
              },
              ...sizes.map((_, index) => right(each(row, index))),
              right(isRing(row) ? row.spare.text : ''),
              right(row.needed.text, true),
              tickBox(),
            ]),
          ],
        },
      },
      { text: 'To have in stock', style: 'heading' },
      {
        layout: rowLines,
        table: {
          headerRows: 1,
          dontBreakRows: true,
          widths: ['auto', '*', 'auto', 'auto', 'auto', 'auto'],
          body: [
            [
              '',
              ...['What', 'Needed', 'Packs', 'Mass', 'Cost'].map(
                (text, i): TableCell => ({ text, style: 'head', alignment: i === 0 ? 'left' : 'right' }),
              ),
            ],
            ...rows.map((row) => [
              tickBox(),
              row.name,
              right(row.needed.text),
              right(row.packs.text),
              right(row.mass.text),
              right(row.price.text),
            ]),
            [
              '',
              { text: 'Together', bold: true },
              right(all.totals.needed.text),
              '',
              right(all.totals.mass.text),
              right(all.totals.price.text, true),
            ],
          ],
        },
      },
      {
        text: [`What is used of the packs: ${all.totals.used.text}. `, all.unpriced],
        style: 'small',
        margin: [0, 4, 0, 0],
      },
    ],
  };
}
