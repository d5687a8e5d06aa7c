/** What goes with every kit: a label for its bag, and a leaf that is laid into it. Both name the kit's revision and lead to its page. */
import type { Content, TableCell } from 'pdfmake/interfaces';
import { kitAddress } from '#app/lesson-page/page-addresses.ts';
import { kitRows, type RingRow } from '#app/words/kit-rows.ts';
import { claspWords } from '#app/words/kit-words.ts';
import type { PickedKit } from '#lib/kit/batch-csv.ts';
import type { BatchRule } from '#lib/kit/kit-batch.ts';
import { packedOf } from '#lib/kit/kit-exchange.ts';
import { formatMeasure } from '#lib/lesson/asked-measure.ts';
import { cautionWords } from '#lib/lesson/cautions.ts';
import type { Content as LessonContent } from '#lib/lesson/content.ts';
import { footOf, type SheetLesson } from './kit-sheet.ts';
import { addressCode, type Sheet } from './make-pdf.ts';

/** Labels or leaves in one file; of a larger batch the next ones are asked for by `from`. */
export const MOST_LABELS = 200;

/** Who prints only a part begins with kit number `from`, 1 for the first. */
export interface PrintedPart {
  readonly rule: BatchRule;
  readonly from: number;
}

const ALL: PrintedPart = { rule: 'per kit', from: 1 };

/** A label for every kit: what it is, its size, what is in it and where its page is. */
export function kitLabels(lesson: SheetLesson, sizes: readonly PickedKit[], part: PrintedPart = ALL): Sheet {
  const labels = kitByKit(sizes, part).map((size) => label(lesson, size, part.rule));
  return cutSheet(lesson, 'Labels', labels, 2);
}

/** A leaf for every kit: what it is, how to come to the lesson, what is in it and what to take care of. */
export function kitInserts(
  lesson: SheetLesson,
  content: LessonContent,
  sizes: readonly PickedKit[],
  part: PrintedPart = ALL,
): Sheet {
  const leaves = kitByKit(sizes, part).map((size) => leaf(lesson, content, size, part.rule));
  return cutSheet(lesson, 'Inserts', leaves, 1);
}

const kitByKit = (sizes: readonly PickedKit[], { from }: PrintedPart): readonly PickedKit[] =>
  sizes
    .flatMap((size) => Array.from({ length: size.times }, () => size))
    .slice(from - 1, from - 1 + MOST_LABELS);

/** Pieces with lines between them to cut along; none is broken by the end of a page. */
function cutSheet(lesson: SheetLesson, what: string, pieces: readonly Content[], across: number): Sheet {
  const rows = Array.from({ length: Math.ceil(pieces.length / across) }, (_, row) =>
    Array.from({ length: across }, (_, at): TableCell => pieces[row * across + at] ?? ''),
  );
  return {
    title: `${what}: ${lesson.title}`,
    language: lesson.language,
    at: lesson.at,
    foot: footOf(lesson),
    content: [
      {
        table: { dontBreakRows: true, widths: Array.from({ length: across }, () => '*'), body: rows },
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

const SMALL_PARTS = 'Small parts: keep away from children under 3 years.';

/** The kit's own page; that of the lesson where the kit is of a draft, which no address can name. */
const addressOf = ({ address, revision }: SheetLesson, { kit }: PickedKit): string | null =>
  address === null || revision === null ? address : kitAddress(address, revision, kit.bodyMm);

const measureWords = ({ kit }: PickedKit): string =>
  `${formatMeasure(kit.bodyMm, 'mm')} (${formatMeasure(kit.bodyMm, 'in')})`;

const revisionWords = ({ revision }: SheetLesson): string =>
  revision === null ? 'Draft' : `Revision ${revision}`;

/** How many of each thing lie in the kit itself, by its id. */
function packedCounts({ kit }: PickedKit, rule: BatchRule): ReadonlyMap<string, number> {
  return new Map(
    [...packedOf(kit, rule).values()].map(({ thing, quantity }) => [
      thing.is === 'ring' ? thing.ringKind.id : thing.material.id,
      quantity,
    ]),
  );
}

function label(lesson: SheetLesson, size: PickedKit, rule: BatchRule): Content {
  const { rings, supplies } = kitRows(size.kit);
  const counts = packedCounts(size, rule);
  const address = addressOf(lesson, size);
  return {
    stack: [
      { text: lesson.workshop, style: 'small' },
      { text: lesson.title, bold: true, fontSize: 13 },
      { text: `Kit ${size.name}, ${measureWords(size)}`, bold: true, margin: [0, 4, 0, 0] },
      {
        columns: [
          {
            width: '*',
            stack: [
              { text: revisionWords(lesson), margin: [0, 0, 0, 4] },
              ...rings.map((row) => ({ text: `${counts.get(row.id) ?? 0} × ${row.name}`, fontSize: 10 })),
              ...supplies.map((row) => ({ text: `${row.name}, ${row.needed.text}`, fontSize: 10 })),
            ],
          },
          ...(address === null ? [] : [{ width: 108, stack: [addressCode(address, 104)] }]),
        ],
      },
      { text: SMALL_PARTS, style: 'small', margin: [0, 4, 0, 0] },
    ],
  };
}

function leaf(lesson: SheetLesson, content: LessonContent, size: PickedKit, rule: BatchRule): Content {
  const { kit } = size;
  const { rings, supplies, tools } = kitRows(kit);
  const counts = packedCounts(size, rule);
  const address = addressOf(lesson, size);
  const cautions = content.cautions.map(cautionWords);
  const prepared = (row: RingRow): string =>
    [
      row.opened.text === '0' ? '' : `open ${row.opened.text}`,
      row.closed.text === '0' ? '' : `close ${row.closed.text}`,
      row.spare.text === '0' || rule === 'pooled' ? '' : `${row.spare.text} spare`,
    ]
      .filter((words) => words !== '')
      .join(', ');
  return {
    stack: [
      {
        columns: [
          {
            width: '*',
            stack: [
              { text: lesson.workshop, style: 'small' },
              { text: lesson.title, bold: true, fontSize: 16 },
              { text: lesson.weave },
              { text: `Kit ${size.name}, ${measureWords(size)}`, bold: true, margin: [0, 6, 0, 0] },
              ...(kit.length
                ? [
                    {
                      text: `Finished ${formatMeasure(kit.length.finishedMm, 'mm')}${claspWords(kit.length)}.`,
                    },
                  ]
                : []),
              { text: `${revisionWords(lesson)} of the lesson.`, margin: [0, 0, 0, 6] },
            ],
          },
          ...(address === null
            ? []
            : [
                {
                  width: 130,
                  stack: [
                    addressCode(address, 104),
                    {
                      text: 'Your lesson, and whether anything in this kit has changed since it was packed.',
                      style: 'small',
                      alignment: 'right' as const,
                      margin: [0, 3, 0, 0] as [number, number, number, number],
                    },
                  ],
                },
              ]),
        ],
        columnGap: 12,
      },
      { text: 'In this bag', style: 'head', margin: [0, 4, 0, 2] },
      {
        ul: [
          ...rings.map((row) => ({
            text: [
              { text: `${counts.get(row.id) ?? 0} × ${row.name}`, bold: true },
              { text: ` (${row.facts}): ${prepared(row)}`, style: 'small' },
            ],
          })),
          ...supplies.map((row) => `${row.name}, ${row.needed.text}`),
        ],
      },
      ...(tools.length === 0
        ? []
        : [
            {
              text: 'You also need',
              style: 'head',
              margin: [0, 6, 0, 2] as [number, number, number, number],
            },
            { text: `${tools.map(({ name }) => name).join(', ')}.` },
          ]),
      { text: 'Take care', style: 'head', margin: [0, 6, 0, 2] },
      {
        ul: [
          ...(cautions.some((_, index) => content.cautions[index]?.of === 'small-parts')
            ? []
            : [SMALL_PARTS]),
          ...cautions.map(({ title, text }) => ({
            text: [...(title === '' ? [] : [{ text: `${title}. `, bold: true }]), text],
          })),
        ],
        style: 'small',
      },
    ],
  };
}
