/** Kits of a class or a batch on paper: what to pick for each kit, in all, and what to buy; and a label for every kit. */
import type { Content, TableCell } from 'pdfmake/interfaces';
import { batchRows } from '#app/words/batch-rows.ts';
import { kitRows, type RingRow, type SupplyRow } from '#app/words/kit-rows.ts';
import type { PickedKit } from '#lib/kit/batch-csv.ts';
import { type BatchRule, batchOf } from '#lib/kit/kit-batch.ts';
import { formatMeasure } from '#lib/lesson/asked-measure.ts';
import { footOf, type SheetLesson, sheetHead } from './kit-sheet.ts';
import { addressCode, rowLines, type Sheet, tickBox } from './make-pdf.ts';

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

/** Labels across a page of A4. */
const ACROSS = 2;

/** Labels in one file; a larger batch is printed in parts. */
export const MOST_LABELS = 200;

/** A label for every kit: what it is, its size, what is in it and where its lesson is. */
export function kitLabels(lesson: SheetLesson, sizes: readonly PickedKit[]): Sheet {
  const labels = sizes.flatMap((size) => Array.from({ length: size.times }, () => label(lesson, size)));
  const rows = Array.from({ length: Math.ceil(labels.length / ACROSS) }, (_, row) =>
    Array.from({ length: ACROSS }, (_, at): TableCell => labels[row * ACROSS + at] ?? ''),
  );
  return {
    title: `Labels: ${lesson.title}`,
    language: lesson.language,
    at: lesson.at,
    foot: footOf(lesson),
    content: [
      {
        table: { dontBreakRows: true, widths: Array.from({ length: ACROSS }, () => '*'), body: rows },
        layout: {
          hLineWidth: () => 0.5,
          vLineWidth: () => 0.5,
          hLineColor: () => '#999999',
          vLineColor: () => '#999999',
          paddingLeft: () => 10,
          paddingRight: () => 10,
          paddingTop: () => 10,
          paddingBottom: () => 10,
        },
      },
    ],
  };
}

function label(lesson: SheetLesson, { name, kit }: PickedKit): Content {
  const { rings, supplies } = kitRows(kit);
  const measure = `${formatMeasure(kit.bodyMm, 'mm')} (${formatMeasure(kit.bodyMm, 'in')})`;
  return {
    stack: [
      { text: lesson.workshop, style: 'small' },
      { text: lesson.title, bold: true, fontSize: 13 },
      {
        columns: [
          {
            width: '*',
            stack: [
              { text: `Kit ${name}, ${measure}`, bold: true, margin: [0, 4, 0, 4] },
              ...rings.map((row) => ({ text: `${row.needed.text} × ${row.name}`, fontSize: 10 })),
              ...supplies.map((row) => ({ text: `${row.name}, ${row.needed.text}`, fontSize: 10 })),
            ],
          },
          ...(lesson.address === null ? [] : [{ width: 84, stack: [addressCode(lesson.address, 70)] }]),
        ],
      },
      {
        text: lesson.revision === null ? 'Draft' : `Revision ${lesson.revision}`,
        style: 'small',
        margin: [0, 4, 0, 0],
      },
      { text: 'Small parts: keep away from children under 3 years.', style: 'small' },
    ],
  };
}
