/** A kit on paper, to keep beside the tray: what to lay ready, with boxes to tick, and how the numbers came about. */
import type { Content, TableCell } from 'pdfmake/interfaces';
import { allWorking, type KitRows, kitRows } from '#app/words/kit-rows.ts';
import { claspWords, repeatsWithError } from '#app/words/kit-words.ts';
import { kitWorking } from '#app/words/kit-working.ts';
import type { KitList } from '#lib/kit/kit-list.ts';
import { formatMeasure } from '#lib/lesson/asked-measure.ts';
import type { Revision } from '#lib/lesson/revision.ts';
import { addressCode, rowLines, type Sheet, tickBox } from './make-pdf.ts';
import { type SheetSteps, stepSheet } from './step-sheet.ts';

/** What a sheet tells of its lesson. */
export interface SheetLesson {
  readonly title: string;
  readonly weave: string;
  readonly workshop: string;
  readonly language: string;
  /** Whole address of the lesson page; null where there is none yet. */
  readonly address: string | null;
  /** Null for a draft. */
  readonly revision: number | null;
  /** Number of the latest revision when the sheet was made; absent where it is of no concern. */
  readonly latest?: number;
  readonly at: Date;
  /** Its steps with their pictures; absent: the sheet is about the kit alone. */
  readonly steps?: SheetSteps;
}

/** What a sheet says of the revision that it is made from. */
export const sheetLessonOf = (
  { content, workshop, publishedAt, number }: Revision,
  address: string | null,
): SheetLesson => ({
  title: content.title,
  weave: content.weave,
  workshop: workshop.name,
  language: content.language,
  address,
  revision: number,
  at: new Date(publishedAt),
});

export const kitSheet = (lesson: SheetLesson, kit: KitList): Sheet => {
  const rows = kitRows(kit);
  return {
    title: `Kit: ${lesson.title}`,
    language: lesson.language,
    at: lesson.at,
    foot: footOf(lesson),
    content: [
      sheetHead(lesson, 'Kit', sizeLines(kit)),
      ...ringTable(rows),
      ...supplyTable('Materials', rows.supplies),
      ...supplyTable('Tools and safety items', rows.tools),
      ...costLines(rows),
      ...working(kit, rows),
      ...(lesson.steps ? stepSheet(lesson.steps) : []),
    ],
  };
};

export const footOf = (lesson: SheetLesson): string =>
  `${lesson.title}, ${lesson.revision === null ? 'draft, not published' : `revision ${lesson.revision}`}${isEarlier(lesson) ? `, an earlier one: revision ${lesson.latest} is the latest` : ''}`;

const isEarlier = ({ revision, latest }: SheetLesson): boolean =>
  revision !== null && latest !== undefined && revision < latest;

/** Says on an old revision's sheet that a later one is published. */
const earlierLines = (lesson: SheetLesson): Content[] =>
  isEarlier(lesson)
    ? [
        {
          text: `This is revision ${lesson.revision}, an earlier one. Revision ${lesson.latest} is the latest: print that one to work by.`,
          bold: true,
        },
      ]
    : [];

/** Title, what the sheet is (empty: the lesson itself) and lines at the left, the lesson's address as a code at the right. */
export const sheetHead = (lesson: SheetLesson, what: string, lines: readonly string[]): Content => ({
  columns: [
    {
      width: '*',
      stack: [
        { text: lesson.title, style: 'title' },
        { text: [lesson.workshop, lesson.weave].filter((text) => text.trim() !== '').join(' · ') },
        ...earlierLines(lesson),
        ...(what === '' ? [] : [{ text: what, style: 'heading' }]),
        ...lines.map((text) => ({ text })),
      ],
    },
    ...(lesson.address === null ? [] : [{ width: 190, stack: [addressCode(lesson.address)] }]),
  ],
  columnGap: 16,
});

function sizeLines({ bodyMm, length }: KitList): readonly string[] {
  const both = (mm: number): string => `${formatMeasure(mm, 'mm')} (${formatMeasure(mm, 'in')})`;
  if (!length) return ['Nothing in this piece repeats: the kit is the same for everyone.'];
  return [
    `For ${both(bodyMm)} on the body.`,
    `${repeatsWithError(length)}, finished ${both(length.finishedMm)}${claspWords(length)}.`,
  ];
}

const right = (text: string, bold = false): TableCell => ({ text, alignment: 'right', bold });
const head = (text: string, alignment: 'left' | 'right' = 'right'): TableCell => ({
  text,
  style: 'head',
  alignment,
});

function ringTable({ rings, totals }: KitRows): Content[] {
  if (rings.length === 0) return [];
  return [
    { text: 'Rings to prepare', style: 'heading' },
    {
      layout: rowLines,
      table: {
        headerRows: 1,
        dontBreakRows: true,
        widths: ['*', 'auto', 'auto', 'auto', 'auto', 'auto', 'auto', 'auto'],
        body: [
          [
            head('Ring', 'left'),
            head('Open'),
            head(''),
            head('Close'),
            head(''),
            head('Spare'),
            head(''),
            head('Take'),
          ],
          ...rings.map((row) => [
            {
              stack: [
                { text: row.name, bold: true },
                { text: row.facts, style: 'small' },
              ],
            },
            right(row.opened.text),
            row.opened.text === '0' ? '' : tickBox(),
            right(row.closed.text),
            row.closed.text === '0' ? '' : tickBox(),
            right(row.spare.text),
            row.spare.text === '0' ? '' : tickBox(),
            right(row.needed.text, true),
          ]),
          [
            { text: 'All rings', bold: true },
            right(totals.opened.text),
            '',
            right(totals.closed.text),
            '',
            right(totals.spare.text),
            '',
            right(totals.needed.text, true),
          ],
        ],
      },
    },
  ];
}

function supplyTable(title: string, supplies: KitRows['supplies']): Content[] {
  if (supplies.length === 0) return [];
  return [
    { text: title, style: 'heading' },
    {
      layout: rowLines,
      table: {
        dontBreakRows: true,
        widths: ['auto', '*', 'auto'],
        body: supplies.map((row) => [tickBox(), row.name, right(row.needed.text)]),
      },
    },
  ];
}

function costLines({ rings, supplies, totals, unpriced }: KitRows): Content[] {
  const bought = [...rings, ...supplies].filter((row) => row.packs.text !== '–');
  if (bought.length === 0) return [];
  return [
    { text: 'To buy', style: 'heading' },
    {
      layout: rowLines,
      table: {
        headerRows: 1,
        dontBreakRows: true,
        widths: ['auto', '*', 'auto', 'auto', 'auto'],
        body: [
          ['', head('What', 'left'), head('Packs'), head('Mass needed'), head('Cost')],
          ...bought.map((row) => [
            tickBox(),
            row.link === '' ? row.name : { text: row.name, link: row.link, decoration: 'underline' as const },
            right(row.packs.text),
            right(row.mass.text),
            right(row.price.text),
          ]),
          ['', { text: 'Together', bold: true }, '', right(totals.mass.text), right(totals.price.text, true)],
        ],
      },
    },
    {
      text: [`What is used of the packs: ${totals.used.text}. `, unpriced],
      style: 'small',
      margin: [0, 4, 0, 0],
    },
  ];
}

const working = (kit: KitList, rows: KitRows): Content[] => [
  { text: 'How these numbers came about', style: 'heading' },
  {
    ul: [
      ...kitWorking(kit),
      ...[...rows.rings, ...rows.supplies, ...rows.tools].map((row) => ({
        text: [{ text: `${row.name}: `, bold: true }, allWorking(row).join(' · ')],
      })),
    ],
    style: 'small',
  },
];
