/**
 * A lesson on paper, to keep at the bench: what to lay ready and the steps,
 * each with a box to tick, and a code for every chapter that plays it.
 */
import type { Content, TableCell } from 'pdfmake/interfaces';
import { claspWords } from '#app/words/kit-words.ts';
import { chapterSpans } from '#lib/chapters/chapter-rules.ts';
import type { KitList } from '#lib/kit/kit-list.ts';
import { formatMeasure } from '#lib/lesson/asked-measure.ts';
import { cautionWords } from '#lib/lesson/cautions.ts';
import { timeNeeded } from '#lib/lesson/making-words.ts';
import { PAGE_PARTS, type PagePart, type PageStep, pageSteps, partTitle } from '#lib/lesson/page-steps.ts';
import { placementFacts } from '#lib/lesson/placement-words.ts';
import { planWords, unitBegun } from '#lib/lesson/repeat-words.ts';
import type { Revision } from '#lib/lesson/revision.ts';
import { formatTimeCode } from '#lib/time/time-code.ts';
import { footOf, type SheetLesson, sheetHead } from './kit-sheet.ts';
import { layReady } from './lay-ready.ts';
import { rowLines, type Sheet, tickBox } from './make-pdf.ts';

/** A sheet is laid beside the work: one leaf, printed on both sides, in the largest type that it takes. */
export const SHEET_PAGES = 2;
/** Points, the largest first; smaller than the last is not read at arm's length. */
export const SHEET_SIZES = [14, 13, 12, 11, 10] as const;

interface LessonSheetFrom {
  readonly lesson: SheetLesson;
  readonly revision: Revision;
  /** The pupil's own kit; null: the sizes of the lesson stand beside each other. */
  readonly kit: KitList | null;
  /** Whole address at which this very revision plays from a moment; null where nothing plays. */
  readonly playsAt: ((atMs: number) => string) | null;
}

/** @param size of the body type, points */
export const lessonSheet = (from: LessonSheetFrom, size: number): Sheet => ({
  title: from.lesson.title,
  language: from.lesson.language,
  at: from.lesson.at,
  foot: footOf(from.lesson),
  size,
  content: [
    sheetHead(from.lesson, '', headLines(from)),
    ...layReady(from, size),
    ...cautions(from.revision),
    ...steps(from, size),
    ...corrections(from.revision),
    ...chapterCodes(from),
  ],
});

function headLines({ revision: { content }, kit }: LessonSheetFrom): readonly string[] {
  const leaning = content.leaning === 'none' ? [] : [`leans ${content.leaning}`];
  const length = kit?.length ?? null;
  return [
    [content.difficulty, ...timeNeeded(content), ...leaning].join(' · '),
    ...(kit && length
      ? [`For ${both(kit.bodyMm)} on the body: finished ${both(length.finishedMm)}${claspWords(length)}.`]
      : []),
  ];
}

const both = (mm: number): string => `${formatMeasure(mm, 'mm')} (${formatMeasure(mm, 'in')})`;

const cautions = ({ content }: Revision): Content[] =>
  content.cautions.length === 0
    ? []
    : [
        { text: 'Take care', style: 'heading' },
        {
          ul: content.cautions.map((caution) => {
            const { title, text } = cautionWords(caution);
            return { text: [title === '' ? '' : { text: `${title}. `, bold: true }, text] };
          }),
          style: 'small',
        },
      ];

function steps(from: LessonSheetFrom, size: number): Content[] {
  const { content } = from.revision;
  const all = pageSteps(content);
  return PAGE_PARTS.flatMap((part): Content[] => {
    const here = all.filter((step) => step.part === part);
    const [first, ...others] = here.map((step) => stepRow(from, part, step, size));
    if (!first) return [];
    const table = (body: TableCell[][]): Content => ({
      layout: rowLines,
      table: { dontBreakRows: true, widths: [size + 2, size * widthOfNumbers(here), '*', size * 2.6], body },
    });
    return [
      // A heading never stands at the foot of a page without a step.
      {
        unbreakable: true,
        stack: [
          { text: partTitle(part, all), style: 'heading' },
          ...(part === 'repeat' ? repeatNote(from, size) : []),
          table([first]),
        ],
      },
      ...(others.length === 0 ? [] : [table(others)]),
    ];
  });
}

/** Of a column of step numbers, in sizes of the type: a number on two lines reads as two. */
const widthOfNumbers = (steps: readonly PageStep[]): number =>
  Math.max(1.3, 0.65 * String(Math.max(...steps.map(({ number }) => number))).length);

function stepRow(from: LessonSheetFrom, part: PagePart, step: PageStep, size: number): TableCell[] {
  const facts = step.placement ? placementFacts(from.revision.content, step.placement).join('; ') : '';
  const begun = unitBegun(from.revision.content, step.placement);
  return [
    // Of a repeat every round has its box, above; its steps are read again and again.
    part === 'repeat' ? '' : tickBox(size),
    { text: String(step.number), bold: true },
    {
      stack: [
        ...(begun === '' ? [] : [{ text: begun, bold: true }]),
        { text: step.sentence },
        ...(facts === ''
          ? []
          : [{ text: `${facts.charAt(0).toUpperCase()}${facts.slice(1)}.`, style: 'small' }]),
      ],
    },
    step.atMs === null || from.playsAt === null ? '' : { text: formatTimeCode(step.atMs), style: 'small' },
  ];
}

/** Boxes to tick a round in; more than these would fill the sheet. */
const MOST_ROUNDS = 120;

function repeatNote({ revision: { content, kits }, kit }: LessonSheetFrom, size: number): Content[] {
  if (kit?.length) {
    const { repeats } = kit.length;
    const plan = planWords(content, repeats);
    return [
      {
        text:
          plan !== ''
            ? `In this order: ${plan} One box a repeat:`
            : repeats === 1
              ? 'Work these steps once.'
              : `Work these steps ${repeats} times. One box a round:`,
      },
      ...(repeats > 1 && repeats <= MOST_ROUNDS ? [rounds(repeats, size)] : []),
    ];
  }
  const times = kits.flatMap(({ size: id, repeats }) => {
    const name = content.sizes.find((one) => one.id === id)?.name.trim();
    if (!name || repeats === 0) return [];
    const plan = planWords(content, repeats);
    return [plan === '' ? `${repeats} times for ${name}` : `For ${name}: ${plan}`];
  });
  return [
    {
      text:
        times.length === 0
          ? 'Repeat these steps until the length is right.'
          : content.runs.length === 0
            ? `Work these steps ${times.join(', ')}. Mine: ________ times.`
            : times.join(' '),
    },
  ];
}

/** In fives, as one counts. */
function rounds(count: number, size: number): Content {
  const [pitch, gap] = [size * 1.35, size * 0.6];
  const inRow = 25;
  return {
    canvas: Array.from({ length: count }, (_, index) => {
      const column = index % inRow;
      return {
        type: 'rect' as const,
        x: column * pitch + Math.floor(column / 5) * gap,
        y: Math.floor(index / inRow) * pitch,
        w: size,
        h: size,
        lineWidth: 1,
      };
    }),
    margin: [0, 4, 0, 6],
  };
}

const corrections = ({ content }: Revision): Content[] =>
  content.corrections.length === 0
    ? []
    : [
        { text: 'Corrections of the recording', style: 'heading' },
        {
          ul: content.corrections.map(({ startMs, wrong, right: put }) => ({
            text: [
              startMs === null ? '' : `At ${formatTimeCode(startMs)}: `,
              { text: wrong, decoration: 'lineThrough' as const },
              ` ${put}`,
            ],
          })),
        },
      ];

/** Codes in a row; a row of four leaves each its quiet zone on any paper. */
const IN_ROW = 4;
/** Whole points go to a module: two of them for addresses of up to 192 letters (49 modules, ISO/IEC 18004 version 8-L). */
const CODE_PT = 98;

function chapterCodes({ revision, playsAt }: LessonSheetFrom): Content[] {
  const { recording, content } = revision;
  if (playsAt === null || recording === null || content.chapters.length === 0) return [];
  const cells = chapterSpans(content.chapters, recording.durationMs).map(
    ({ title, startMs }): TableCell => ({
      stack: [
        { qr: playsAt(startMs), fit: CODE_PT, eccLevel: 'L' },
        {
          text: [{ text: formatTimeCode(startMs), bold: true }, ` ${title}`],
          link: playsAt(startMs),
          style: 'small',
          margin: [0, 2, 0, 0],
        },
      ],
    }),
  );
  const rows = Array.from({ length: Math.ceil(cells.length / IN_ROW) }, (_, row) =>
    Array.from({ length: IN_ROW }, (__, column) => cells[row * IN_ROW + column] ?? ''),
  );
  const [first = [], ...others] = rows;
  const table = (body: TableCell[][]): Content => ({
    layout: 'noBorders',
    table: { dontBreakRows: true, widths: Array.from({ length: IN_ROW }, () => '*'), body },
  });
  return [
    // The heading never stands alone at the foot of a page.
    {
      unbreakable: true,
      stack: [
        { text: 'Watch a chapter', style: 'heading' },
        { text: 'Point a telephone’s camera at a code: the recording plays from there.', style: 'small' },
        table([first]),
      ],
    },
    ...(others.length === 0 ? [] : [table(others)]),
  ];
}
