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
import {
  box,
  byzantine,
  doubledRows,
  flatAndUpright,
  flatTriangles,
  leaningRows,
  petals,
  singleAndPair,
  stacks,
} from './lay-starts.ts';
import type { Cell } from './round-ring.ts';

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
