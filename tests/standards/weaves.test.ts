/**
 * The stored weaves against how many links each must have: closed forms that
 * follow from who links with whom (common practice for the weaves; the counts
 * are arithmetic), and against the worked lists of a separate model of
 * rigid rings. Nothing here reads a count from the weave itself.
 */
import { expect, test } from 'vitest';
import { countPiece } from '#lib/weave/sequence.ts';
import { neighboursOf, type Woven, walkPiece } from '#lib/weave/walk.ts';
import { findWeave, WEAVES } from '#lib/weave/weave-library.ts';

function pieceOf(id: string) {
  const found = findWeave(id);
  if (!found) throw new Error(`no weave ${id}`);
  return found.piece;
}

const woven = (id: string, repeats: number): Woven => walkPiece(pieceOf(id), repeats);

/** Links that a piece of `rings` rings must have; r = rings there are, n = repeats. */
const LINKS: readonly (readonly [string, (rings: number, n: number) => number])[] = [
  // n rings in a row: n - 1 links.
  ['chain-1-1', (r) => r - 1],
  // Chains of pairs, p pairs: 4(p - 1), folded or not.
  ['chain-2-2', (r) => 4 * (r / 2 - 1)],
  ['box-chain', (r) => 4 * (r / 2 - 1)],
  ['byzantine', (r) => 4 * (r / 2 - 1)],
  // Threes: 9 between each two.
  ['chain-3-3', (r) => 9 * (r / 3 - 1)],
  // n + 1 pairs, each held by two single rings.
  ['chain-2-1', (_, n) => 4 * (n + 1)],
  // Each ring with the last two: 2n - 3.
  ['spiral-4-in-1', (r) => 2 * r - 3],
  ['jens-pind-3', (r) => 2 * r - 3],
  // A flower of k rings has k(k - 1)/2; a connecting ring joins six petals.
  ['rosettes-of-3', (_, n) => 3 * (n + 1) + 6 * n],
  // European 4-in-1, r rows alternating m and m - 1 rings: 2(r - 1)(m - 1), m = n + 1.
  ['european-4-in-1-three-rows', (_, n) => 2 * 2 * n],
  ['european-4-in-1-five-rows', (_, n) => 2 * 4 * n],
  // Every ring doubled: every link four times.
  ['european-8-in-2-three-rows', (_, n) => 4 * 2 * 2 * n],
  // Two rows of m rings: each with its own and both neighbours of the other row: 3m - 2.
  ['european-6-in-1-two-rows', (r) => 3 * (r / 2) - 2],
  ['half-persian-3-in-1', (r) => 3 * (r / 2) - 2],
  ['half-persian-3-in-1-two-sizes', (r) => 3 * (r / 2) - 2],
  ['european-6-in-1-three-rows', (r) => 2 * (3 * (r / 3) - 2)],
  // Every opened ring holds four of the other row; the last one three.
  ['half-persian-4-in-1', (_, n) => 4 * n + 3],
  ['half-persian-4-in-1-two-sizes', (_, n) => 8 * n + 3],
  // Four joints of two rows each.
  ['full-persian-6-in-1', (r) => 4 * (3 * (r / 4) - 2)],
];

test.each(LINKS)('%s has the links that its kind must have', (id, expected) => {
  for (const n of [1, 2, 3, 7, 40]) {
    const piece = woven(id, n);
    expect(piece.isNamed).toBe(true);
    expect(piece.links.length, `${n} repeats`).toBe(expected(piece.rings.length, n));
    // No two rings are linked twice.
    expect(new Set(piece.links.map(({ by, through }) => [by, through].toSorted().join())).size).toBe(
      piece.links.length,
    );
  }
});

test('Japanese weaves have the connecting rings that their grid must have', () => {
  for (const n of [1, 2, 9]) {
    const columns = n + 1;
    const square = woven('japanese-4-in-1-two-rows', n);
    const count = (piece: Woven, kind: string): number =>
      piece.rings.filter((ring) => ring.ringKind === kind).length;
    // m x n flats: m(n - 1) + n(m - 1); for 10 x 4 that is 66.
    const grid = (m: number, k: number): number => m * (k - 1) + k * (m - 1);
    expect(grid(10, 4)).toBe(66);
    expect(count(square, 'flat')).toBe(2 * columns);
    expect(count(square, 'connector')).toBe(grid(2, columns));
    expect(square.links.length).toBe(2 * grid(2, columns));
    // Hexagonal, r rows of k: r(k - 1) + (r - 1)(2k - 1).
    const hex = woven('japanese-6-in-1-three-rows', n);
    expect(count(hex, 'flat')).toBe(3 * columns);
    expect(count(hex, 'connector')).toBe(3 * (columns - 1) + 2 * (2 * columns - 1));
  }
});

test('an inner ring has as many neighbours as the name of its weave says', () => {
  const inner = (id: string, row: string): number => {
    const piece = woven(id, 12);
    const indices = piece.rows.get(row) ?? [];
    const middle = indices[Math.floor(indices.length / 2)] ?? -1;
    return neighboursOf(piece)[middle]?.length ?? 0;
  };
  expect(inner('chain-2-2', '')).toBe(4);
  expect(inner('box-chain', 'folded')).toBe(4);
  expect(inner('byzantine', 'knot')).toBe(4);
  expect(inner('byzantine', 'folded')).toBe(4);
  expect(inner('byzantine', 'lock')).toBe(4);
  expect(inner('chain-3-3', '')).toBe(6);
  expect(inner('half-persian-3-in-1', 'A')).toBe(3);
  expect(inner('half-persian-3-in-1', 'B')).toBe(3);
  expect(inner('half-persian-4-in-1', 'A')).toBe(4);
  expect(inner('half-persian-4-in-1', 'B')).toBe(4);
  for (const row of ['A', 'B', 'C', 'D']) expect(inner('full-persian-6-in-1', row)).toBe(6);
  expect(inner('spiral-4-in-1', '')).toBe(4);
  expect(inner('jens-pind-3', '')).toBe(4);
  expect(inner('european-4-in-1-five-rows', 'C')).toBe(4);
  expect(inner('european-4-in-1-five-rows', 'B')).toBe(4);
  expect(inner('european-8-in-2-three-rows', 'B')).toBe(8);
  expect(inner('european-6-in-1-three-rows', 'B')).toBe(6);
  expect(inner('japanese-4-in-1-two-rows', 'A')).toBe(3);
  expect(inner('japanese-6-in-1-three-rows', 'B')).toBe(6);
});

// Counts of a separate model of rigid rings: half Persian 3-in-1 has 4 + 2n rings, 2 + n of them opened, 4 + 3n links;
// byzantine 2 + 6n rings, 4n opened, 12n links.
test('half Persian 3-in-1 and byzantine agree with a model of rigid rings', () => {
  for (const n of [1, 5, 30]) {
    const persian = woven('half-persian-3-in-1', n);
    const opened = (piece: Woven): number => piece.rings.filter(({ made }) => made === 'opened').length;
    expect([persian.rings.length, opened(persian), persian.links.length]).toEqual([
      4 + 2 * n,
      2 + n,
      4 + 3 * n,
    ]);
    const byzantine = woven('byzantine', n);
    expect([byzantine.rings.length, opened(byzantine), byzantine.links.length]).toEqual([
      2 + 6 * n,
      4 * n,
      12 * n,
    ]);
  }
});

test('weaves with the same links are told apart by sides and folds', () => {
  const bare = (id: string): string =>
    woven(id, 6)
      .links.map(({ by, through }) => `${Math.min(by, through)}-${Math.max(by, through)}`)
      .toSorted()
      .join(' ');
  const sides = (id: string): string =>
    woven(id, 6)
      .links.map(({ from }) => from)
      .join(' ');
  expect(bare('half-persian-3-in-1')).toBe(bare('european-6-in-1-two-rows'));
  expect(sides('half-persian-3-in-1')).not.toBe(sides('european-6-in-1-two-rows'));
  expect(bare('spiral-4-in-1')).toBe(bare('jens-pind-3'));
  expect(sides('spiral-4-in-1')).not.toBe(sides('jens-pind-3'));
  // Degrees and pairs of a 2-2 chain and of box and byzantine are alike; only these have folds.
  const folds = (id: string): number => woven(id, 6).turns.filter(({ laid }) => laid.length > 0).length;
  expect(folds('chain-2-2')).toBe(0);
  expect(folds('box-chain')).toBeGreaterThan(0);
  expect(folds('byzantine')).toBeGreaterThan(0);
});

// Common practice, no source: half Persian 3-in-1 with 1/4 in and 3/16 in rings.
test('two-size half Persian 3-in-1 comes out as it is made by common practice', () => {
  const piece = pieceOf('half-persian-3-in-1-two-sizes');
  for (const n of [1, 2, 11]) {
    const piece3 = walkPiece(piece, n);
    const kinds = piece3.rings.map(({ ringKind }) => ringKind);
    // Three rings are there and closed before the repeat begins: large, small, large.
    const begun = piece3.rings.filter(({ turn }) => piece3.turns[turn]?.part === 'start');
    expect(begun.map(({ ringKind }) => ringKind)).toEqual(['large', 'small', 'large']);
    const repeats = piece3.turns.flatMap((turn, index) => (turn.part === 'repeat' ? [{ turn, index }] : []));
    // Ends in the middle of a repeat, so that the last carried ring is large.
    expect(repeats.length).toBe(2 * n + 1);
    repeats.forEach(({ turn, index }, at) => {
      const { opened, carried } = turn;
      // One opened ring carries one closed ring of the other size, and the sizes take turns.
      expect(carried.length).toBe(1);
      expect(kinds[opened ?? -1]).toBe(at % 2 === 0 ? 'small' : 'large');
      expect(kinds[carried[0] ?? -1]).toBe(at % 2 === 0 ? 'large' : 'small');
      // Two rings one way and one the other.
      const sides = piece3.links.filter((link) => link.turn === index).map(({ from }) => from);
      expect(sides.toSorted()).toEqual(['back', 'back', 'front']);
    });
    // One large ring that carries none ends it.
    const last = piece3.turns.at(-1);
    expect(last?.part).toBe('finishing');
    expect(last?.carried).toEqual([]);
    expect(kinds[last?.opened ?? -1]).toBe('large');
    // Half are opened: every opened ring has a closed one.
    const made = piece3.rings.map((ring) => ring.made);
    expect(made.filter((how) => how === 'opened').length).toBe(made.filter((how) => how === 'closed').length);
    // Two large rings show at both ends, linked with each other, for the clasp.
    for (const end of [0, -1] as const) {
      const [a, b] = [piece3.rows.get('A')?.at(end), piece3.rows.get('B')?.at(end)];
      expect([kinds[a ?? -1], kinds[b ?? -1]]).toEqual(['large', 'large']);
      expect(neighboursOf(piece3)[a ?? -1]).toContain(b);
      expect(neighboursOf(piece3)[a ?? -1]?.length).toBe(2);
    }
  }
});

// The same practice told with three loose closed rings and a carried one besides three passed ones has four links a ring.
test('three loose closed rings and four links a placement are half Persian 4-in-1', () => {
  const piece = walkPiece(pieceOf('half-persian-4-in-1-two-sizes'), 8);
  expect(piece.turns[0]?.carried.map((ring) => piece.rings[ring]?.ringKind)).toEqual([
    'large',
    'small',
    'large',
  ]);
  for (const end of [0, -1] as const)
    for (const row of ['A', 'B'])
      expect(piece.rings[piece.rows.get(row)?.at(end) ?? -1]?.ringKind).toBe('large');
  const inner = piece.rows.get('A')?.[8] ?? -1;
  expect(neighboursOf(piece)[inner]?.length).toBe(4);
});

test('what is counted is what is walked, for every weave', () => {
  for (const { id, piece } of WEAVES)
    for (const n of [0, 1, 6]) {
      const walked = walkPiece(piece, n).rings;
      for (const [kind, count] of countPiece(piece, n)) {
        const of = walked.filter((ring) => ring.ringKind === kind);
        expect([count.opened, count.closed], `${id}, ${n}`).toEqual([
          of.filter(({ made }) => made === 'opened').length,
          of.filter(({ made }) => made === 'closed').length,
        ]);
      }
    }
});

test('there are at least fifteen weaves, each of its own', () => {
  expect(WEAVES.length).toBeGreaterThanOrEqual(15);
  expect(new Set(WEAVES.map(({ id }) => id)).size).toBe(WEAVES.length);
});
