/**
 * Works out lib/weave/space/settled-shapes.ts: for every known weave the
 * smallest aspect ratio and, over a grid of aspect ratios above it, the taut
 * shape and the pitch pushed together; and more of them where the pitch bends
 * sharply between two of the grid. Takes some minutes; the same on every
 * run. `node scripts/settle-weaves.ts [weave …]` works out some anew and keeps
 * the others; `tightest` among them works out the shapes at the smallest
 * aspect ratios alone.
 */
import { writeFileSync } from 'node:fs';
import { linkedAs } from '#lib/weave/space/cell-links.ts';
import { shakenCell } from '#lib/weave/space/derive-weave.ts';
import { findStart } from '#lib/weave/space/find-start.ts';
import { cellOfShape, pitchIn } from '#lib/weave/space/known-shape.ts';
import { randomRow } from '#lib/weave/space/random-row.ts';
import { type Cell, middleRadius } from '#lib/weave/space/round-ring.ts';
import { SETTLED_SHAPES } from '#lib/weave/space/settled-shapes.ts';
import type { SettledShape, SettledWeave } from '#lib/weave/space/settled-weave.ts';
import { isSound, settledChain, thickestChain } from '#lib/weave/space/shape-chain.ts';
import { scale } from '#lib/weave/space/vector.ts';
import { WEAVES_IN_SPACE, type WeaveInSpace } from '#lib/weave/space/weave-in-space.ts';

/** How far above the smallest aspect ratio shapes are kept. */
const ABOVE = [0.004, 0.03, 0.08, 0.15, 0.25, 0.4, 0.6, 0.85, 1.15, 1.5, 2, 2.6, 3.4, 4.4];
const ROUNDS = 400;

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

/** The same places for rings of another aspect ratio. */
function forAspectRatio(cell: Cell, aspectRatio: number): Cell {
  const radius = middleRadius(aspectRatio, 1);
  const by = radius / (cell.rings[0]?.radius ?? radius);
  return {
    pitch: cell.pitch * by,
    twist: cell.twist,
    rings: cell.rings.map((ring) => ({ ...ring, centre: scale(ring.centre, by), radius, wire: 1 })),
  };
}

function startsOf(weave: WeaveInSpace, random: () => number): readonly Cell[] {
  if (weave.start) return [weave.start(weave.comfortable)];
  const radius = middleRadius(weave.comfortable, 1);
  const found = Array.from({ length: 24 }, () =>
    findStart(
      {
        sizes: Array.from({ length: weave.rings }, () => ({ radius, wire: 1 })),
        links: weave.links,
        twist: radians(weave.twist),
        pitch: [0.3, 2 * radius],
        throws: 12_000,
      },
      random,
    ),
  );
  return found.filter((cell) => cell !== null);
}

function settleWeave(weave: WeaveInSpace): SettledWeave {
  const random = randomRow(1);
  const rules = { links: weave.links, freeTwist: weave.freeTwist, rounds: ROUNDS, isCareful: true };
  const starts = startsOf(weave, random);
  let least: { cell: Cell; aspectRatio: number } | null = null;
  const seekLeast = (from: Cell): void => {
    if (!linkedAs(from, weave.links)) return;
    const thick = thickestChain(from, rules);
    const ring = thick?.cell.rings[0];
    if (!thick || !ring) return;
    const aspectRatio = (2 * ring.radius) / (thick.factor * ring.wire) - 1;
    if (!least || aspectRatio < least.aspectRatio - 1e-7) least = { cell: thick.cell, aspectRatio };
  };
  for (const start of starts) seekLeast(start);
  // A unit's petals must not be shaken into another order.
  for (let n = 0; n < 24 && weave.kind === 'chain'; n++) {
    const from = least as { cell: Cell } | null;
    if (from) seekLeast(shakenCell(from.cell, 0.05 + 0.5 * random(), random));
  }
  const found = least as { cell: Cell; aspectRatio: number } | null;
  if (!found) throw new Error(`${weave.id}: no shape found`);
  console.log(weave.id, 'smallest', found.aspectRatio.toFixed(5));
  return onGrid(weave, found, starts);
}

/** Taut shapes over the grid above the smallest aspect ratio that was found. */
function onGrid(
  weave: WeaveInSpace,
  found: { readonly cell: Cell; readonly aspectRatio: number },
  starts: readonly Cell[],
): SettledWeave {
  const random = randomRow(4);
  const rules = { links: weave.links, freeTwist: weave.freeTwist, rounds: ROUNDS, isCareful: true };
  const grid = ABOVE.map((above) => Math.round((found.aspectRatio + above) * 1000) / 1000);
  const taut: (Cell | null)[] = grid.map(() => null);
  const seek = (index: number, from: Cell): void => {
    const start = forAspectRatio(from, grid[index] ?? 0);
    if (!linkedAs(start, weave.links)) return;
    const cell = settledChain(start, 'longest', rules);
    if (cell && cell.pitch > (taut[index]?.pitch ?? 0) + 1e-7) taut[index] = cell;
  };
  const improveAt = (index: number): void => {
    for (const near of [index - 1, index + 1]) {
      const from = taut[near];
      if (from) seek(index, from);
    }
    for (let n = 0; n < 4; n++) {
      const from = taut[index];
      if (from) seek(index, shakenCell(from, 0.1 + 0.6 * random(), random));
    }
  };
  const improve = (): void => {
    const every = grid.map((_, index) => index);
    for (const index of [...every, ...every.toReversed()]) improveAt(index);
  };
  if (weave.kind === 'chain') {
    grid.forEach((_, index) => {
      for (const start of starts.slice(0, 6)) seek(index, start);
      seek(index, found.cell);
    });
    improve();
  } else
    grid.forEach((ar, index) => {
      taut[index] = forAspectRatio(found.cell, ar);
    });

  return refined(weave, {
    id: weave.id,
    leastAspectRatio: round(found.aspectRatio),
    shapes: grid.flatMap((aspectRatio, index) => {
      const cell = taut[index];
      return cell ? [stored(weave, cell, aspectRatio)] : [];
    }),
  });
}

function stored(weave: WeaveInSpace, cell: Cell, aspectRatio: number): SettledShape {
  const rules = { links: weave.links, freeTwist: weave.freeTwist, rounds: ROUNDS, isCareful: true };
  // Straight from taut: further shaking would turn rings over, which no hand does by pushing.
  const short = weave.kind === 'chain' ? (settledChain(cell, 'shortest', rules)?.pitch ?? null) : null;
  return {
    aspectRatio,
    pitch: round(cell.pitch),
    pushed: short === null ? null : round(short),
    twist: round(cell.twist),
    rings: cell.rings.map(({ centre, normal }) => [...centre, ...normal].map(round)),
  };
}

/** More shapes between those of the grid, wherever what is read half way is off by more than this part of what is found there. */
const OFF_BY = 1e-3;
const CLOSEST = 0.01;

function refined(weave: WeaveInSpace, settled: SettledWeave): SettledWeave {
  if (weave.kind !== 'chain') return settled;
  const random = randomRow(2);
  const shapes = [...settled.shapes];
  for (let at = 0; at + 1 < shapes.length; ) {
    const [low = 0, high = 0] = [shapes[at]?.aspectRatio, shapes[at + 1]?.aspectRatio];
    const aspectRatio = Math.round(((low + high) / 2) * 1000) / 1000;
    const read = pitchIn({ ...settled, shapes }, aspectRatio)?.taut ?? 0;
    const cell = high - low < 2 * CLOSEST ? null : longestNear(weave, shapes, { at, aspectRatio }, random);
    if (cell && Math.abs(cell.pitch / read - 1) > OFF_BY)
      shapes.splice(at + 1, 0, stored(weave, cell, aspectRatio));
    else at += 1;
  }
  return { ...settled, shapes };
}

/** The longest of what is found from the stored shapes around a place, as they are and shaken. */
function longestNear(
  weave: WeaveInSpace,
  shapes: readonly SettledShape[],
  { at, aspectRatio }: { readonly at: number; readonly aspectRatio: number },
  random: () => number,
): Cell | null {
  const rules = { links: weave.links, freeTwist: weave.freeTwist, rounds: ROUNDS, isCareful: true };
  let best: Cell | null = null;
  const seek = (from: Cell): void => {
    const start = forAspectRatio(from, aspectRatio);
    const cell = linkedAs(start, weave.links) ? settledChain(start, 'longest', rules) : null;
    if (cell && cell.pitch > (best?.pitch ?? 0) + 1e-7) best = cell;
  };
  for (const shape of shapes.slice(Math.max(0, at - 1), at + 3)) {
    seek(cellOfShape(shape));
    for (let n = 0; n < 3; n++) seek(shakenCell(cellOfShape(shape), 0.1 + 0.6 * random(), random));
  }
  return best;
}

const round = (value: number): number => Math.round(value * 1e5) / 1e5 + 0;

const SHAKES = [0.02, 0.05, 0.1, 0.2, 0.35, 0.55];
/** Petals must not be shaken into another order. */
const SMALL_SHAKES = [0.02, 0.05, 0.1];
const TRIES = 90;
const MUCH_SMALLER = 0.02;
/** So far above the smallest aspect ratio that was found, so that wires clear each other for certain. */
const HAIR = 2e-5;

/** Part of the pitch a little above the smallest aspect ratio that a shape of the same fold has at least. */
const SAME_FOLD = 0.85;

/** The weave with its shape at the smallest aspect ratio, sought for longer than the others, and that ratio where it is smaller. */
function withTightest(weave: WeaveInSpace, settled: SettledWeave): SettledWeave {
  const isUnit = weave.kind === 'unit';
  const shakes = isUnit ? SMALL_SHAKES : SHAKES;
  const random = randomRow(3);
  const rules = { links: weave.links, freeTwist: weave.freeTwist, rounds: ROUNDS, isCareful: true };
  let best: { cell: Cell; aspectRatio: number } | null = null;
  const seek = (from: Cell, rounds: number): void => {
    if (!linkedAs(from, weave.links)) return;
    const thick = thickestChain(from, { links: weave.links, freeTwist: weave.freeTwist, rounds });
    const ring = thick?.cell.rings[0];
    if (!thick || !ring) return;
    const aspectRatio = (2 * ring.radius) / (thick.factor * ring.wire) - 1;
    if (best && aspectRatio > best.aspectRatio - 1e-8) return;
    if (isUnit) {
      best = { cell: thick.cell, aspectRatio };
      return;
    }
    // Much shorter it hangs in another fold, which shaking came upon and no hand makes of this one.
    const near = forAspectRatio(thick.cell, Math.max(aspectRatio + HAIR, settled.leastAspectRatio));
    const taut = settledChain(near, 'longest', { ...rules, rounds: 160 });
    if ((taut?.pitch ?? 0) > SAME_FOLD * (settled.shapes[0]?.pitch ?? 0))
      best = { cell: thick.cell, aspectRatio };
  };
  for (const shape of settled.shapes.slice(0, 2)) seek(cellOfShape(shape), 600);
  if (weave.start) seek(weave.start(weave.comfortable), 600);
  for (let n = 0; n < (isUnit ? 5 * TRIES : TRIES); n++) {
    const from = best as { cell: Cell } | null;
    if (from) seek(shakenCell(from.cell, shakes[n % shakes.length] ?? 0, random), n % 3 === 0 ? 2000 : 500);
  }
  const found = best as { cell: Cell; aspectRatio: number } | null;
  if (!found) throw new Error(`${weave.id}: no tightest shape found`);
  const aspectRatio = Math.ceil((found.aspectRatio + HAIR) * 1e5) / 1e5;
  const near = forAspectRatio(found.cell, aspectRatio);
  // Nothing pulls a closed group of rings.
  const taut = isUnit ? (isSound(near, weave.links) ? near : null) : settledChain(near, 'longest', rules);
  if (!taut) throw new Error(`${weave.id}: no shape at ${aspectRatio}`);
  console.log(weave.id, 'tightest', found.aspectRatio.toFixed(6), 'pitch', taut.pitch.toFixed(5));
  const exactly = ({ centre, normal }: Cell['rings'][number]) =>
    [...centre, ...normal].map((value) => Math.round(value * 1e9) / 1e9 + 0);
  // The grid began where the first search had ended.
  const grid =
    !isUnit && found.aspectRatio < settled.leastAspectRatio - MUCH_SMALLER
      ? onGrid(weave, found, [])
      : settled;
  return {
    ...grid,
    leastAspectRatio: round(found.aspectRatio),
    tightest: {
      ...stored(weave, taut, aspectRatio),
      pitch: Math.round(taut.pitch * 1e9) / 1e9,
      twist: Math.round(taut.twist * 1e9) / 1e9,
      rings: taut.rings.map(exactly),
    },
  };
}

const wanted = process.argv.slice(2);
const isTightestAlone = wanted.includes('tightest');
const named = wanted.filter((each) => each !== 'tightest');
const settled = WEAVES_IN_SPACE.map((weave) => {
  const before = SETTLED_SHAPES.find(({ id }) => id === weave.id);
  if (before && named.length > 0 && !named.includes(weave.id)) return before;
  return withTightest(weave, before && isTightestAlone ? before : settleWeave(weave));
});
const text = `/** Made by scripts/settle-weaves.ts; see there. Lengths in wire diameters, twists in radians. */
import type { SettledWeave } from './settled-weave.ts';

export const SETTLED_SHAPES: readonly SettledWeave[] = ${JSON.stringify(settled)};
`;
writeFileSync(new URL('../lib/weave/space/settled-shapes.ts', import.meta.url), text);
