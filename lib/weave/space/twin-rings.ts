/**
 * Rings that pass through all the same rings, the same way: they lie side by
 * side, like the pairs of a chain of doubled rings. A start is found for one
 * of each such group, as thrown rings hardly ever come to lie like this.
 */
import type { CellLink } from './cell-links.ts';
import { linkedAs } from './cell-links.ts';
import type { Cell } from './round-ring.ts';
import { add, scale } from './vector.ts';

/** For every ring of a cell the group that it belongs to, from 0. */
export function groupsOfTwins(rings: number, links: readonly CellLink[]): readonly number[] {
  const seen = new Map<string, number>();
  return Array.from({ length: rings }, (_, ring) => {
    const others = links.flatMap(({ a, b, cells, sign }) => [
      ...(a === ring ? [`${b} ${cells} ${sign}`] : []),
      ...(b === ring ? [`${a} ${-cells} ${sign}`] : []),
    ]);
    const key = others.sort().join(', ');
    const group = seen.get(key) ?? seen.size;
    seen.set(key, group);
    return group;
  });
}

/** The links of a chain that has one ring for each group. */
export function linksOfGroups(groups: readonly number[], links: readonly CellLink[]): readonly CellLink[] {
  const once = new Map<string, CellLink>();
  for (const { a, b, cells, sign } of links) {
    const [first = 0, second = 0] = [groups[a], groups[b]];
    const link =
      cells === 0 && first > second
        ? { a: second, b: first, cells, sign }
        : { a: first, b: second, cells, sign };
    once.set(`${link.a} ${link.b} ${cells}`, link);
  }
  return [...once.values()];
}

/** Steps between the middles of twins, as parts of their radius: as far apart as the links allow. */
const APART = [0.2, 0.1, 0.05, 0.02, 0.01];

/** Each ring of a chain of groups as its twins, side by side; null where they do not go through what they should. */
export function withTwins(cell: Cell, groups: readonly number[], links: readonly CellLink[]): Cell | null {
  for (const apart of APART) {
    const rings = groups.flatMap((group, ring) => {
      const one = cell.rings[group];
      const before = groups.slice(0, ring).filter((other) => other === group).length;
      const all = groups.filter((other) => other === group).length;
      return one
        ? [
            {
              ...one,
              centre: add(one.centre, scale(one.normal, apart * one.radius * (before - (all - 1) / 2))),
            },
          ]
        : [];
    });
    const whole = { ...cell, rings };
    if (linkedAs(whole, links)) return whole;
  }
  return null;
}
