/**
 * A start position from nothing but who passes through whom and which way:
 * rings without thickness are thrown about, one at a time, and kept where
 * more links come right (simulated annealing). Finds folds only by luck, as
 * links do not show them; a weave with folds needs a start of its own.
 */
import type { CellLink } from './cell-links.ts';
import { linkSign } from './linking.ts';
import { type Cell, inCell, type RoundRing } from './round-ring.ts';
import { add, scale, unit, type Vector } from './vector.ts';

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
  const wanted = new WantedLinks(links);
  const wide = Math.max(...sizes.map((size) => size.radius));
  const [low, high] = search.pitch;
  let cell: Cell = {
    pitch: low + (high - low) * random(),
    twist: search.twist,
    rings: sizes.map((size) => thrown(size, Math.min(high, 2 * wide), wide, random)),
  };
  let faults = wanted.faults(cell);
  for (let n = 0; n < search.throws && faults > 0; n++) {
    const heat = 0.15 * (1 - n / search.throws) + 0.15;
    const next = random() < 0.06 ? otherPitch(cell, search.pitch, random) : otherRing(cell, links, random);
    const change = wanted.change(cell, next);
    if (change <= 0 || random() < Math.exp(-change / heat)) {
      cell = next.cell;
      faults += change;
    }
  }
  return faults === 0 ? cell : null;
}

/** A cell as it would be, and the one ring that is moved in it; null where all are. */
interface Thrown {
  readonly cell: Cell;
  readonly moved: number | null;
}

function otherPitch(cell: Cell, [low, high]: StartSearch['pitch'], random: () => number): Thrown {
  const pitch = Math.min(high, Math.max(low, cell.pitch * (0.85 + 0.3 * random())));
  return { cell: { ...cell, pitch }, moved: null };
}

function otherRing(cell: Cell, links: readonly CellLink[], random: () => number): Thrown {
  const moved = Math.floor(random() * cell.rings.length);
  const ring =
    random() < 0.25
      ? thrownBeside(cell, links, moved, random)
      : nudged(cell.rings[moved] as RoundRing, random);
  return { cell: { ...cell, rings: cell.rings.map((old, index) => (index === moved ? ring : old)) }, moved };
}

/** The wanted links by pair, and how many pairs of a chain are linked otherwise. */
class WantedLinks {
  private readonly signs: ReadonlyMap<string, number>;
  /** Cells that are looked at: one more than the furthest link, where nothing may be linked. */
  private readonly far: number;

  constructor(links: readonly CellLink[]) {
    this.far = 1 + Math.max(...links.map((link) => link.cells), 0);
    this.signs = new Map(links.map(({ a, b, cells, sign }) => [`${a} ${b} ${cells}`, sign]));
  }

  /** How many faults more there are in what is thrown. */
  change(before: Cell, { cell, moved }: Thrown): number {
    return moved === null
      ? this.faults(cell) - this.faults(before)
      : this.faultsOf(cell, moved) - this.faultsOf(before, moved);
  }

  faults(cell: Cell): number {
    let faults = 0;
    for (let k = 0; k <= this.far; k++)
      for (let b = 0; b < cell.rings.length; b++) {
        const second = inCell(cell.rings[b] as RoundRing, cell, k);
        for (let a = 0; a < (k === 0 ? b : cell.rings.length); a++)
          if (this.isFault(cell.rings[a] as RoundRing, second, a, b, k)) faults++;
      }
    return faults;
  }

  /** Of the pairs of one ring alone. */
  private faultsOf(cell: Cell, which: number): number {
    const ring = cell.rings[which] as RoundRing;
    let faults = 0;
    for (let k = 0; k <= this.far; k++) {
      const later = inCell(ring, cell, k);
      const sooner = inCell(ring, cell, -k);
      cell.rings.forEach((other, at) => {
        // Of two rings of one cell the lower comes first; a ring and its own image are one pair.
        if ((k > 0 || at < which) && this.isFault(other, later, at, which, k)) faults++;
        if (at !== which && (k > 0 || at > which) && this.isFault(sooner, other, which, at, k)) faults++;
      });
    }
    return faults;
  }

  private isFault(first: RoundRing, second: RoundRing, a: number, b: number, cells: number): boolean {
    return linkSign(first, second) !== (this.signs.get(`${a} ${b} ${cells}`) ?? 0);
  }
}

function thrown(size: RingSize, pitch: number, wide: number, random: () => number): RoundRing {
  const spread = (): number => (random() * 2 - 1) * 0.9 * wide;
  return { ...size, centre: [random() * pitch, spread(), spread()], normal: anyDirection(random) };
}

/** Anew beside one of the rings that it is to be linked with. */
function thrownBeside(
  cell: Cell,
  links: readonly CellLink[],
  which: number,
  random: () => number,
): RoundRing {
  const ring = cell.rings[which] as RoundRing;
  const own = links.filter(({ a, b }) => a === which || b === which);
  const link = own[Math.floor(random() * own.length)];
  if (!link) return thrown(ring, cell.pitch, ring.radius, random);
  const beside =
    link.a === which
      ? inCell(cell.rings[link.b] as RoundRing, cell, link.cells)
      : inCell(cell.rings[link.a] as RoundRing, cell, -link.cells);
  // Rings that pass through each other have their middles about a radius apart.
  const away = scale(anyDirection(random), beside.radius * (0.3 + 1.2 * random()));
  return { ...ring, centre: add(beside.centre, away), normal: anyDirection(random) };
}

function nudged(ring: RoundRing, random: () => number): RoundRing {
  const by = scale(anyDirection(random), 0.5 * ring.radius * random());
  const lean = scale(anyDirection(random), 0.7 * random());
  return { ...ring, centre: add(ring.centre, by), normal: unit(add(ring.normal, lean)) };
}

function anyDirection(random: () => number): Vector {
  const z = random() * 2 - 1;
  const angle = random() * 2 * Math.PI;
  const r = Math.sqrt(Math.max(0, 1 - z * z));
  return [r * Math.cos(angle), r * Math.sin(angle), z];
}
