/**
 * A start position from nothing but who passes through whom and which way:
 * rings without thickness are thrown about, one at a time, and kept where
 * more links come right (simulated annealing). Finds folds only by luck, as
 * links do not show them; a weave with folds needs a start of its own.
 */
import type { CellLink } from './cell-links.ts';
import { linkSign } from './linking.ts';
import { type Cell, inCell, type RoundRing } from './round-ring.ts';
import { scale, unit, type Vector } from './vector.ts';

export interface RingSize {
  readonly radius: number;
  readonly wire: number;
}

export interface StartSearch {
  readonly sizes: readonly RingSize[];
  readonly links: readonly CellLink[];
  /** Turn of each cell against the one before, in radians. */
  readonly twist: number;
  /** Shortest and longest pitch that is tried. */
  readonly pitch: readonly [number, number];
  readonly throws: number;
}

/** A chain with exactly the wanted links, wires not looked at; null where the throws did not suffice. */
export function findStart(search: StartSearch, random: () => number): Cell | null {
  const { sizes, links } = search;
  const far = 1 + Math.max(...links.map((link) => link.cells), 0);
  const wide = Math.max(...sizes.map((size) => size.radius));
  const [low, high] = search.pitch;
  let cell: Cell = {
    pitch: low + (high - low) * random(),
    twist: search.twist,
    rings: sizes.map((size) => thrown(size, high, wide, random)),
  };
  let faults = countFaults(cell, links, far, null);
  for (let n = 0; n < search.throws && faults > 0; n++) {
    const heat = 1.2 * (1 - n / search.throws) + 0.12;
    if (random() < 0.06) {
      const next = { ...cell, pitch: Math.min(high, Math.max(low, cell.pitch * (0.85 + 0.3 * random()))) };
      const then = countFaults(next, links, far, null);
      if (then <= faults || random() < Math.exp((faults - then) / heat)) {
        cell = next;
        faults = then;
      }
      continue;
    }
    const which = Math.floor(random() * sizes.length);
    const ring = cell.rings[which] as RoundRing;
    const moved = random() < 0.25 ? thrown(ring, cell.pitch, wide, random) : nudged(ring, random);
    const next = { ...cell, rings: cell.rings.map((old, index) => (index === which ? moved : old)) };
    const change = countFaults(next, links, far, which) - countFaults(cell, links, far, which);
    if (change <= 0 || random() < Math.exp(-change / heat)) {
      cell = next;
      faults += change;
    }
  }
  return faults === 0 ? cell : null;
}

/** How many pairs are linked otherwise than wanted; of one ring only where `only` names it. */
function countFaults(cell: Cell, links: readonly CellLink[], far: number, only: number | null): number {
  let faults = 0;
  for (let k = 0; k <= far; k++)
    for (let a = 0; a < cell.rings.length; a++)
      for (let b = k === 0 ? a + 1 : 0; b < cell.rings.length; b++) {
        if (only !== null && a !== only && b !== only) continue;
        const sign = linkSign(cell.rings[a] as RoundRing, inCell(cell.rings[b] as RoundRing, cell, k));
        if (sign !== wantedSign(links, a, b, k)) faults++;
      }
  return faults;
}

function wantedSign(links: readonly CellLink[], a: number, b: number, cells: number): number {
  for (const link of links) if (link.a === a && link.b === b && link.cells === cells) return link.sign;
  return 0;
}

function thrown(size: RingSize, pitch: number, wide: number, random: () => number): RoundRing {
  const spread = (): number => (random() * 2 - 1) * 0.9 * wide;
  return { ...size, centre: [random() * pitch, spread(), spread()], normal: anyDirection(random) };
}

function nudged(ring: RoundRing, random: () => number): RoundRing {
  const by = scale(anyDirection(random), 0.5 * ring.radius * random());
  const lean = scale(anyDirection(random), 0.7 * random());
  return {
    ...ring,
    centre: [ring.centre[0] + by[0], ring.centre[1] + by[1], ring.centre[2] + by[2]],
    normal: unit([ring.normal[0] + lean[0], ring.normal[1] + lean[1], ring.normal[2] + lean[2]]),
  };
}

function anyDirection(random: () => number): Vector {
  const z = random() * 2 - 1;
  const angle = random() * 2 * Math.PI;
  const r = Math.sqrt(Math.max(0, 1 - z * z));
  return [r * Math.cos(angle), r * Math.sin(angle), z];
}
