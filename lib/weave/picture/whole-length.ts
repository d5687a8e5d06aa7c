/**
 * The whole length of a piece, line under line as writing runs, each unit in
 * its own colours. Stretches that look alike are drawn once and placed again
 * and again, so that a long piece makes no long file.
 */
import type { PieceShape, PlacedPiece } from '../space/piece-in-space.ts';
import type { Cell } from '../space/round-ring.ts';
import { dot, turnAboutX, type Vector } from '../space/vector.ts';
import { short } from './curve.ts';
import type { WeavePicture } from './draw-piece.ts';
import { drawRings, type PictureRing, scaleOf } from './draw-rings.ts';
import { framePicture } from './frame-picture.ts';
import type { View } from './view.ts';

export interface WholeLength {
  /** The rings to be seen, with their looks, in the order of making. */
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
const OVERLAP = 1.5;
/** The outlines of the outermost rings reach this far beyond their wires. */
const OUTLINE = 1;

/** A length cut into stretches of one width, each drawn once however often it comes. */
export interface Stretched {
  /** What the stretches are made of, to stand in `defs`. */
  readonly defined: readonly string[];
  /** Id of the element at each stretch, from the start; null where there is no ring. */
  readonly ids: readonly (string | null)[];
  /** Picture units, as all that follows: width of a stretch, length of all, and how far they reach up and down. */
  readonly step: number;
  readonly length: number;
  readonly top: number;
  readonly bottom: number;
}

/** @param placed the whole piece; null where a ring in its middle has no place */
export function drawWholeLength(
  placed: PlacedPiece,
  shape: PieceShape,
  whole: WholeLength,
): WeavePicture | null {
  const cut = stretchesOf(placed, shape, whole);
  if (!cut) return null;
  const { ids, step, top, bottom } = cut;
  const lines = Math.ceil(ids.length / Math.max(1, Math.floor(LINE / step)));
  const aLine = Math.ceil(ids.length / lines);
  const down = bottom - top + BETWEEN_LINES;
  const uses = ids.flatMap((id, n) =>
    id === null ? [] : [placedCopy(id, (n % aLine) * step, Math.floor(n / aLine) * down)],
  );
  const box = [0, top, Math.min(aLine, ids.length) * step, top + lines * down - BETWEEN_LINES] as const;
  const svg = framePicture(
    { elements: [`<defs>${cut.defined.join('')}</defs>`, ...uses], box },
    { title: 'The whole piece', description: whole.text },
  );
  return { svg, text: whole.text };
}

export const placedCopy = (id: string, x: number, y: number): string =>
  `<use href="#${id}" x="${short(x)}" y="${short(y)}"/>`;

/**
 * A placed piece cut into stretches; null where a ring in its middle has no
 * place.
 *
 * @param by picture units to the unit of the rings
 * @param name put before ids, where one picture holds several lengths
 */
export function stretchesOf(
  { woven, rings: placedRings }: PlacedPiece,
  shape: PieceShape,
  { rings: all, view }: Pick<WholeLength, 'rings' | 'view'>,
  by = scaleOf(all),
  name = '',
): Stretched | null {
  if (woven.rings.some(({ index, turn }) => woven.turns[turn]?.part === 'repeat' && !placedRings[index]))
    return null;
  const { repeats, extraTwist } = stretchOf(shape.cell);
  const rings = twisted(all, extraTwist / shape.cell.pitch);
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
  const length = Math.max(...spans.map(([, to]) => to)) - start;
  const drawn: (readonly PictureRing[])[] = [];
  const defined: string[] = [];
  let [top, bottom] = [Infinity, -Infinity];
  const ids = Array.from({ length: Math.ceil(length / width) }, (_, n) => {
    const from = start + n * width;
    const there = rings
      .filter((__, at) => (spans[at]?.[0] ?? 0) < from + width && (spans[at]?.[1] ?? 0) > from)
      .map((each) => moved(each, [-from / along, 0, 0]));
    if (there.length === 0) return null;
    const known = drawn.findIndex((other) => looksAlike(other, there, by));
    if (known >= 0) return `${name}s${known}`;
    const id = `${name}s${drawn.push(there) - 1}`;
    const { elements, box } = drawRings(there, view, by, 'simple');
    top = Math.min(top, box[1]);
    bottom = Math.max(bottom, box[3]);
    defined.push(`<g id="${id}" mask="url(#${name}c)">${elements.join('')}</g>`);
    return id;
  });
  const step = width * by;
  const [left, upper] = [short(-OVERLAP), short(top - OUTLINE)];
  const size = `width="${short(step + 2 * OVERLAP)}" height="${short(bottom - top + 2 * OUTLINE)}"`;
  // A mask and no clip: a stretch is drawn whole and then cut, so that no stroke under another shows at the cut.
  const cut = `<mask id="${name}c" maskUnits="userSpaceOnUse" x="${left}" y="${upper}" ${size}><rect x="${left}" y="${upper}" ${size} fill="#fff"/></mask>`;
  return { defined: [cut, ...defined], ids, step, length: length * by, top, bottom };
}

/**
 * Repeats of a stretch, and by how much each is twisted further, in radians,
 * so that stretches look alike: the fewest of which some come round together;
 * else the fewest that nearly do, and the rest is made up as fingers make it
 * up, evenly and by less than is seen.
 */
function stretchOf({ rings, twist }: Cell): { readonly repeats: number; readonly extraTwist: number } {
  const least = Math.max(1, Math.ceil(RINGS_A_STRETCH / rings.length));
  const offRound = (repeats: number): number => {
    const turns = (repeats * twist) / (2 * Math.PI);
    return Math.round(turns) - turns;
  };
  const isRound = (repeats: number): boolean =>
    Array.from({ length: STRETCHES_ROUND }, (_, more) => (more + 1) * repeats).some(
      (all) => Math.abs(offRound(all)) < ROUND,
    );
  const few = Array.from({ length: least + 2 }, (_, more) => least + more).find(isRound);
  if (few !== undefined) return { repeats: few, extraTwist: 0 };
  const most = Math.ceil(MOST_RINGS_A_STRETCH / rings.length);
  const choices = Array.from({ length: most - least + 1 }, (_, more) => least + more).map((repeats) => ({
    repeats,
    extraTwist: (2 * Math.PI * offRound(repeats)) / repeats,
  }));
  const unseen = choices.find(({ extraTwist }) => Math.abs(extraTwist) < UNSEEN_TWIST);
  return (
    unseen ??
    choices.reduce((best, each) => (Math.abs(each.extraTwist) < Math.abs(best.extraTwist) ? each : best))
  );
}

/** A repeat may be twisted by so much more in a picture of a whole length, radians: a degree and a half. */
const UNSEEN_TWIST = Math.PI / 120;
const MOST_RINGS_A_STRETCH = 32;

/** Twisted about the length, evenly; radians to the unit of the rings. */
const twisted = (rings: readonly PictureRing[], by: number): readonly PictureRing[] =>
  by === 0
    ? rings
    : rings.map((each) => {
        const angle = each.ring.centre[0] * by;
        const { centre, normal } = each.ring;
        return {
          ...each,
          ring: { ...each.ring, centre: turnAboutX(centre, angle), normal: turnAboutX(normal, angle) },
        };
      });

/** So many stretches at most come round together. */
const STRETCHES_ROUND = 4;
/** Part of a turn that is none. */
const ROUND = 1e-4;

const moved = (each: PictureRing, by: Vector): PictureRing => {
  const [x, y, z] = each.ring.centre;
  return { ...each, ring: { ...each.ring, centre: [x + by[0], y + by[1], z + by[2]] } };
};

/** Picture units by which rings of stretches that look alike may lie apart: less than their outline is wide. */
const ALIKE = 0.7;

function looksAlike(a: readonly PictureRing[], b: readonly PictureRing[], by: number): boolean {
  const most = ALIKE / by;
  return (
    a.length === b.length &&
    a.every(({ ring, colour, line }, at) => {
      const other = b[at];
      if (
        !other ||
        other.colour !== colour ||
        other.line !== line ||
        Math.abs(other.ring.radius - ring.radius) > most
      )
        return false;
      const turned = dot(other.ring.normal, ring.normal) < 0 ? -1 : 1;
      return ([0, 1, 2] as const).every(
        (axis) =>
          Math.abs(other.ring.centre[axis] - ring.centre[axis]) < most &&
          Math.abs(turned * other.ring.normal[axis] - ring.normal[axis]) * ring.radius < most,
      );
    })
  );
}
