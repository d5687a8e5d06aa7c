/** The steps of a lesson on paper: the piece, and for each step its computed picture beside the sentence. */
import type { Content } from 'pdfmake/interfaces';
import { PICTURE_MARKS } from '#app/words/picture-words.ts';
import { PAGE_PARTS, type PagePart, partTitle } from '#lib/lesson/page-steps.ts';
import type { WeavePicture } from '#lib/weave/picture/draw-piece.ts';

export interface SheetStep {
  readonly part: PagePart;
  readonly number: number;
  readonly sentence: string;
  /** The unit that begins with it; empty where none does. */
  readonly begun: string;
  /** Null for a step that adds no rings, and where no picture can be computed. */
  readonly picture: WeavePicture | null;
}

export interface SheetSteps {
  readonly piece: WeavePicture | null;
  readonly steps: readonly SheetStep[];
}

/** Room for a picture, in points. */
const PIECE = [500, 120] as const;
const STEP = [170, 120] as const;
/** For two moments, one above the other. */
const TALL = [170, 190] as const;

/** On a page of their own, so that the kit can be taken away from them; empty where there are no steps. */
export function stepSheet({ piece, steps }: SheetSteps): readonly Content[] {
  if (steps.length === 0) return [];
  return [
    { text: 'The steps in pictures', style: 'heading', pageBreak: 'before' },
    ...(piece ? [drawn(piece, PIECE)] : []),
    ...PAGE_PARTS.flatMap((part): Content[] => {
      const own = steps.filter((step) => step.part === part);
      return own.length === 0
        ? []
        : [{ text: partTitle(part, steps), style: 'heading' }, ...own.map(stepBeside)];
    }),
    {
      text: PICTURE_MARKS,
      style: 'small',
      margin: [0, 8, 0, 0],
    },
  ];
}

const drawn = ({ svg }: WeavePicture, fit: readonly [number, number]): Content => ({
  svg,
  fit: [...fit],
  margin: [0, 4, 0, 4],
});

const isUpright = ({ svg }: WeavePicture): boolean => {
  const [, width = 0, height = 0] = / width="([\d.]+)" height="([\d.]+)"/.exec(svg)?.map(Number) ?? [];
  return height > 1.1 * width;
};

const stepBeside = ({ number, sentence, begun, picture }: SheetStep): Content => ({
  unbreakable: true,
  columns: [
    { width: 24, text: `${number}.`, bold: true },
    { width: STEP[0], stack: picture ? [drawn(picture, isUpright(picture) ? TALL : STEP)] : [] },
    {
      width: '*',
      stack: [
        ...(begun === '' ? [] : [{ text: begun, bold: true }]),
        { text: sentence.trim() || (picture?.text ?? '') },
        ...(picture && sentence.trim() !== '' ? [{ text: picture.text, style: 'small' }] : []),
      ],
    },
  ],
  columnGap: 8,
  margin: [0, 4, 0, 4],
});
