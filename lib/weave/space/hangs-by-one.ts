/**
 * Whether a chain hangs on single rings here and there: one ring opened, and
 * it falls in two. At such a ring it turns freely, however it is laid.
 */
import type { CellLink } from './cell-links.ts';

/** Cells to either side of the opened ring; links reach over fewer. */
const CELLS = 10;

/** Whether opening any one ring of a chain without end parts it. */
export function hangsByOne(rings: number, links: readonly CellLink[]): boolean {
  return Array.from({ length: rings }, (_, ring) => ring).some((ring) => parts(rings, links, ring));
}

function parts(rings: number, links: readonly CellLink[], opened: number): boolean {
  const key = (ring: number, cell: number): number => (cell + CELLS) * rings + ring;
  const reached = new Set<number>();
  const next: { readonly ring: number; readonly cell: number }[] = [];
  const reach = (ring: number, cell: number): void => {
    const at = key(ring, cell);
    if (Math.abs(cell) > CELLS || (ring === opened && cell === 0) || reached.has(at)) return;
    reached.add(at);
    next.push({ ring, cell });
  };
  // A ring of the same place one end further on: from there the other end must be in reach.
  reach(opened, -CELLS);
  for (let here = next.pop(); here; here = next.pop())
    for (const { a, b, cells } of links) {
      if (a === here.ring) reach(b, here.cell + cells);
      if (b === here.ring) reach(a, here.cell - cells);
    }
  return !reached.has(key(opened, CELLS));
}
