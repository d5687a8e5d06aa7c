/**
 * Arrows along a ring where it goes through openings, the way it goes, with
 * the numbers of the rings that it goes through. Openings that it goes through
 * in one movement share an arrow.
 */
import type { Side } from '../placement.ts';
import { short } from './curve.ts';
import { UNITS_A_WIRE } from './draw-rings.ts';

const INK = '#16130e';
const PAPER = '#fffdf8';

/** One opening as it is seen: where in the picture, which way, from which side of the opening, and whose. */
export interface SeenOpening {
  readonly at: Point;
  readonly way: Point;
  readonly from: Side;
  readonly into: string;
}

type Point = readonly [number, number];

/** An arrow through one opening or several. */
export interface ThroughArrow {
  readonly foot: Point;
  readonly head: Point;
  readonly from: Side;
  /** Numbers of the rings that it goes through, rising. */
  readonly into: readonly string[];
}

/** An arrow with its numbers: where they stand, and half the size of their frame. */
export interface NumberedArrow extends ThroughArrow {
  readonly numbers: { readonly text: string; readonly at: Point; readonly half: Point };
}

const REACH = UNITS_A_WIRE * 1.05;
/** Openings nearer than this, entered from one side and nearly one way, are one movement. */
const NEAR = UNITS_A_WIRE * 2;
const SAME_WAY = 0.4;

const unitOf = ([x, y]: Point): Point => {
  const long = Math.hypot(x, y);
  return long < 1e-6 ? [0, -1] : [x / long, y / long];
};
const dotOf = (a: Point, b: Point): number => a[0] * b[0] + a[1] * b[1];
const distance = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

export function arrowsThrough(openings: readonly SeenOpening[]): readonly NumberedArrow[] {
  const groups: SeenOpening[][] = [];
  for (const each of openings) {
    const group = groups.find((members) =>
      members.some(
        (other) =>
          other.from === each.from &&
          distance(other.at, each.at) < NEAR &&
          dotOf(unitOf(other.way), unitOf(each.way)) > SAME_WAY,
      ),
    );
    if (group) group.push(each);
    else groups.push([each]);
  }
  return numbered(apart(groups.map(arrowOf)));
}

/** How far apart the feet of two arrows stand at least: two marks beside each other. */
const APART = 11;

/** Arrows that would lie on one another are moved to either side of where they meet, so that every foot shows its mark. */
function apart(arrows: readonly ThroughArrow[]): readonly ThroughArrow[] {
  const moved = [...arrows];
  for (let b = 1; b < moved.length; b++)
    for (let a = 0; a < b; a++) {
      const [one, other] = [moved[a] as ThroughArrow, moved[b] as ThroughArrow];
      const gap = APART - distance(one.foot, other.foot);
      if (gap <= 0) continue;
      const [dx, dy] = wayOf(one);
      const across = [other.foot[0] - one.foot[0], other.foot[1] - one.foot[1]] as const;
      const side: Point = dotOf(across, [-dy, dx]) < 0 ? [dy, -dx] : [-dy, dx];
      const lies = dotOf(across, side);
      const by = (Math.sqrt(APART ** 2 - (distance(one.foot, other.foot) ** 2 - lies ** 2)) - lies) / 2;
      moved[a] = shiftedBy(one, side, -by);
      moved[b] = shiftedBy(other, side, by);
    }
  return moved;
}

const wayOf = ({ foot, head }: ThroughArrow): Point => unitOf([head[0] - foot[0], head[1] - foot[1]]);

const shiftedBy = (arrow: ThroughArrow, [x, y]: Point, by: number): ThroughArrow => ({
  ...arrow,
  foot: [arrow.foot[0] + x * by, arrow.foot[1] + y * by],
  head: [arrow.head[0] + x * by, arrow.head[1] + y * by],
});

function arrowOf(group: readonly SeenOpening[]): ThroughArrow {
  const way = unitOf([
    group.reduce((sum, each) => sum + unitOf(each.way)[0], 0),
    group.reduce((sum, each) => sum + unitOf(each.way)[1], 0),
  ]);
  const inOrder = group.toSorted((a, b) => dotOf(a.at, way) - dotOf(b.at, way));
  const [first, last] = [inOrder[0] as SeenOpening, inOrder.at(-1) as SeenOpening];
  return {
    foot: [first.at[0] - way[0] * REACH, first.at[1] - way[1] * REACH],
    head: [last.at[0] + way[0] * REACH, last.at[1] + way[1] * REACH],
    from: first.from,
    into: inOrder
      .map(({ into }) => into)
      .filter((into) => into !== '')
      .sort((a, b) => Number(a) - Number(b)),
  };
}

/** Turns from straight behind its foot at which an arrow's numbers may stand, the best first; radians. */
const BESIDE = [0, 0.7, -0.7, 1.3, -1.3, 1.8, -1.8];
/** Numbers stand this far from other arrows at least, or a reader takes them for theirs. */
const CLEAR = 7;

/** Numbers at the foot of each arrow, where none stands at another one's head. */
function numbered(arrows: readonly ThroughArrow[]): readonly NumberedArrow[] {
  const done: NumberedArrow[] = [];
  for (const arrow of arrows) {
    const others = arrows.filter((other) => other !== arrow);
    const choices = BESIDE.map((turn) => {
      const numbers = numbersAt(arrow, turn);
      const room = Math.min(
        CLEAR,
        ...others.flatMap(({ foot, head }) =>
          [0, 0.25, 0.5, 0.75, 1].map((part) =>
            toFrame(numbers, [foot[0] + (head[0] - foot[0]) * part, foot[1] + (head[1] - foot[1]) * part]),
          ),
        ),
        ...done.map((other) => betweenFrames(numbers, other.numbers)),
      );
      return { numbers, room };
    });
    const best = choices.reduce((a, b) => (b.room > a.room + 0.5 ? b : a));
    done.push({ ...arrow, numbers: best.numbers });
  }
  return done;
}

type Frame = NumberedArrow['numbers'];

function numbersAt({ foot, head, into }: ThroughArrow, turn: number): Frame {
  const text = into.join('+');
  const half: Point = [2.3 * text.length + 2.4, 5];
  const [wx, wy] = unitOf([head[0] - foot[0], head[1] - foot[1]]);
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const [dx, dy] = [wx * c - wy * s, wx * s + wy * c];
  const away = 4.2 + Math.min(half[0] / Math.max(1e-6, Math.abs(dx)), half[1] / Math.max(1e-6, Math.abs(dy)));
  return { text, at: [foot[0] - dx * away, foot[1] - dy * away], half };
}

const toFrame = ({ at, half }: Frame, [x, y]: Point): number =>
  Math.hypot(Math.max(0, Math.abs(x - at[0]) - half[0]), Math.max(0, Math.abs(y - at[1]) - half[1]));

const betweenFrames = (a: Frame, b: Frame): number =>
  Math.hypot(
    Math.max(0, Math.abs(a.at[0] - b.at[0]) - a.half[0] - b.half[0]),
    Math.max(0, Math.abs(a.at[1] - b.at[1]) - a.half[1] - b.half[1]),
  );

/**
 * From the back it comes towards the eye: a full head and a dot at its foot;
 * from the front it goes away: a cross at its foot, as the feather of an arrow
 * that is seen from behind.
 */
export function drawArrow(arrow: NumberedArrow): string {
  const { foot, head, from } = arrow;
  const [[x0, y0], [x1, y1]] = [foot, head];
  const [dx, dy] = unitOf([x1 - x0, y1 - y0]);
  const [bx, by] = [x1 - dx * 6, y1 - dy * 6];
  const shaft = `M${short(x0)} ${short(y0)}L${short(bx)} ${short(by)}`;
  const point = `M${short(x1)} ${short(y1)}L${short(bx - dy * 4)} ${short(by + dx * 4)}L${short(bx + dy * 4)} ${short(by - dx * 4)}z`;
  const ring = `<circle cx="${short(x0)}" cy="${short(y0)}" r="3.4" fill="${PAPER}" stroke="${INK}" stroke-width="1.2"/>`;
  const mark =
    from === 'back'
      ? `<circle cx="${short(x0)}" cy="${short(y0)}" r="1.2" fill="${INK}"/>`
      : `<path d="M${short(x0 - 2.2)} ${short(y0 - 2.2)}l4.4 4.4m0-4.4l-4.4 4.4" stroke="${INK}" stroke-width="1.2"/>`;
  return `<path d="${shaft}" stroke="${PAPER}" stroke-width="5.5" stroke-linecap="round"/><path d="${point}" fill="${PAPER}" stroke="${PAPER}" stroke-width="3.5" stroke-linejoin="round"/><path d="${shaft}" stroke="${INK}" stroke-width="2.2" stroke-linecap="round"/><path d="${point}" fill="${INK}"/>${ring}${mark}${drawNumbers(arrow.numbers)}`;
}

function drawNumbers({ text, at, half }: Frame): string {
  if (text === '') return '';
  const [x, y] = at;
  return `<rect x="${short(x - half[0])}" y="${short(y - half[1])}" width="${short(2 * half[0])}" height="${short(2 * half[1])}" rx="2" fill="${PAPER}" fill-opacity=".92"/><text x="${short(x)}" y="${short(y + 2.7)}" font-size="7.6" font-weight="700" font-family="sans-serif" text-anchor="middle" fill="${INK}">${text}</text>`;
}
