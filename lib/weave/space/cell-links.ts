/** Which rings of a chain pass through each other, and whether that is what was wanted. */
import { type LinkSign, linkSign } from './linking.ts';
import { type Cell, inCell, type RoundRing } from './round-ring.ts';

/** Ring `a` of a cell and ring `b` of the cell `cells` further on; each pair once. */
export interface CellLink {
  readonly a: number;
  readonly b: number;
  readonly cells: number;
  readonly sign: Exclude<LinkSign, 0>;
}

/** A pair of rings that may meet: the second one `cells` >= 0 further on, each pair once. */
export interface CellPair {
  readonly a: number;
  readonly b: number;
  readonly cells: number;
}

/** Pairs whose middle circles can come nearer than `within`. */
export function pairsWithin(cell: Cell, within: number): readonly CellPair[] {
  const { rings, pitch, twist } = cell;
  const span = rings.map((ring) => ring.centre[0]);
  const widest = Math.max(...rings.map((ring) => ring.radius));
  const spread = Math.max(...span) - Math.min(...span);
  // A pitch near 0 would let every cell meet every other.
  const cells = Math.min(24, Math.ceil((2 * widest + within + spread) / Math.max(pitch, 1e-3)));
  const pairs: CellPair[] = [];
  for (let k = 0; k <= cells; k++) {
    const cos = Math.cos(k * twist);
    const sin = Math.sin(k * twist);
    rings.forEach((first, a) => {
      rings.forEach((second, b) => {
        if (k === 0 && b <= a) return;
        const [x, y, z] = second.centre;
        const dx = x + k * pitch - first.centre[0];
        const dy = y * cos - z * sin - first.centre[1];
        const dz = y * sin + z * cos - first.centre[2];
        const reach = first.radius + second.radius + within;
        if (dx * dx + dy * dy + dz * dz < reach * reach) pairs.push({ a, b, cells: k });
      });
    });
  }
  return pairs;
}

/** All links of a chain without end, once each. */
export function linksOf(cell: Cell): readonly CellLink[] {
  return pairsWithin(cell, 0).flatMap(({ a, b, cells }) => {
    const sign = linkSign(cell.rings[a] as RoundRing, inCell(cell.rings[b] as RoundRing, cell, cells));
    return sign === 0 ? [] : [{ a, b, cells, sign }];
  });
}

const keyOf = ({ a, b, cells, sign }: CellLink): string => `${a} ${b} ${cells} ${sign}`;

/** Whether a chain is linked exactly as wanted, sides included. */
export function linkedAs(cell: Cell, wanted: readonly CellLink[]): boolean {
  const found = new Set(linksOf(cell).map(keyOf));
  const keys = new Set(wanted.map(keyOf));
  return found.size === keys.size && [...keys].every((key) => found.has(key));
}
