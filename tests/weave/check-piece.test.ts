import { describe, expect, test } from 'vitest';
import { checkPiece } from '#lib/weave/check-piece.ts';
import { endsOf } from '#lib/weave/ends.ts';
import type { Piece, Placement } from '#lib/weave/placement.ts';
import { findWeave, WEAVES } from '#lib/weave/weave-library.ts';

const pieceOf = (id: string): Required<Piece> => {
  const found = findWeave(id);
  if (!found) throw new Error(`no weave ${id}`);
  return found.piece;
};
const codes = (piece: Piece): readonly string[] => checkPiece(piece).faults.map(({ code }) => code);
const persian = pieceOf('half-persian-3-in-1');
const [repeated] = persian.repeat;
if (!repeated) throw new Error('a weave has a repeat');
const withRepeat = (over: Partial<Placement>): Piece => ({ ...persian, repeat: [{ ...repeated, ...over }] });

test.each(WEAVES.map((weave) => [weave.id, weave.piece] as const))('%s can be made', (_, piece) => {
  expect(checkPiece(piece)).toEqual({ faults: [], untold: 0 });
});

describe('what is broken on purpose is found, where it starts', () => {
  test('a ring that is not there yet', () => {
    const early = { ...persian, start: persian.start.slice(1) };
    expect(checkPiece(early).faults[0]).toMatchObject({
      code: 'ring-not-there',
      placementId: 'start-2',
      pass: 1,
      there: 0,
      repeat: null,
    });
  });

  test('a ring passed twice', () => {
    const [pass] = repeated.passes;
    expect(checkPiece(withRepeat({ passes: pass ? [pass, pass] : [] })).faults[0]).toMatchObject({
      code: 'passed-twice',
      placementId: 'repeat-1',
      pass: 2,
      first: 1,
    });
  });

  test('passes without an opened ring', () => {
    expect(codes(withRepeat({ opened: null }))).toContain('nothing-opened');
  });

  test('a ring that nothing holds', () => {
    const loose = {
      ...repeated,
      id: 'loose',
      opened: null,
      passes: [],
      carries: [{ ringKind: 'ring', count: 2, row: 'L' }],
    };
    expect(checkPiece({ ...persian, repeat: [repeated, loose] }).faults).toEqual([
      { code: 'not-joined', placementId: 'loose', rings: 2 },
    ]);
  });

  test('a repeat that always hangs on the start', () => {
    const passes = [{ from: 'back', ring: { row: 'A', nth: 1, from: 'first' } }] as const;
    expect(checkPiece(withRepeat({ passes })).faults).toContainEqual(
      expect.objectContaining({ code: 'not-periodic', how: 'same ring', placementId: 'repeat-1' }),
    );
  });

  test('a repeat that reaches further back than there are rings', () => {
    const piece: Piece = {
      start: persian.start,
      finishing: [],
      repeat: [
        { ...repeated, carries: [...repeated.carries, ...repeated.carries] },
        {
          ...repeated,
          id: 'second',
          carries: [],
          passes: [{ from: 'back', ring: { row: 'B', nth: 9, from: 'newest' } }],
        },
      ],
    };
    expect(codes(piece)).toContain('ring-not-there');
  });

  test('the finishing left out', () => {
    expect(codes({ ...persian, finishing: [] })).toContain('ends-otherwise');
    expect(codes({ ...persian, finishing: [], ends: null })).toEqual([]);
  });

  test('the finishing made at the wrong half of the repeat', () => {
    const two = pieceOf('half-persian-3-in-1-two-sizes');
    const faults = checkPiece({ ...two, endsAfter: null }).faults;
    expect(faults.every(({ code }) => code === 'ends-otherwise')).toBe(true);
    expect(faults[0]).toMatchObject({
      end: 'last',
      asked: { ringKind: 'large' },
      found: { ringKind: 'small' },
      placementId: 'finishing-1',
    });
    expect(codes({ ...two, endsAfter: 'gone' })).toContain('end-not-there');
  });

  test('a run of a unit that is not there', () => {
    const run = { id: 'r', unit: 'motif', repeats: 3, swaps: [] };
    expect(codes({ ...persian, runs: [run] })).toContain('run-without-unit');
  });
});

test('ends that are stated as they come out are never found otherwise, whatever the runs', () => {
  const swaps = [{ ringKind: 'ring', by: 'blue' }];
  for (const counts of [[5, 3, 5], [2, null], [null, 3, null], [1]]) {
    const runs = counts.map((repeats, at) => ({
      id: `run-${at}`,
      unit: '',
      repeats,
      swaps: at % 2 ? swaps : [],
    }));
    const piece = { ...persian, runs };
    expect(codes({ ...piece, ends: endsOf(piece) })).toEqual([]);
  }
});

test('placements that do not tell what they pass are counted, and nothing is claimed of them', () => {
  const passes = repeated.passes.map(({ from }) => ({ from }));
  const check = checkPiece(withRepeat({ passes }));
  expect(check).toEqual({ faults: [], untold: 1 });
  expect(checkPiece(withRepeat({ passes: [] }))).toEqual({ faults: [], untold: 1 });
});
