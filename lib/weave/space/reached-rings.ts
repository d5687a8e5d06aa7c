/** Which rings of a chain without end hold each other, from link to link. */

/** Ring `a` of a cell is linked with ring `b` of the cell `cells` further on. */
interface Holds {
  readonly a: number;
  readonly b: number;
  readonly cells: number;
}

/** A ring of a chain, by its place in its cell and by its cell. */
export interface ChainRing {
  readonly ring: number;
  readonly cell: number;
}

/** Cells to either side of the first that are looked at: links reach over fewer. */
export const CELLS_WALKED = 12;

/**
 * Tells of any ring whether it is reached from another one.
 *
 * @param opened a ring that holds nothing
 */
export function reachedFrom(
  links: readonly Holds[],
  from: ChainRing,
  opened?: ChainRing,
): (ring: ChainRing) => boolean {
  const keyOf = ({ ring, cell }: ChainRing): string => `${ring} ${cell}`;
  const reached = new Set<string>(opened ? [keyOf(opened)] : []);
  const next: ChainRing[] = [];
  const reach = (to: ChainRing): void => {
    if (Math.abs(to.cell) > CELLS_WALKED || reached.has(keyOf(to))) return;
    reached.add(keyOf(to));
    next.push(to);
  };
  reach(from);
  for (let here = next.pop(); here; here = next.pop())
    for (const { a, b, cells } of links) {
      if (a === here.ring) reach({ ring: b, cell: here.cell + cells });
      if (b === here.ring) reach({ ring: a, cell: here.cell - cells });
    }
  return (ring) => reached.has(keyOf(ring));
}
