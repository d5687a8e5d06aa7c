/**
 * From which face a pass is seen to go in. The front of a ring is the face
 * that is turned to the viewer, so in a piece that lies as it was told every
 * pass is seen from its own side at once.
 */
import type { Side } from '../placement.ts';
import { linkSign } from './linking.ts';
import type { OwnSequence } from './own-weave.ts';
import { type Cell, inCell, type RoundRing } from './round-ring.ts';
import { dot, type Vector } from './vector.ts';

const STEP = Math.PI / 12;

/** How many passes of a repeat are seen otherwise than told, from the side from which the fewest are. */
export function sidesOtherwise(sequence: OwnSequence, cell: Cell): number {
  let fewest = sequence.links.length;
  for (let roll = 0; roll < 2 * Math.PI - 1e-9; roll += STEP)
    fewest = Math.min(fewest, otherwiseFrom(sequence, cell, [0, Math.cos(roll), Math.sin(roll)]));
  return fewest;
}

function otherwiseFrom({ links }: OwnSequence, cell: Cell, toward: Vector): number {
  return passesOtherwise(
    links.map(({ by, through, repeats, from }) => ({
      by,
      ring: cell.rings[by] as RoundRing,
      through: inCell(cell.rings[through] as RoundRing, cell, repeats),
      from,
    })),
    toward,
  );
}

/** A pass as it lies in space. */
export interface LyingPass {
  /** The same for all passes of one ring. */
  readonly by: number;
  readonly ring: RoundRing;
  readonly through: RoundRing;
  /** As told. */
  readonly from: Side;
}

/** How many passes are seen otherwise than told, looked at along `toward`. A ring may run either way round, but only one. */
export function passesOtherwise(passes: readonly LyingPass[], toward: Vector): number {
  const ways = new Map<number, number[]>();
  for (const { by, ring, through, from } of passes) {
    const facing = dot(through.normal, toward) > 0 ? 1 : -1;
    const way = linkSign(ring, through) * facing * (from === 'back' ? 1 : -1);
    ways.set(by, [...(ways.get(by) ?? []), way]);
  }
  let otherwise = 0;
  for (const all of ways.values()) {
    const forward = all.filter((way) => way > 0).length;
    otherwise += Math.min(forward, all.length - forward);
  }
  return otherwise;
}
