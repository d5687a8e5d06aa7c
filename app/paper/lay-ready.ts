/** What to lay ready for a lesson, on paper: rings, materials and tools, each with a box to tick. */
import type { Content, TableCell } from 'pdfmake/interfaces';
import type { KitList } from '#lib/kit/kit-list.ts';
import { formatMeasure } from '#lib/lesson/asked-measure.ts';
import { isTool, perWord, quantityWord, ringFacts } from '#lib/lesson/making-words.ts';
import type { Revision } from '#lib/lesson/revision.ts';
import { rowLines, tickBox } from './make-pdf.ts';

interface ReadyFrom {
  readonly revision: Revision;
  /** The pupil's own kit; null: the sizes of the lesson stand beside each other. */
  readonly kit: KitList | null;
}

const right = (text: string, bold = false): TableCell => ({ text, alignment: 'right', bold });
const head = (text: string, alignment: 'left' | 'right' = 'right'): TableCell => ({
  text,
  style: 'head',
  alignment,
});

/** @param size of the body type, points */
export function layReady(from: ReadyFrom, size: number): Content[] {
  const { content } = from.revision;
  const rings = ringRows(from, size);
  const items = content.materials.map((item): TableCell[] => [
    tickBox(size),
    {
      text: [
        item.name,
        { text: ` ${quantityWord(item.quantityMilli, item.unit)} ${perWord(item.per)}`, style: 'small' },
      ],
    },
  ]);
  const split = Math.ceil(items.length / 2);
  const list = (body: TableCell[][]): Content => ({
    layout: rowLines,
    table: { dontBreakRows: true, widths: ['auto', '*'], body },
  });
  const isAllTools = content.materials.every(isTool);
  return rings.length === 0 && items.length === 0
    ? []
    : [
        { text: 'Lay ready', style: 'heading' },
        ...rings,
        ...(items.length === 0
          ? []
          : [
              {
                columns: [list(items.slice(0, split)), split < items.length ? list(items.slice(split)) : ''],
                columnGap: 16,
                margin: [0, rings.length === 0 || isAllTools ? 0 : 6, 0, 0] as [
                  number,
                  number,
                  number,
                  number,
                ],
              },
            ]),
      ];
}

/** A row for every kind: for one's own kit what to open and to close, else what every size takes. */
function ringRows({ revision: { content, kits }, kit }: ReadyFrom, size: number): Content[] {
  const sizes = content.sizes.flatMap((one) => {
    const frozen = kits.find((candidate) => candidate.size === one.id);
    return frozen ? [{ name: one.name.trim() || formatMeasure(one.bodyMm, 'mm'), rings: frozen.rings }] : [];
  });
  const ringLines = kit
    ? kit.rings.map((line) => ({
        kind: line.ringKind,
        cells: [line.opened, line.closed, line.spare, line.issued].map(String),
      }))
    : content.ringKinds.map((kind) => ({
        kind,
        cells: sizes.map(({ rings }) => {
          const line = rings.find(({ ringKind }) => ringKind === kind.id);
          return line ? String(line.issued) : '–';
        }),
      }));
  if (ringLines.length === 0) return [];
  const heads = kit ? ['Open', 'Close', 'Spare', 'Take'] : sizes.map(({ name }) => name);
  return [
    {
      layout: rowLines,
      table: {
        headerRows: 1,
        dontBreakRows: true,
        widths: ['auto', '*', ...heads.map(() => 'auto')],
        body: [
          [
            '',
            head(kit || heads.length === 0 ? 'Rings' : 'Rings, spare ones among them', 'left'),
            ...heads.map((text) => head(text)),
          ],
          ...ringLines.map(({ kind, cells }) => [
            tickBox(size),
            {
              stack: [
                { text: kind.name, bold: true },
                { text: ringFacts(kind), style: 'small' },
              ],
            },
            ...cells.map((text, index) => right(text, kit === null || index === cells.length - 1)),
          ]),
        ],
      },
    },
  ];
}
