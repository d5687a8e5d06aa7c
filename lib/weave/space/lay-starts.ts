/**
 * Rings laid in place for an aspect ratio, wires perhaps overlapping: starts
 * of weaves whose shape links and sides do not settle. Lengths are wire
 * diameters of rings of one size.
 */
import { ALONE, type Cell, middleRadius, type RoundRing } from './round-ring.ts';
import { add, scale, subtract, unit, type Vector } from './vector.ts';

const lay = (aspectRatio: number, centre: Vector, normal: Vector): RoundRing => ({
  centre,
  normal: unit(normal),
  radius: middleRadius(aspectRatio, 1),
  wire: 1,
});

const QUARTER = Math.PI / 2;

/** Stacks of `count` rings side by side, each stack across the one before. */
export const stacks =
  (count: number) =>
  (ar: number): Cell => ({
    pitch: 0.8 * ar,
    twist: QUARTER,
    rings: Array.from({ length: count }, (_, i) => lay(ar, [0, 1.1 * (i - (count - 1) / 2), 0], [0, 1, 0])),
  });

/** Two pairs across each other, the later one lying behind the earlier: the fold of box and byzantine. */
function foldedPairs(ar: number): readonly RoundRing[] {
  const k = middleRadius(ar, 1) / 2.25;
  const at = (x: number, y: number, z: number): Vector => [x * k, y * k, z * k];
  return [
    lay(ar, at(0.35, 1.34, 0.04), [-0.37, 0.93, 0]),
    lay(ar, at(0.35, -1.34, 0.04), [0.37, 0.93, 0]),
    lay(ar, at(-0.13, 0.04, 1.34), [0.37, 0, 0.93]),
    lay(ar, at(-0.13, 0.04, -1.34), [-0.37, 0, 0.93]),
  ];
}

export function byzantine(ar: number): Cell {
  const k = middleRadius(ar, 1) / 2.25;
  const locks = [1, -1].map((side) => lay(ar, [2.98 * k, 0.55 * side, 0], [0, 1, 0]));
  return { pitch: 5.75 * k, twist: QUARTER, rings: [...foldedPairs(ar), ...locks] };
}

export function box(ar: number): Cell {
  const k = middleRadius(ar, 1) / 2.25;
  return { pitch: 3.3 * k, twist: 0, rings: foldedPairs(ar) };
}

/** Rows that lean to one side and the other in turn, each ring through two of the next row. */
export const leaningRows =
  (rows: number) =>
  (ar: number): Cell => {
    const k = middleRadius(ar, 1) / 2.25;
    const pitch = 2.5 * k;
    return {
      pitch,
      twist: 0,
      rings: Array.from({ length: rows }, (_, row) => {
        const lean = row % 2 === 0 ? -1 : 1;
        return lay(ar, [row % 2 === 0 ? 0 : pitch / 2, row * 3 * k, 0], [0.574 * lean, 0, 0.819]);
      }),
    };
  };

/** Flat rings two abreast, joined by upright ones along and across. */
export function flatAndUpright(ar: number): Cell {
  // Flat to flat is inner + inner exactly; a hair less, so that nothing touches at the start.
  const side = 2 * ar - 0.02;
  return {
    pitch: side,
    twist: 0,
    rings: [
      lay(ar, [0, 0, 0], [0, 0, 1]),
      lay(ar, [0, side, 0], [0, 0, 1]),
      lay(ar, [side / 2, 0, 0], [0, 1, 0]),
      lay(ar, [side / 2, side, 0], [0, 1, 0]),
      lay(ar, [0, side / 2, 0], [1, 0, 0]),
    ],
  };
}

/** Single rings and pairs in turn. */
export function singleAndPair(ar: number): Cell {
  const pitch = 1.6 * ar;
  return {
    pitch,
    twist: 0,
    rings: [
      lay(ar, [0, 0, 0], [0, 1, 0]),
      lay(ar, [pitch / 2, 0, 0.55], [0, 0, 1]),
      lay(ar, [pitch / 2, 0, -0.55], [0, 0, 1]),
    ],
  };
}

/** Leaning rows with every ring doubled. */
export const doubledRows =
  (rows: number) =>
  (ar: number): Cell => {
    const single = leaningRows(rows)(ar);
    return {
      ...single,
      rings: single.rings.flatMap((ring) =>
        [-0.52, 0.52].map((off) => ({ ...ring, centre: add(ring.centre, scale(ring.normal, off)) })),
      ),
    };
  };

/** Three rows of flat rings in triangles, neighbours joined by upright ones. */
export function flatTriangles(ar: number): Cell {
  const side = 2 * ar - 0.02;
  const rise = (side * Math.sqrt(3)) / 2;
  const upright = (from: Vector, to: Vector): RoundRing => {
    const run = subtract(to, from);
    return lay(ar, add(from, scale(run, 0.5)), [-run[1], run[0], 0]);
  };
  const [a, b, c]: readonly Vector[] = [
    [0, 0, 0],
    [side / 2, rise, 0],
    [0, 2 * rise, 0],
  ];
  if (!a || !b || !c) return { pitch: side, twist: 0, rings: [] };
  const on = (v: Vector): Vector => add(v, [side, 0, 0]);
  return {
    pitch: side,
    twist: 0,
    rings: [
      ...[a, b, c].map((centre) => lay(ar, centre, [0, 0, 1])),
      ...[a, b, c].map((centre) => upright(centre, on(centre))),
      upright(a, b),
      upright(b, on(a)),
      upright(b, c),
      upright(b, on(c)),
    ],
  };
}

/** Rings through each other all the same way, like the petals of a spiral. */
export const petals =
  (count: number) =>
  (ar: number): Cell => {
    const r = middleRadius(ar, 1);
    return {
      pitch: ALONE,
      twist: 0,
      rings: Array.from({ length: count }, (_, i) => {
        const angle = (2 * Math.PI * i) / count;
        return lay(
          ar,
          [0.45 * r * Math.cos(angle), 0.45 * r * Math.sin(angle), 0],
          [-0.574 * Math.sin(angle), 0.574 * Math.cos(angle), 0.819],
        );
      }),
    };
  };
