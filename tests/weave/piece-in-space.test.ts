import { expect, test } from 'vitest';
import { drawFinished, drawTurn } from '#lib/weave/picture/draw-piece.ts';
import { matchPiece } from '#lib/weave/space/match-piece.ts';
import { pieceCell } from '#lib/weave/space/piece-cell.ts';
import { placePiece, shapeOfPiece, weaveOfPiece } from '#lib/weave/space/piece-in-space.ts';
import { findWeaveInSpace } from '#lib/weave/space/weave-in-space.ts';
import { findWeave, WEAVES, type Weave } from '#lib/weave/weave-library.ts';
import { gaussLinking, sampledDistance } from '#tests/support/check-in-space.ts';

const SHAPED = [
  'chain-1-1',
  'chain-2-2',
  'chain-3-3',
  'box-chain',
  'byzantine',
  'half-persian-3-in-1',
  'half-persian-3-in-1-two-sizes',
  'half-persian-4-in-1',
  'full-persian-6-in-1',
  'spiral-4-in-1',
  'jens-pind-3',
  'rosettes-of-3',
  'european-4-in-1-three-rows',
  'european-4-in-1-five-rows',
  'european-6-in-1-two-rows',
  'european-6-in-1-three-rows',
  'european-8-in-2-three-rows',
  'chain-2-1',
  'japanese-6-in-1-three-rows',
  'japanese-4-in-1-two-rows',
];

const SIZES: Readonly<Record<string, { inner: number; wire: number }>> = {
  large: { inner: 6.35, wire: 1.2 },
  small: { inner: 4.7625, wire: 0.9 },
  connector: { inner: 4, wire: 1 },
};

const sizesFor = (weave: Weave) =>
  new Map(weave.roles.map(({ id }) => [id, SIZES[id] ?? { inner: 6.4, wire: 1.1 }]));

const known = (id: string): Weave => {
  const weave = findWeave(id);
  if (!weave) throw new Error(id);
  return weave;
};

test.each(SHAPED)(
  '%s: start, repeats and finishing stand in space linked exactly as the sequence says',
  (id) => {
    const { piece, ...weave } = known(id);
    const sizes = sizesFor({ piece, ...weave });
    const shape = shapeOfPiece(piece, sizes);
    if (!shape.ok) throw new Error(shape.fault.code);
    const { woven, rings } = placePiece(piece, shape.value, 2, sizes);
    const found: string[] = [];
    rings.forEach((a, i) => {
      rings.slice(i + 1).forEach((b, more) => {
        if (!a || !b) throw new Error(`${id}: a ring without a place`);
        if (Math.hypot(...a.centre.map((at, axis) => at - (b.centre[axis] ?? 0))) > a.radius + b.radius + 1)
          return;
        expect(sampledDistance(a, b, 30)).toBeGreaterThanOrEqual(0.9999 * ((a.wire + b.wire) / 2));
        if (Math.round(gaussLinking(a, b, 60)) !== 0) found.push(`${i} ${i + 1 + more}`);
      });
    });
    const told = woven.links.map(({ by, through }) => `${Math.min(by, through)} ${Math.max(by, through)}`);
    expect(found.sort()).toEqual(told.sort());
  },
);

test('no weave of the library is taken for another', () => {
  for (const weave of WEAVES) {
    const cell = pieceCell(weave.piece);
    const found = cell && weaveOfPiece(cell)?.known.weave.id;
    if (found) expect(weave.id.startsWith(found), `${weave.id} taken for ${found}`).toBe(true);
    else expect(SHAPED).not.toContain(weave.id);
  }
});

test('a side told the wrong way round is a contradiction, and named', () => {
  const cell = pieceCell(known('half-persian-3-in-1').piece);
  const weave = findWeaveInSpace('half-persian-3-in-1');
  if (!cell || !weave) throw new Error('not there');
  expect(matchPiece(cell, weave)?.contradictions).toEqual([]);
  const links = cell.links.map((link) => ({ ...link, from: 'back' as const }));
  expect(matchPiece({ ...cell, links }, weave)?.contradictions).toHaveLength(1);
  // All from one side is the European strip with the same links.
  expect(weaveOfPiece({ ...cell, links })?.known.weave.id).toBe('european-6-in-1-two-rows');
  expect(matchPiece({ ...cell, links: links.slice(1) }, weave)).toBeNull();
});

const wishes = {
  kinds: new Map([
    ['large', { name: 'large copper', colour: '#b8703f' }],
    ['small', { name: 'small steel ring', colour: '#c9ccd1' }],
  ]),
  roll: 0,
  side: 'front' as const,
};

test('pictures of a sequence: the same bytes each time, and their words from the same facts', () => {
  const weave = known('half-persian-3-in-1-two-sizes');
  const shape = shapeOfPiece(weave.piece, sizesFor(weave));
  if (!shape.ok) throw new Error(shape.fault.code);
  const placed = placePiece(weave.piece, shape.value, 2, sizesFor(weave));
  expect(drawFinished(placed, shape.value, wishes)).toEqual(drawFinished(placed, shape.value, wishes));
  expect(drawFinished(placed, shape.value, wishes).text).toBe(
    'A piece of 14 rings, pulled taut: 8 large copper rings and 6 small steel rings.',
  );
  const steps = placed.woven.turns.map((_, turn) => drawTurn(placed, shape.value, turn, wishes));
  expect(steps.map((step) => step?.text).slice(0, 3)).toEqual([
    'Laid out, closed: large copper ring 1 and small steel ring 2.',
    'Opened large copper ring 3 enters, from the back, ring 1; then, from the front, ring 2.',
    'Opened small steel ring 4 enters, from the back, rings 1 and 2; carries large copper ring 5, entered from the front.',
  ]);
  for (const step of steps) {
    expect(step?.svg).toContain(`<desc>${step?.text}</desc>`);
    expect(step?.svg).not.toMatch(/<script|<style|style=|href|NaN|Infinity/);
  }
});
