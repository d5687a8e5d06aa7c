/**
 * A piece walked ring by ring: every ring with its row, every link with the
 * side from which it was made. This is the link graph; what is counted,
 * checked and drawn of a piece comes from here.
 */
import type { Piece, Placement, RingRef, SequencePart, Side } from './placement.ts';
import { endingOf, inRun, planRuns, unitOf } from './runs.ts';

/** One making of one placement. */
export interface Turn {
  readonly placement: Placement;
  readonly part: SequencePart;
  /** Which repeat of the piece, from 0; null outside the repeat. */
  readonly repeat: number | null;
  /** Id of the run; null where the piece has none, and outside the repeat. */
  readonly run: string | null;
}

/** Everything that is made, in order, with `repeats` whole repeats (0 or more). */
export function turnsOf(piece: Piece, repeats: number): readonly Turn[] {
  const outside = (part: 'start' | 'finishing'): readonly Turn[] =>
    piece[part].map((placement) => ({ placement, part, repeat: null, run: null }));
  const turns: Turn[] = [...outside('start')];
  let repeat = 0;
  for (const { run, repeats: times } of planRuns(piece.runs ?? [], repeats)) {
    const unit = unitOf(piece, run?.unit ?? '').map((placement) => inRun(placement, run));
    for (let time = 0; time < times; time += 1, repeat += 1)
      for (const placement of unit) turns.push({ placement, part: 'repeat', repeat, run: run?.id ?? null });
  }
  const ending = endingOf(piece, repeats);
  for (const placement of ending.placements)
    turns.push({
      placement: inRun(placement, ending.run),
      part: 'repeat',
      repeat,
      run: ending.run?.id ?? null,
    });
  return [...turns, ...outside('finishing')];
}

export interface WovenRing {
  /** Its place in `rings`: the order in which rings come into the piece. */
  readonly index: number;
  readonly ringKind: string;
  readonly row: string;
  /** Its place in its row, from 0. */
  readonly at: number;
  readonly made: 'opened' | 'closed';
  /** Index of the turn that added it. */
  readonly turn: number;
  /** 0: the ring that the placement opened; from 1: the closed ones, in order. */
  readonly slot: number;
}

/** An opened ring goes through another one, from that one's front or back. */
export interface Link {
  readonly by: number;
  readonly through: number;
  /** Null where the sequence does not say. */
  readonly from: Side | null;
  readonly turn: number;
}

/** Rings by index; null where the named ring is not there or none is named. */
export interface WovenTurn extends Turn {
  readonly opened: number | null;
  readonly carried: readonly number[];
  /** One entry a pass. */
  readonly passed: readonly (number | null)[];
  /** Rings that the placement's lie is about. */
  readonly laid: readonly (number | null)[];
}

export interface Woven {
  readonly rings: readonly WovenRing[];
  readonly links: readonly Link[];
  readonly turns: readonly WovenTurn[];
  /** Indices of the rings of each row, in order. */
  readonly rows: ReadonlyMap<string, readonly number[]>;
  /** Whether every pass names its ring: only then are the links all there are. */
  readonly isNamed: boolean;
}

/** The ring that a reference names in the rows as they stand; null where there is none. */
export function resolveRef(rows: ReadonlyMap<string, readonly number[]>, ref: RingRef): number | null {
  const row = rows.get(ref.row) ?? [];
  return (ref.from === 'newest' ? row.at(-ref.nth) : row[ref.nth - 1]) ?? null;
}

/** Walks a piece of `repeats` whole repeats. Linear in the rings. */
export function walkPiece(piece: Piece, repeats: number): Woven {
  const rings: WovenRing[] = [];
  const links: Link[] = [];
  const rows = new Map<string, number[]>();
  let isNamed = true;
  const add = (ring: Omit<WovenRing, 'index' | 'at'>): number => {
    const row = rows.get(ring.row) ?? [];
    const index = rings.length;
    rings.push({ ...ring, index, at: row.length });
    row.push(index);
    rows.set(ring.row, row);
    return index;
  };
  const turns = turnsOf(piece, repeats).map((turn, at): WovenTurn => {
    const { placement } = turn;
    const passed = placement.passes.map(({ ring }) => (ring ? resolveRef(rows, ring) : null));
    if (placement.passes.some(({ ring }) => !ring)) isNamed = false;
    const opened =
      placement.opened === null
        ? null
        : add({ ringKind: placement.opened, row: placement.row ?? '', made: 'opened', turn: at, slot: 0 });
    const carried = placement.carries.flatMap((carry, before) => {
      const slot = placement.carries.slice(0, before).reduce((sum, { count }) => sum + count, 1);
      return Array.from({ length: carry.count }, (_, one) => {
        const ring = add({
          ringKind: carry.ringKind,
          row: carry.row ?? '',
          made: 'closed',
          turn: at,
          slot: slot + one,
        });
        if (opened !== null) links.push({ by: opened, through: ring, from: carry.from ?? null, turn: at });
        return ring;
      });
    });
    if (opened !== null)
      passed.forEach((ring, pass) => {
        if (ring !== null)
          links.push({ by: opened, through: ring, from: placement.passes[pass]?.from ?? null, turn: at });
      });
    const laid =
      placement.lays && placement.lays.length > 0
        ? placement.lays.map((ref) => resolveRef(rows, ref))
        : placement.lie === 'as it falls'
          ? []
          : addedBy(opened, carried);
    return { ...turn, opened, carried, passed, laid };
  });
  return { rings, links, turns, rows, isNamed };
}

const addedBy = (opened: number | null, carried: readonly number[]): readonly number[] =>
  opened === null ? carried : [opened, ...carried];

/** For every ring the rings that it is linked with, in the order in which the links are made. */
export function neighboursOf(woven: Pick<Woven, 'rings' | 'links'>): readonly (readonly number[])[] {
  const neighbours: number[][] = woven.rings.map(() => []);
  for (const { by, through } of woven.links) {
    neighbours[by]?.push(through);
    neighbours[through]?.push(by);
  }
  return neighbours;
}
