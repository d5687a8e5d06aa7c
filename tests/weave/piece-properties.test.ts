/** What holds of any ring sequence whatever, tried on made-up ones. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { checkPiece } from '#lib/weave/check-piece.ts';
import { type Piece, type Placement, placement, run } from '#lib/weave/placement.ts';
import { planRuns } from '#lib/weave/runs.ts';
import { countPiece, countSequence, mirroredPlacement, totalOf } from '#lib/weave/sequence.ts';
import { turnsOf, walkPiece } from '#lib/weave/walk.ts';
import { WEAVES } from '#lib/weave/weave-library.ts';
import { aPlacement } from '#tests/support/a-making.ts';

const kind = fc.constantFrom('a', 'b', 'c');
const row = fc.constantFrom('', 'A', 'B');
const side = fc.constantFrom('front' as const, 'back' as const);
const ring = fc.record({
  row,
  nth: fc.integer({ min: 1, max: 4 }),
  from: fc.constantFrom('newest' as const, 'first' as const),
});
const anyPlacement = fc
  .record({
    opened: fc.option(kind),
    row,
    unit: fc.constantFrom('', '', 'motif'),
    carries: fc.array(fc.record({ ringKind: kind, count: fc.integer({ min: 1, max: 3 }), row, from: side }), {
      maxLength: 2,
    }),
    passes: fc.array(fc.record({ from: side, ring }), { maxLength: 3 }),
    lie: fc.constantFrom('as it falls' as const, 'over' as const, 'under' as const, 'fold back' as const),
  })
  .map((over): Placement => aPlacement(over));
const placements = fc.array(anyPlacement, { maxLength: 4 });
const anyRun = fc.record({
  id: fc.uuid(),
  unit: fc.constantFrom('', 'motif', 'gone'),
  repeats: fc.option(fc.integer({ min: 1, max: 6 })),
  swaps: fc.array(fc.record({ ringKind: kind, by: kind }), { maxLength: 2 }),
});
const anyPiece = fc
  .record({
    start: placements,
    repeat: placements,
    finishing: placements,
    runs: fc.array(anyRun, { maxLength: 4 }),
    endsAt: fc.integer({ min: -1, max: 4 }),
  })
  .map(
    ({ endsAt, ...parts }): Piece => ({ ...parts, endsAfter: parts.repeat[endsAt]?.id ?? null, ends: null }),
  );
const repeats = fc.integer({ min: 0, max: 14 });
const RUNS = { numRuns: Number(process.env['PIECE_RUNS'] ?? 150) };

test('what is counted is what a walk ring by ring meets', () => {
  fc.assert(
    fc.property(anyPiece, repeats, (piece, n) => {
      const met = new Map<string, { opened: number; closed: number }>();
      for (const { ringKind, made } of walkPiece(piece, n).rings) {
        const before = met.get(ringKind) ?? { opened: 0, closed: 0 };
        met.set(ringKind, { ...before, [made]: before[made] + 1 });
      }
      const counted = [...countPiece(piece, n)].map(([id, { opened, closed, terms }]) => {
        // The working adds up to the count.
        expect(terms.reduce((sum, { times, each }) => sum + times * each.opened, 0)).toBe(opened);
        expect(terms.reduce((sum, { times, each }) => sum + times * each.closed, 0)).toBe(closed);
        return [id, { opened, closed }] as const;
      });
      expect(new Map(counted.filter(([, { opened, closed }]) => opened + closed > 0))).toEqual(met);
    }),
    RUNS,
  );
});

test('without runs and ends it is start + n x repeat + finishing, and opened + closed is all there is', () => {
  fc.assert(
    fc.property(placements, placements, placements, repeats, (start, repeat, finishing, n) => {
      const main = repeat.map((each) => ({ ...each, unit: '' }));
      const piece: Piece = { start, repeat: main, finishing };
      const parts = countSequence(piece);
      let all = 0;
      for (const [id, count] of countPiece(piece, n)) {
        const counts = parts.get(id);
        expect(counts && totalOf(counts, n)).toEqual({ opened: count.opened, closed: count.closed });
        all += count.opened + count.closed;
      }
      expect(all).toBe(walkPiece(piece, n).rings.length);
    }),
    RUNS,
  );
});

test('a plan deals out exactly the repeats there are, in order, and a motif stands in the middle', () => {
  fc.assert(
    fc.property(fc.array(anyRun, { maxLength: 4 }), fc.integer({ min: 0, max: 60 }), (runs, n) => {
      expect(planRuns(runs, n).reduce((sum, stretch) => sum + stretch.repeats, 0)).toBe(n);
    }),
    RUNS,
  );
  const open = (id: string) => ({ id, unit: '', repeats: null, swaps: [] });
  const motif = { ...open('motif'), repeats: 3 };
  for (const n of [3, 4, 11, 24]) {
    const before = planRuns([open('left'), motif, open('right')], n);
    const left = before.find(({ run }) => run?.id === 'left')?.repeats ?? 0;
    const right = before.find(({ run }) => run?.id === 'right')?.repeats ?? 0;
    expect(left - right).toBeGreaterThanOrEqual(0);
    expect(left - right).toBeLessThanOrEqual(1);
    expect(left + 3 + right).toBe(n);
  }
  // 5 copper, 3 silver, 5 copper, and round again where the piece is longer.
  const five = { ...open('five'), repeats: 5 };
  expect(planRuns([five, motif, { ...five, id: 'last' }], 15).map((s) => [s.run?.id, s.repeats])).toEqual([
    ['five', 5],
    ['motif', 3],
    ['last', 5],
    ['five', 2],
  ]);
});

test('mirrored twice is the same, and once turns every side', () => {
  fc.assert(
    fc.property(anyPlacement, (made) => {
      const once = mirroredPlacement(made);
      expect(mirroredPlacement(once)).toEqual(made);
      expect(once.passes.every((pass, at) => pass.from !== made.passes[at]?.from)).toBe(true);
      expect(once.carries.every((carry, at) => carry.from !== made.carries[at]?.from)).toBe(true);
    }),
    RUNS,
  );
});

test('a mirrored weave has the same links, each from the other side', () => {
  for (const { piece } of WEAVES) {
    const turned = {
      ...piece,
      start: piece.start.map(mirroredPlacement),
      repeat: piece.repeat.map(mirroredPlacement),
      finishing: piece.finishing.map(mirroredPlacement),
    };
    const other = { front: 'back', back: 'front' } as const;
    expect(walkPiece(turned, 5).links).toEqual(
      walkPiece(piece, 5).links.map((link) => ({ ...link, from: link.from && other[link.from] })),
    );
    expect(checkPiece(turned).faults).toEqual([]);
  }
});

test('what is stored reads back, and what was stored before rings had names still does', () => {
  fc.assert(
    fc.property(anyPlacement, anyRun, (made, aRun) => {
      expect(placement.parse(JSON.parse(JSON.stringify(made)))).toEqual(made);
      expect(run.parse(JSON.parse(JSON.stringify(aRun)))).toEqual(aRun);
    }),
    RUNS,
  );
  const old = {
    id: 'old',
    opened: 'a',
    carries: [{ ringKind: 'b', count: 2 }],
    passes: [{ from: 'front' }],
    lie: 'fold back',
    sentence: 'Fold it back.',
    atMs: null,
    pictureText: '',
  };
  expect(placement.parse(old)).toEqual(old);
});

test('nothing that can be described is thrown at, and 10,000 repeats are counted', () => {
  fc.assert(
    fc.property(anyPiece, (piece) => {
      expect(Array.isArray(checkPiece(piece).faults)).toBe(true);
    }),
    RUNS,
  );
  const [weave] = WEAVES;
  if (!weave) throw new Error('there are weaves');
  const [[, count] = ['', null]] = [...countPiece(weave.piece, 10_000)];
  expect([count?.opened, count?.closed]).toEqual([10_000, 10_001]);
  expect(turnsOf(weave.piece, 10_000).length).toBe(10_001);
});
