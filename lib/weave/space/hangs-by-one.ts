/**
 * Whether a chain hangs on single rings here and there: one ring opened, and
 * it falls in two. At such a ring it turns freely, however it is laid.
 */
import type { CellLink } from './cell-links.ts';
import { CELLS_WALKED, reachedFrom } from './reached-rings.ts';

/** Whether opening any one ring of a chain without end parts it. */
export function hangsByOne(rings: number, links: readonly CellLink[]): boolean {
  // Rings of the same place at both ends: from one the other must be in reach.
  return Array.from({ length: rings }, (_, ring) => ring).some(
    (ring) =>
      !reachedFrom(links, { ring, cell: -CELLS_WALKED }, { ring, cell: 0 })({ ring, cell: CELLS_WALKED }),
  );
}
