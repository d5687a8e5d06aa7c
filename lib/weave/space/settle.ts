/**
 * Pulls, pushes or swells a chain until nothing gives: sequential linear
 * programming with a short step. Each round takes every near approach of two
 * wires as a linear condition, goes as far along the wish as they allow, and
 * keeps the step only where it gains more than it overlaps. What it finds is
 * the best shape near the start, not proven to be the best of all.
 */

import { pairsWithin } from './cell-links.ts';
import { approaches } from './circle-distance.ts';
import { type Cell, inCell, leastDistance, type RoundRing } from './round-ring.ts';
import { type Condition, furthestStep, type Step } from './small-program.ts';
import {
  add,
  cross,
  dot,
  scale,
  spanAcross,
  subtract,
  turn,
  turnAboutX,
  unit,
  type Vector,
} from './vector.ts';

/** What is sought: the longest or the shortest pitch at the given wires, or the thickest wires (as a factor). */
export type Wish = 'longest' | 'shortest' | 'thickest';

export interface Settling {
  readonly wish: Wish;
  /** Whether a cell may turn against the one before. */
  readonly freeTwist: boolean;
  /** Rounds after which it gives up improving. */
  readonly rounds: number;
  /** Gains below this in several rounds in a row end it, as a part of the wire; 2e-7 unless told. */
  readonly leastGain?: number;
  /** Wires may overlap by this part of their thickness on the way; any part unless told, as long as it gains more. */
  readonly mostOverlap?: number;
  /** Stops as soon as wires are this thick (wish `thickest`) or the pitch is this long (`longest`). */
  readonly enough?: number;
}

export interface Settled {
  readonly cell: Cell;
  /** Factor of the wires of the start that the shape holds; 1 unless wires were sought. */
  readonly swell: number;
  /** Most that two wires overlap, in the unit of the rings. */
  readonly overlap: number;
  readonly rounds: number;
}

interface State {
  readonly cell: Cell;
  readonly swell: number;
}

interface Gap {
  readonly gap: number;
  readonly row: Float64Array;
}

const PER_RING = 5;

/** Settles a chain from a start whose wires do not meet. */
export function settle(start: Cell, settling: Settling, startSwell = 1): Settled {
  const size = meanRadius(start);
  const thin = Math.min(...start.rings.map((ring) => ring.wire));
  let state: State = { cell: start, swell: startSwell };
  let reach = 0.25 * thin * Math.min(1, startSwell);
  let gaps = gapsOf(state, reachOf(reach), settling, size);
  let quiet = 0;
  let round = 0;
  const wish = wishOf(start, settling, thin);
  const { leastGain = 2e-7, mostOverlap = Number.POSITIVE_INFINITY } = settling;
  for (; round < settling.rounds && quiet < 8; round++) {
    const step = stepOf(gaps, wish, reach);
    if (!step) {
      reach /= 4;
      if (reach < 1e-10 * thin) break;
      continue;
    }
    const price = 1.5 * Math.max(0.1, ...step.forces);
    const next = moved(state, step.z, size);
    const nextGaps = gapsOf(next, reachOf(reach), settling, size);
    const before = worthOf(state, settling.wish, thin) - price * overlapSum(gaps);
    const after = worthOf(next, settling.wish, thin) - price * overlapSum(nextGaps);
    const isTooNear = overlapOf(nextGaps) > Math.max(overlapOf(gaps), mostOverlap * thin);
    if ((after < before || isTooNear) && longestMove(step.z) > 1e-11 * thin) {
      reach /= 2;
      if (reach < 1e-9 * thin) break;
      continue;
    }
    quiet = after - before < leastGain * thin && overlapOf(nextGaps) < 5 * leastGain * thin ? quiet + 1 : 0;
    state = next;
    gaps = nextGaps;
    // Shorter than a wire is thick, so that none slips through another.
    reach = Math.min(reach * 1.6, 0.5 * thin * Math.min(1, state.swell));
    if (isEnough(state, settling) && overlapOf(gaps) < 1e-3 * thin) break;
  }
  const polished = polish(state, settling, size, thin);
  return { ...polished, rounds: round };
}

function isEnough({ cell, swell }: State, { wish, enough }: Settling): boolean {
  if (enough === undefined || wish === 'shortest') return false;
  return wish === 'thickest' ? swell >= enough : cell.pitch >= enough;
}

/** Moves rings as little as possible until no wires overlap; the pitch may give, and the wires too where their thickness was sought. */
function polish(from: State, settling: Settling, size: number, thin: number): Omit<Settled, 'rounds'> {
  let state = from;
  let overlap = 0;
  for (let n = 0; n < 12; n++) {
    const gaps = gapsOf(state, 0.2 * thin, settling, size);
    overlap = overlapOf(gaps);
    if (overlap < 1e-11 * thin) break;
    const still = new Float64Array(start(gaps));
    const step = stepOf(gaps, still, 1);
    if (!step) break;
    state = moved(state, step.z, size);
  }
  return { ...state, overlap };
}

const start = (gaps: readonly Gap[]): number => gaps[0]?.row.length ?? 0;

const reachOf = (reach: number): number => 2.5 * reach + 1e-3;

const meanRadius = ({ rings }: Cell): number =>
  rings.reduce((sum, ring) => sum + ring.radius, 0) / rings.length;

/** Unknowns: per ring three of place and two of tilt, then pitch, twist and swell; all as lengths. */
const unknowns = (cell: Cell): number => cell.rings.length * PER_RING + 3;

function wishOf(cell: Cell, { wish }: Settling, thin: number): Float64Array {
  const wanted = new Float64Array(unknowns(cell));
  const pitchAt = cell.rings.length * PER_RING;
  if (wish === 'thickest') wanted[pitchAt + 2] = thin;
  else wanted[pitchAt] = wish === 'longest' ? 1 : -1;
  return wanted;
}

function worthOf({ cell, swell }: State, wish: Wish, thin: number): number {
  if (wish === 'thickest') return swell * thin;
  return wish === 'longest' ? cell.pitch : -cell.pitch;
}

function stepOf(gaps: readonly Gap[], wish: Float64Array, reach: number): Step | null {
  const conditions: readonly Condition[] = gaps.map(({ gap, row }) => ({ row, floor: -gap }));
  return furthestStep(wish, reach, conditions);
}

const overlapOf = (gaps: readonly Gap[]): number => gaps.reduce((most, { gap }) => Math.max(most, -gap), 0);
const overlapSum = (gaps: readonly Gap[]): number =>
  gaps.reduce((sum, { gap }) => sum + Math.max(0, -gap), 0);
const longestMove = (z: Float64Array): number =>
  z.reduce((most, value) => Math.max(most, Math.abs(value)), 0);

/** Every approach of two wires nearer than `within` beyond touching, with how it changes by each unknown. */
function gapsOf({ cell, swell }: State, within: number, settling: Settling, size: number): readonly Gap[] {
  const n = unknowns(cell);
  const pitchAt = cell.rings.length * PER_RING;
  const spans = cell.rings.map((ring) => spanAcross(ring.normal));
  const thick = Math.max(...cell.rings.map((ring) => ring.wire)) * swell;
  return pairsWithin(cell, thick + within).flatMap(({ a, b, cells }) => {
    const first = cell.rings[a] as RoundRing;
    const second = cell.rings[b] as RoundRing;
    const image = inCell(second, cell, cells);
    const need = leastDistance(first, second);
    return approaches(first, image, need * swell + within).map(({ distance, onA, onB }) => {
      const row = new Float64Array(n);
      const away = unit(subtract(onB, onA));
      addRing(row, a, scale(away, -1), subtract(onA, first.centre), spans[a] as Spans, size);
      const back = -cells * cell.twist;
      addRing(
        row,
        b,
        turnAboutX(away, back),
        turnAboutX(subtract(onB, image.centre), back),
        spans[b] as Spans,
        size,
      );
      row[pitchAt] = cells * away[0];
      if (settling.freeTwist) row[pitchAt + 1] = (cells * dot(away, cross([1, 0, 0], onB))) / size;
      if (settling.wish === 'thickest') row[pitchAt + 2] = -need;
      return { gap: distance - need * swell, row };
    });
  });
}

type Spans = readonly [Vector, Vector];

function addRing(
  row: Float64Array,
  ring: number,
  away: Vector,
  arm: Vector,
  [u, v]: Spans,
  size: number,
): void {
  const o = ring * PER_RING;
  const lever = cross(arm, away);
  const parts = [away[0], away[1], away[2], dot(u, lever) / size, dot(v, lever) / size];
  parts.forEach((part, i) => {
    row[o + i] = (row[o + i] as number) + part;
  });
}

function moved({ cell, swell }: State, z: Float64Array, size: number): State {
  const at = (index: number): number => z[index] as number;
  const pitchAt = cell.rings.length * PER_RING;
  return {
    swell: swell + at(pitchAt + 2),
    cell: {
      pitch: cell.pitch + at(pitchAt),
      twist: cell.twist + at(pitchAt + 1) / size,
      rings: cell.rings.map((ring, index) => {
        const o = index * PER_RING;
        const [u, v] = spanAcross(ring.normal);
        const tilt = add(scale(u, at(o + 3) / size), scale(v, at(o + 4) / size));
        return {
          ...ring,
          centre: add(ring.centre, [at(o), at(o + 1), at(o + 2)]),
          normal: unit(turn(ring.normal, tilt)),
        };
      }),
    },
  };
}
