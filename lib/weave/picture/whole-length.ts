/**
 * The whole length of a piece, line under line as writing runs, each unit in
 * its own colours. Stretches that look alike are drawn once and placed again
 * and again, so that a long piece makes no long file.
 */
import type { PieceShape, PlacedPiece } from '../space/piece-in-space.ts';
import { dot, type Vector } from '../space/vector.ts';
import { short } from './curve.ts';
import type { WeavePicture } from './draw-piece.ts';
import { drawRings, type PictureRing, scaleOf } from './draw-rings.ts';
import { framePicture } from './frame-picture.ts';
import type { View } from './view.ts';

export interface WholeLength {
  /** All rings that have a place, with their looks, in the order of making. */
  readonly rings: readonly PictureRing[];
  readonly view: View;
  /** What the picture shows, in words. */
  readonly text: string;
}

/** Rings that a stretch should at least take on: each is drawn with its neighbours, which costs most for short ones. */
const RINGS_A_STRETCH = 8;
/** Widest line, in picture units; twelve to a wire. */
const LINE = 840;
const BETWEEN_LINES = 16;
/** Stretches overlap by this much, so that no seam shows; picture units. */
const OVERLAP = 0.6;

/** @param placed the whole piece; null where a ring in its middle has no place */
export function drawWholeLength(
  { woven, rings: placedRings }: PlacedPiece,
  shape: PieceShape,
  { rings, view, text }: WholeLength,
): WeavePicture | null {
  if (woven.rings.some(({ index, turn }) => woven.turns[turn]?.part === 'repeat' && !placedRings[index]))
    return null;
  const by = scaleOf(rings);
  // A chain that twists comes round after some stretches, and then they are alike again.
  const repeats = Math.max(1, Math.ceil(RINGS_A_STRETCH / shape.cell.rings.length));
  // The length of a piece lies level in the picture, shortened where its ends are swung.
  const along = view.right[0];
  const width = shape.cell.pitch * repeats * Math.abs(along);
  const spans = rings.map(({ ring }) => {
    const lean = dot(ring.normal, view.right);
    const half = ring.radius * Math.sqrt(Math.max(0, 1 - lean * lean)) + ring.wire;
    const middle = dot(ring.centre, view.right);
    return [middle - half, middle + half] as const;
  });
  const start = Math.min(...spans.map(([from]) => from));
  const count = Math.ceil((Math.max(...spans.map(([, to]) => to)) - start) / width);
  const drawn = new Map<string, number>();
  const defined: string[] = [];
  let [top, bottom] = [Infinity, -Infinity];
  const stretches: (number | null)[] = [];
  for (let n = 0; n < count; n++) {
    const from = start + n * width;
    const there = rings
      .filter((_, at) => (spans[at]?.[0] ?? 0) < from + width && (spans[at]?.[1] ?? 0) > from)
      .map((each) => moved(each, [-from / along, 0, 0]));
    if (there.length === 0) {
      stretches.push(null);
      continue;
    }
    const key = there.map(keyOf).join();
    let id = drawn.get(key);
    if (id === undefined) {
      id = drawn.size;
      drawn.set(key, id);
      const { elements, box } = drawRings(there, view, by);
      top = Math.min(top, box[1]);
      bottom = Math.max(bottom, box[3]);
      defined.push(`<g id="s${id}" clip-path="url(#c)">${elements.join('')}</g>`);
    }
    stretches.push(id);
  }
  const step = width * by;
  const lines = Math.ceil(stretches.length / Math.max(1, Math.floor(LINE / step)));
  const aLine = Math.ceil(stretches.length / lines);
  const down = bottom - top + BETWEEN_LINES;
  const uses = stretches.flatMap((id, n) =>
    id === null
      ? []
      : [`<use href="#s${id}" x="${short((n % aLine) * step)}" y="${short(Math.floor(n / aLine) * down)}"/>`],
  );
  const clip = `<clipPath id="c"><rect x="${short(-OVERLAP)}" y="${short(top)}" width="${short(step + 2 * OVERLAP)}" height="${short(bottom - top)}"/></clipPath>`;
  const box = [0, top, Math.min(aLine, stretches.length) * step, top + lines * down - BETWEEN_LINES] as const;
  const svg = framePicture(
    { elements: [`<defs>${clip}${defined.join('')}</defs>`, ...uses], box },
    { title: 'The whole piece', description: text },
  );
  return { svg, text };
}

const moved = (each: PictureRing, by: Vector): PictureRing => {
  const [x, y, z] = each.ring.centre;
  return { ...each, ring: { ...each.ring, centre: [x + by[0], y + by[1], z + by[2]] } };
};

/** Equal for stretches that look alike; a thousandth of the unit is less than a pixel. */
const keyOf = ({ ring, colour }: PictureRing): string =>
  [...ring.centre, ...ring.normal, ring.radius].map((part) => Math.round(part * 1000)).join(' ') + colour;
