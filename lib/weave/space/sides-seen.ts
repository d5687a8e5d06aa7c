/**
 * From which face a pass is seen to go in. The front of a ring is the face
 * that is turned to the viewer, so in a piece that lies as it was told every
 * pass is seen from its own side at once.
 */
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

function otherwiseFrom({ rings, links }: OwnSequence, cell: Cell, toward: Vector): number {
  let otherwise = 0;
  for (let by = 0; by < rings; by++) {
    const ways = links
      .filter((link) => link.by === by)
      .map(({ through, repeats, from }) => {
        const passed = inCell(cell.rings[through] as RoundRing, cell, repeats);
        const facing = dot(passed.normal, toward) > 0 ? 1 : -1;
        return linkSign(cell.rings[by] as RoundRing, passed) * facing * (from === 'back' ? 1 : -1);
      });
    // A ring may run either way round, but only one.
    const forward = ways.filter((way) => way > 0).length;
    otherwise += Math.min(forward, ways.length - forward);
  }
  return otherwise;
}
