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
  readonly drawn: ((middle: number, top: number) => string)[];
}

/** Sections in order, never empty; those that are drawn share one scale and bear ids of their own. */
export function drawSections(sections: readonly NamedLength[], text: string): WeavePicture {
  const cuts = sections.flatMap(({ cut }) => (isDrawn(cut) ? [cut] : []));
  const high = Math.max(EMPTY / 2, ...cuts.map(({ top, bottom }) => bottom - top));
  const length = sections.reduce((sum, { cut }) => sum + (isDrawn(cut) ? cut.length : EMPTY) + 2 * JOINT, 0);
  const wide = Math.max(LEAST_LINE, Math.sqrt((length * (high + BETWEEN_LINES)) / TALLEST));
  const letters = wide / LETTERS_A_LINE / LETTER;
  const lines = laidInLines(sections, wide, letters, high);
  let down = 0;
  const elements = lines.map(({ drawn, hasLabel, high: own }) => {
    const top = down + (hasLabel ? 1.5 * letters : 0);
    down = top + own + BETWEEN_LINES;
    return drawn.map((each) => each(top + own / 2, top)).join('');
  });
  const box = [0, 0, Math.max(...lines.map(({ x }) => x)), down - BETWEEN_LINES] as const;
  const defined = [...new Set(cuts.flatMap((cut) => cut.defined))];
  const svg = framePicture(
    { elements: [`<defs>${defined.join('')}</defs>`, ...elements], box },
    { title: 'The whole piece, run by run', description: text },
  );
  return { svg, text };
}

function laidInLines(
  sections: readonly NamedLength[],
  wide: number,
  letters: number,
  least: number,
): readonly Line[] {
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
      line.drawn.push((middle, top) => {
        const reach = Math.max(own.high, least) / 2;
        const from = Math.min(top, middle - reach) - (own.hasLabel ? 1.2 * letters : 0);
        return `<path d="M${short(x)} ${short(from)}V${short(middle + reach)}" stroke="${INK}" stroke-width="2.4" stroke-dasharray="7 5" fill="none"/>`;
      });
      line.x += JOINT;
    }
    const from = line.x;
    line.hasLabel = true;
    line.drawn.push(
      (_, top) =>
        `<text x="${short(from + 2)}" y="${short(top - 0.45 * letters)}" font-size="${short(letters)}" font-weight="700" font-family="sans-serif" fill="${INK}">${escaped(label)}</text>`,
    );
    const labelled = line;
    if (isDrawn(cut)) line = laidStretches(cut, line, { wide, begin });
    else {
      line.high = Math.max(line.high, EMPTY / 2);
      const width = Math.max(EMPTY, written);
      line.drawn.push((middle) =>
        cut === 'missing'
          ? `<rect x="${short(from + 2)}" y="${short(middle - EMPTY / 4)}" width="${short(width - 4)}" height="${EMPTY / 2}" fill="none" stroke="${INK}" stroke-width="1.4" stroke-dasharray="2 4"/>`
          : [1, 2, 3]
              .map(
                (dot) =>
                  `<circle cx="${short(from + (dot * width) / 4)}" cy="${short(middle)}" r="3.2" fill="${INK}"/>`,
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
  { wide, begin }: { readonly wide: number; readonly begin: () => Line },
): Line {
  let line = first;
  ids.forEach((id, n) => {
    const width = Math.min(step, length - n * step);
    if (line.x > 0 && line.x + width > wide && n > 0) line = begin();
    const x = line.x;
    line.high = Math.max(line.high, bottom - top);
    if (id !== null) line.drawn.push((middle) => placedCopy(id, x, middle - (top + bottom) / 2));
    line.x += width;
  });
  return line;
}
