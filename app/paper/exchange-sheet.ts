/** A picking list of what a later revision changes in packed kits: for each kit, and for all. */
import type { TableCell } from 'pdfmake/interfaces';
import { exchangeRows } from '#app/words/exchange-rows.ts';
import type { BatchRule } from '#lib/kit/kit-batch.ts';
import type { BatchChange } from '#lib/lesson/batch-change.ts';
import { footOf, type SheetLesson, sheetHead } from './kit-sheet.ts';
import { rowLines, type Sheet, tickBox } from './make-pdf.ts';

/** @param lesson told of the later revision @param held number of the revision that the kits were packed by */
export function exchangeSheet(
  lesson: SheetLesson,
  held: number,
  { parts, lines, unknown }: BatchChange,
  rule: BatchRule,
): Sheet {
  const head = (text: string, alignment: 'left' | 'right' = 'right'): TableCell => ({
    text,
    style: 'head',
    alignment,
  });
  const right = (text: string, bold = false): TableCell => ({ text, alignment: 'right', bold });
  const kits = parts.reduce((sum, { times }) => sum + times, 0);
  return {
    title: `Changes of packed kits: ${lesson.title}`,
    language: lesson.language,
    at: lesson.at,
    foot: footOf(lesson),
    landscape: parts.length > 3,
    content: [
      sheetHead(lesson, `Kits of revision ${held}, brought to revision ${lesson.revision}`, [
        `${kits} ${kits === 1 ? 'kit' : 'kits'}: ${parts.map(({ times, name }) => `${times} × ${name}`).join(', ')}.`,
        ...(lines.length === 0 ? ['Nothing in these kits changes.'] : []),
        ...(unknown.length === 0
          ? []
          : [`For ${unknown.join(', ')} no difference can be reckoned: look at the kit screen.`]),
      ]),
      ...(lines.length === 0
        ? []
        : [
            {
              layout: rowLines,
              margin: [0, 12, 0, 0] as [number, number, number, number],
              table: {
                headerRows: 1,
                dontBreakRows: true,
                widths: [
                  '*',
                  ...parts.map(() => 'auto'),
                  ...(rule === 'pooled' ? ['auto'] : []),
                  'auto',
                  'auto',
                ],
                body: [
                  [
                    head('What', 'left'),
                    ...parts.map(({ name, times }) => head(`in each ${name}\n(${times})`)),
                    ...(rule === 'pooled' ? [head('on the spare tray')] : []),
                    head('for all'),
                    '',
                  ],
                  ...exchangeRows(lines).map((row): TableCell[] => [
                    {
                      stack: [
                        { text: row.name, bold: true },
                        { text: row.facts, style: 'small' },
                      ],
                    },
                    ...row.each.map((words) => right(words)),
                    ...(rule === 'pooled' ? [right(row.tray)] : []),
                    right(row.inAll, true),
                    tickBox(),
                  ]),
                ],
              },
            },
          ]),
    ],
  };
}
