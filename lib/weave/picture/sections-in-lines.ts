/**
 * The whole length of a piece that is several weaves: its sections one after
 * another, line under line as writing runs, each under its name. A dashed
 * line stands where one goes over into the next, which nobody worked out.
 */
import { short } from './curve.ts';
import type { WeavePicture } from './draw-piece.ts';
import { escaped, framePicture } from './frame-picture.ts';
import { placedCopy, type Stretched } from './whole-length.ts';

export interface NamedLength {
  /** `2 plain pairs × 3`. */
  readonly label: string;
  /** `missing`: it cannot be drawn, and its place stays empty; `left out`: many that are like those beside it. */
  readonly cut: Stretched | 'missing' | 'left out';
}

const INK = '#16130e';
/** Picture units; what is written grows with the line, so that it is read however small the picture is shown. */
const LEAST_LINE = 560;
/** Height to width beyond which lines become wider. */
const TALLEST = 1.5;
const LETTERS_A_LINE = 38;
/** Width of a bold letter to its height, rather too broad. */
const LETTER = 0.68;
const BETWEEN_LINES = 14;
const JOINT = 22;
const EMPTY = 60;

const isDrawn = (cut: NamedLength['cut']): cut is Stretched => typeof cut !== 'string';

interface Line {
  x: number;
  /** Whether anything is written over it. */
  hasLabel: boolean;
  high: number;
  readonly drawn: ((middle: number, top: number, across: Across) => string)[];
}

/** Where in the picture something stands that reaches from one place along a line to another: mirrored, lines run from the right. */
type Across = (from: number, width: number) => number;

/** Sections in order, never empty; those that are drawn share one scale and bear ids of their own. */
export function drawSections(
  sections: readonly NamedLength[],
  { text, isMirrored }: { readonly text: string; readonly isMirrored: boolean },
): WeavePicture {
  const cuts = sections.flatMap(({ cut }) => (isDrawn(cut) ? [cut] : []));
  const high = Math.max(EMPTY / 2, ...cuts.map(({ top, bottom }) => bottom - top));
  const length = sections.reduce((sum, { cut }) => sum + (isDrawn(cut) ? cut.length : EMPTY) + 2 * JOINT, 0);
  const wide = Math.max(LEAST_LINE, Math.sqrt((length * (high + BETWEEN_LINES)) / TALLEST));
  const letters = wide / LETTERS_A_LINE / LETTER;
  const lines = laidInLines(sections, { wide, letters, least: high, isMirrored });
  const whole = Math.max(...lines.map(({ x }) => x));
  const across: Across = (from, width) => (isMirrored ? whole - from - width : from);
  let down = 0;
  const elements = lines.map(({ drawn, hasLabel, high: own }) => {
    const top = down + (hasLabel ? 1.5 * letters : 0);
    down = top + own + BETWEEN_LINES;
    return drawn.map((each) => each(top + own / 2, top, across)).join('');
  });
  const box = [0, 0, whole, down - BETWEEN_LINES] as const;
  const defined = [...new Set(cuts.flatMap((cut) => cut.defined))];
  const svg = framePicture(
    { elements: [`<defs>${defined.join('')}</defs>`, ...elements], box },
    { title: 'The whole piece, run by run', description: text },
  );
  return { svg, text };
}

interface Layout {
  readonly wide: number;
  /** Height of what is written. */
  readonly letters: number;
  /** Least height of a joint's line. */
  readonly least: number;
  readonly isMirrored: boolean;
}

function laidInLines(sections: readonly NamedLength[], layout: Layout): readonly Line[] {
  const { wide, letters, least, isMirrored } = layout;
  const lines: Line[] = [];
  const begin = (): Line => {
    const line: Line = { x: 0, hasLabel: false, high: 0, drawn: [] };
    lines.push(line);
    return line;
  };
  let line = begin();
  sections.forEach(({ label, cut }, at) => {
    const joint = at > 0 ? JOINT : 0;
    const written = label.length * letters * LETTER;
    const first = isDrawn(cut) ? Math.min(cut.length, cut.step) : EMPTY;
    if (line.x > 0 && line.x + joint + Math.max(written, first) > wide) line = begin();
    if (at > 0) {
      const x = line.x + JOINT / 2;
      const own = line;
      line.drawn.push((middle, top, across) => {
        const reach = Math.max(own.high, least) / 2;
        const from = Math.min(top, middle - reach) - (own.hasLabel ? 1.2 * letters : 0);
        return `<path d="M${short(across(x, 0))} ${short(from)}V${short(middle + reach)}" stroke="${INK}" stroke-width="2.4" stroke-dasharray="7 5" fill="none"/>`;
      });
      line.x += JOINT;
    }
    const from = line.x;
    line.hasLabel = true;
    line.drawn.push(
      (_, top, across) =>
        `<text x="${short(across(from + 2, 0))}" y="${short(top - 0.45 * letters)}" font-size="${short(letters)}" font-weight="700" font-family="sans-serif"${isMirrored ? ' text-anchor="end"' : ''} fill="${INK}">${escaped(label)}</text>`,
    );
    const labelled = line;
    if (isDrawn(cut)) line = laidStretches(cut, line, { wide, begin, isMirrored });
    else {
      line.high = Math.max(line.high, EMPTY / 2);
      const width = Math.max(EMPTY, written);
      line.drawn.push((middle, _, across) =>
        cut === 'missing'
          ? `<rect x="${short(across(from + 2, width - 4))}" y="${short(middle - EMPTY / 4)}" width="${short(width - 4)}" height="${EMPTY / 2}" fill="none" stroke="${INK}" stroke-width="1.4" stroke-dasharray="2 4"/>`
          : [1, 2, 3]
              .map(
                (dot) =>
                  `<circle cx="${short(across(from + (dot * width) / 4, 0))}" cy="${short(middle)}" r="3.2" fill="${INK}"/>`,
              )
              .join(''),
      );
      line.x = from + width;
    }
    if (line === labelled) line.x = Math.max(line.x, from + written);
  });
  return lines;
}

/** Puts stretch after stretch, on further lines where one is full; the line that it ends on. */
function laidStretches(
  { ids, step, length, top, bottom }: Stretched,
  first: Line,
  {
    wide,
    begin,
    isMirrored,
  }: { readonly wide: number; readonly begin: () => Line; readonly isMirrored: boolean },
): Line {
  let line = first;
  const inOrder = ids.map((id, n) => ({ id, width: Math.min(step, length - n * step) }));
  // Cut from the left, where a mirrored piece has its end.
  (isMirrored ? inOrder.toReversed() : inOrder).forEach(({ id, width }, n) => {
    if (line.x > 0 && line.x + width > wide && n > 0) line = begin();
    const x = line.x;
    line.high = Math.max(line.high, bottom - top);
    if (id !== null)
      line.drawn.push((middle, _, across) => placedCopy(id, across(x, width), middle - (top + bottom) / 2));
    line.x += width;
  });
  return line;
}
