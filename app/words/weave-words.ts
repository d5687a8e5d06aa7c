/** Words for what a ring sequence says of a whole piece: faults, ends, runs. */
import { countWord } from '#lib/lesson/count-word.ts';
import { placeWord, rowWord } from '#lib/lesson/passes-words.ts';
import type { PieceFault } from '#lib/weave/check-piece.ts';
import type { EndRing, RingRef } from '#lib/weave/placement.ts';

/** `newest of row A`, `newest` where there is one row. */
export const refWords = (ref: RingRef): string => `${placeWord(ref)}${rowWord(ref.row)}`;

const rings = (count: number): string => `${countWord(count)} ${count === 1 ? 'ring' : 'rings'}`;

/** @param nameOf what a ring kind is called */
export function pieceFaultWords(fault: PieceFault, nameOf: (ringKind: string) => string): string {
  switch (fault.code) {
    case 'ring-not-there': {
      const when = fault.repeat === null ? '' : ` in repeat ${fault.repeat}`;
      const ref = refWords({ row: fault.row, nth: fault.nth, from: 'newest' });
      return `Pass ${fault.pass} names the ${ref}, but${when} that row has ${rings(fault.there)} when its turn comes. Add rings before it, or name another one.`;
    }
    case 'laid-not-there':
      return 'How it lies names a ring that is not there. Name another one.';
    case 'passed-twice':
      return `Passes ${fault.first} and ${fault.pass} name the same ring. A ring is passed once; name the other one.`;
    case 'nothing-opened':
      return 'It passes rings but opens none. Say which ring is opened.';
    case 'not-periodic':
      return fault.how === 'same ring'
        ? `Pass ${fault.pass} goes through one and the same ring in every repeat: the whole piece would hang on it. Add to that row in the repeat, or name another row.`
        : `Pass ${fault.pass} reaches other rings from repeat to repeat, so this is no repeat. Look at how the rows grow.`;
    case 'not-joined':
      return `Nothing holds ${fault.rings === 1 ? 'the ring' : `the ${rings(fault.rings)}`} that it adds: the piece falls apart here. Let it pass a ring that is there, or let a later one pass it.`;
    case 'ends-otherwise': {
      const asked = endWords(fault.asked, nameOf);
      const end = fault.end === 'first' ? 'begins' : 'ends';
      return `The piece ${end} otherwise than stated: ${asked} was to be there, and it is ${fault.found ? endWords(fault.found, nameOf) : 'no ring'}. Mend the ${fault.end === 'first' ? 'start' : 'finishing'}, or state the ends anew.`;
    }
    case 'end-not-there':
      return 'The finishing is to follow a placement that the last unit does not have. Choose another one.';
    case 'run-without-unit':
      return `A run repeats the unit “${fault.unit || 'main'}”, and no placement belongs to it.`;
  }
}

/** `the outermost ring of row A, large copper, held by two rings`. */
export function endWords(ring: EndRing, nameOf: (ringKind: string) => string): string {
  const place = ring.nth === 1 ? 'outermost' : `${placeWord({ nth: ring.nth, from: 'first' })} outermost`;
  const kind = ring.ringKind === null ? '' : `, ${nameOf(ring.ringKind)}`;
  const links = ring.links === null ? '' : `, linked with ${rings(ring.links)}`;
  return `the ${place} ring${rowWord(ring.row)}${kind}${links}`;
}
