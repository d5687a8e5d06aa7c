/**
 * What is known of a weave before anything is worked out: its smallest
 * aspect ratio and, between stored shapes, its pitch. Rings of one size.
 */
import { ALONE, type Cell, middleRadius } from './round-ring.ts';
import { SETTLED_SHAPES } from './settled-shapes.ts';
import type { SettledShape, SettledWeave } from './settled-weave.ts';
import { unit } from './vector.ts';

export const findSettledWeave = (id: string): SettledWeave | undefined =>
  SETTLED_SHAPES.find((weave) => weave.id === id);

/** A stored shape as rings; wire diameter 1. */
export const cellOfShape = ({ aspectRatio, pitch, twist, rings }: SettledShape): Cell => ({
  pitch,
  twist,
  rings: rings.map(([x = 0, y = 0, z = 0, nx = 0, ny = 0, nz = 1]) => ({
    centre: [x, y, z],
    normal: unit([nx, ny, nz]),
    radius: middleRadius(aspectRatio, 1),
    wire: 1,
  })),
});

/** Pitch of a cell in wire diameters. */
export interface PitchRange {
  /** Pulled as far as rigid rings were found to allow, in the weave's usual way to lie: with the same links and sides rings may lie otherwise, a little longer. */
  readonly taut: number;
  /** Pushed together from taut until nothing gives; a piece at rest lies between. */
  readonly pushed: number;
}

/**
 * The pitch of a chain at an aspect ratio, read between stored shapes, within
 * 0.3 % of what is worked out; null below the smallest aspect ratio, beyond
 * the stored ones, where the chain falls into another fold, and for units.
 */
export function pitchAt(id: string, aspectRatio: number): PitchRange | null {
  const weave = findSettledWeave(id);
  return weave ? pitchIn(weave, aspectRatio) : null;
}

/** The same of a weave that is at hand. */
export function pitchIn(weave: SettledWeave, aspectRatio: number): PitchRange | null {
  if (aspectRatio < weave.leastAspectRatio) return null;
  const all = weave.tightest ? [weave.tightest, ...weave.shapes] : weave.shapes;
  const shapes = all.filter((shape) => shape.pitch < ALONE);
  const last = shapes.at(-1);
  if (!last || aspectRatio > last.aspectRatio || isInJump(shapes, aspectRatio)) return null;
  // Near the smallest aspect ratio the pitch grows like a square root; over the root it is nearly straight.
  const over = (at: number): number => Math.sqrt(Math.max(0, at - weave.leastAspectRatio));
  const x = over(aspectRatio);
  const read = (value: (shape: SettledShape) => number): number =>
    between(
      shapes.map((shape) => [over(shape.aspectRatio), value(shape)] as const),
      x,
    );
  const taut = read((shape) => shape.pitch);
  return {
    taut,
    pushed: Math.min(
      taut,
      read((shape) => shape.pushed ?? shape.pitch),
    ),
  };
}

/** Between two shapes so near each other no pitch grows by so much, unless another fold becomes possible there. */
const JUMP = { within: 0.02, by: 0.03 };

function isInJump(shapes: readonly SettledShape[], aspectRatio: number): boolean {
  const at = shapes.findIndex((shape) => shape.aspectRatio >= aspectRatio);
  const [low, high] = [shapes[at - 1], shapes[at]];
  if (!low || !high || high.aspectRatio === aspectRatio) return false;
  return high.aspectRatio - low.aspectRatio <= JUMP.within && high.pitch > low.pitch * (1 + JUMP.by);
}

type Point = readonly [x: number, y: number];

/** A smooth curve through points by rising x (cubic Hermite, slopes from neighbours); straight outside. */
function between(points: readonly Point[], x: number): number {
  const after = points.findIndex(([px]) => px >= x);
  const right = after < 0 ? points.length - 1 : Math.max(1, after);
  const [x0, y0] = points[right - 1] ?? [0, 0];
  const [x1, y1] = points[right] ?? [x0, y0];
  const width = x1 - x0;
  if (width <= 0) return y0;
  const t = (x - x0) / width;
  const chord = (y1 - y0) / width;
  if (t < 0) return y0 + chord * (x - x0);
  const slope = (at: number): number => {
    const [a, b] = [points[at - 1], points[at + 1]];
    return a && b ? (b[1] - a[1]) / (b[0] - a[0]) : chord;
  };
  const bend = t * (1 - t) * width;
  return y0 + chord * (x - x0) + bend * ((1 - t) * (slope(right - 1) - chord) - t * (slope(right) - chord));
}
