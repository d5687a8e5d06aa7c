/**
 * The weaves whose shape in space is known: for each who passes through whom
 * and from which side, and a start position where these do not settle it (a
 * fold shows in neither). Lengths are wire diameters of rings of one size.
 *
 * That the structures are the weaves of these names is common practice; the
 * row offsets of full Persian 6-in-1 and the fold of the box chain are
 * reconstructions.
 */
import type { CellLink } from './cell-links.ts';
import { ALONE, type Cell, middleRadius, type RoundRing } from './round-ring.ts';
import { add, scale, subtract, unit, type Vector } from './vector.ts';

export interface WeaveInSpace {
  readonly id: string;
  readonly links: readonly CellLink[];
  readonly rings: number;
  /** A chain goes on without end; a unit is a closed group of rings. */
  readonly kind: 'chain' | 'unit';
  /** Start turn of a cell against the one before, in degrees, and whether pulling may change it. */
  readonly twist: number;
  readonly freeTwist: boolean;
  /** Rings laid in place for this aspect ratio, wires perhaps overlapping; absent: links and sides settle it. */
  readonly start?: (aspectRatio: number) => Cell;
  /** Whether something lies folded back, which links and sides do not show. */
  readonly isFolded?: boolean;
  /** Aspect ratio of the search for a start. */
  readonly comfortable: number;
}

const lay = (aspectRatio: number, centre: Vector, normal: Vector): RoundRing => ({
  centre,
  normal: unit(normal),
  radius: middleRadius(aspectRatio, 1),
  wire: 1,
});

const QUARTER = Math.PI / 2;

/** Stacks of `count` rings side by side, each stack across the one before. */
const stacks =
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

function byzantine(ar: number): Cell {
  const k = middleRadius(ar, 1) / 2.25;
  const locks = [1, -1].map((side) => lay(ar, [2.98 * k, 0.55 * side, 0], [0, 1, 0]));
  return { pitch: 5.75 * k, twist: QUARTER, rings: [...foldedPairs(ar), ...locks] };
}

function box(ar: number): Cell {
  const k = middleRadius(ar, 1) / 2.25;
  return { pitch: 3.3 * k, twist: 0, rings: foldedPairs(ar) };
}

/** Rows that lean to one side and the other in turn, each ring through two of the next row. */
const leaningRows =
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
function flatAndUpright(ar: number): Cell {
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
function singleAndPair(ar: number): Cell {
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
const doubledRows =
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
function flatTriangles(ar: number): Cell {
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
const petals =
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

/** `a b cells sign` per link. */
const links = (text: string): readonly CellLink[] =>
  text.split(', ').map((each) => {
    const [a = 0, b = 0, cells = 0, sign = 0] = each.split(' ').map(Number);
    return { a, b, cells, sign: sign < 0 ? -1 : 1 };
  });

const chain = (
  weave: Omit<WeaveInSpace, 'kind' | 'freeTwist' | 'links'> & { links: string; freeTwist?: boolean },
): WeaveInSpace => ({ kind: 'chain', freeTwist: false, ...weave, links: links(weave.links) });

const rosette = (count: number): WeaveInSpace => ({
  id: `rosette-${count}`,
  kind: 'unit',
  rings: count,
  twist: 0,
  freeTwist: false,
  comfortable: count + 1,
  start: petals(count),
  links: Array.from({ length: count }, (_, a) =>
    Array.from({ length: count - a - 1 }, (__, i) => ({ a, b: a + 1 + i, cells: 0, sign: 1 as const })),
  ).flat(),
});

const rowsStrip = (rows: number, id: string): WeaveInSpace => ({
  id,
  kind: 'chain',
  rings: rows,
  twist: 0,
  freeTwist: false,
  comfortable: 4,
  start: leaningRows(rows),
  links: Array.from({ length: rows - 1 }, (_, row): readonly CellLink[] =>
    row % 2 === 0
      ? [
          { a: row, b: row + 1, cells: 0, sign: -1 },
          { a: row + 1, b: row, cells: 1, sign: -1 },
        ]
      : [
          { a: row, b: row + 1, cells: 0, sign: 1 },
          { a: row, b: row + 1, cells: 1, sign: 1 },
        ],
  ).flat(),
});

const FOLDED = '0 2 0 1, 0 3 0 1, 1 2 0 1, 1 3 0 1';

export const WEAVES_IN_SPACE: readonly WeaveInSpace[] = [
  chain({
    id: 'chain-1-1',
    rings: 1,
    twist: 90,
    freeTwist: true,
    comfortable: 4,
    start: stacks(1),
    links: '0 0 1 -1',
  }),
  chain({
    id: 'chain-2-2',
    rings: 2,
    twist: 90,
    freeTwist: true,
    comfortable: 4,
    start: stacks(2),
    links: '0 0 1 -1, 0 1 1 -1, 1 0 1 -1, 1 1 1 -1',
  }),
  chain({
    id: 'chain-3-3',
    rings: 3,
    twist: 90,
    freeTwist: true,
    comfortable: 5,
    start: stacks(3),
    links: '0 0 1 -1, 0 1 1 -1, 0 2 1 -1, 1 0 1 -1, 1 1 1 -1, 1 2 1 -1, 2 0 1 -1, 2 1 1 -1, 2 2 1 -1',
  }),
  chain({
    id: 'box-chain',
    isFolded: true,
    rings: 4,
    twist: 0,
    comfortable: 4.5,
    start: box,
    links: `${FOLDED}, 2 0 1 1, 2 1 1 1, 3 0 1 1, 3 1 1 1`,
  }),
  chain({
    id: 'byzantine',
    isFolded: true,
    rings: 6,
    twist: 90,
    comfortable: 3.5,
    start: byzantine,
    links: `${FOLDED}, 2 4 0 1, 2 5 0 1, 3 4 0 1, 3 5 0 1, 4 0 1 -1, 4 1 1 -1, 5 0 1 -1, 5 1 1 -1`,
  }),
  chain({
    id: 'half-persian-3-in-1',
    rings: 2,
    twist: 0,
    comfortable: 4.5,
    links: '0 1 0 -1, 0 1 1 -1, 1 0 1 1',
  }),
  chain({
    id: 'half-persian-4-in-1',
    rings: 2,
    twist: 0,
    comfortable: 5.5,
    links: '1 0 1 1, 0 1 0 1, 0 1 1 -1, 0 1 2 -1',
  }),
  chain({
    id: 'european-6-in-1-two-rows',
    rings: 2,
    twist: 0,
    comfortable: 4.5,
    links: '0 1 0 1, 0 1 1 1, 1 0 1 1',
  }),
  chain({
    id: 'full-persian-6-in-1',
    rings: 4,
    twist: 0,
    comfortable: 5.5,
    links:
      '0 1 0 -1, 0 3 0 1, 1 2 0 1, 2 3 0 -1, 0 1 1 1, 0 3 1 -1, 2 1 1 -1, 2 3 1 1, 0 1 2 1, 0 3 2 -1, 2 1 2 -1, 2 3 2 1',
  }),
  chain({
    id: 'jens-pind-3',
    rings: 1,
    twist: -120,
    freeTwist: true,
    comfortable: 3,
    links: '0 0 1 1, 0 0 2 -1',
  }),
  chain({
    id: 'spiral-4-in-1',
    rings: 1,
    twist: -40,
    freeTwist: true,
    comfortable: 4,
    links: '0 0 1 1, 0 0 2 1',
  }),
  rowsStrip(3, 'european-4-in-1-three-rows'),
  rowsStrip(5, 'european-4-in-1-five-rows'),
  chain({
    id: 'japanese-4-in-1-two-rows',
    rings: 5,
    twist: 0,
    comfortable: 4,
    start: flatAndUpright,
    links: '0 2 0 1, 0 4 0 -1, 1 3 0 1, 1 4 0 1, 2 0 1 -1, 3 1 1 -1',
  }),
  chain({
    id: 'rosettes-of-3',
    rings: 4,
    twist: 0,
    freeTwist: true,
    comfortable: 5,
    links: '0 1 0 1, 0 2 0 1, 1 2 0 1, 0 3 0 1, 1 3 0 1, 2 3 0 1, 3 0 1 1, 3 1 1 1, 3 2 1 1',
  }),
  chain({
    id: 'european-6-in-1-three-rows',
    rings: 3,
    twist: 0,
    comfortable: 5,
    links: '0 1 0 1, 0 1 1 1, 1 0 1 1, 1 2 0 -1, 1 2 1 -1, 2 1 1 -1',
  }),
  chain({
    id: 'chain-2-1',
    rings: 3,
    twist: 0,
    comfortable: 4,
    start: singleAndPair,
    links: '0 1 0 -1, 0 2 0 -1, 1 0 1 1, 2 0 1 1',
  }),
  chain({
    id: 'european-8-in-2-three-rows',
    rings: 6,
    twist: 0,
    comfortable: 6,
    start: doubledRows(3),
    links:
      '0 2 0 -1, 0 3 0 -1, 1 2 0 -1, 1 3 0 -1, 2 4 0 1, 2 5 0 1, 3 4 0 1, 3 5 0 1, 2 0 1 -1, 2 1 1 -1, 2 4 1 1, 2 5 1 1, 3 0 1 -1, 3 1 1 -1, 3 4 1 1, 3 5 1 1',
  }),
  chain({
    id: 'japanese-6-in-1-three-rows',
    rings: 10,
    twist: 0,
    comfortable: 5,
    start: flatTriangles,
    links:
      '0 3 0 1, 0 6 0 1, 1 4 0 1, 1 6 0 -1, 1 7 0 1, 1 8 0 1, 1 9 0 1, 2 5 0 1, 2 8 0 -1, 3 0 1 -1, 4 1 1 -1, 5 2 1 -1, 7 0 1 -1, 9 2 1 -1',
  }),
  rosette(3),
  rosette(4),
  rosette(5),
];

/** The weave with this id; undefined where its shape is not known. */
export const findWeaveInSpace = (id: string): WeaveInSpace | undefined =>
  WEAVES_IN_SPACE.find((weave) => weave.id === id);
