/**
 * Signed links from told sides. A side says against which face of the older
 * ring the newer one goes in; which way round the newer ring runs is left
 * open, ring by ring. Readings that only turn rings over are one and the same.
 */
import type { CellLink } from './cell-links.ts';
import type { OwnSequence } from './own-weave.ts';

/** More readings than this are never tried. */
const MOST = 8;

/**
 * The links under every reading that differs in space, at most eight. The
 * first is the one in which every ring runs the same way round, as a hand
 * that keeps its habit leads them; a reading and its mirror image count once.
 */
export function toldSigns({ rings, links }: OwnSequence): readonly (readonly CellLink[])[] {
  const opened = [...new Set(links.map(({ by }) => by))];
  const readings = new Map<string, readonly CellLink[]>();
  const all = 2 ** Math.min(opened.length - 1, 10);
  for (let reading = 0; reading < all && readings.size < MOST; reading++) {
    const ways = new Map(opened.map((by, at) => [by, at > 0 && (reading >> (at - 1)) & 1 ? -1 : 1]));
    const signed = links.map(({ by, through, repeats, from }): CellLink => {
      const sign = (ways.get(by) === 1) === (from === 'back') ? 1 : -1;
      return repeats < 0 || (repeats === 0 && through < by)
        ? { a: through, b: by, cells: Math.abs(repeats), sign }
        : { a: by, b: through, cells: repeats, sign };
    });
    const key = upright(rings, signed);
    if (!readings.has(key)) readings.set(key, signed);
  }
  return [...readings.values()];
}

/** The links as text with every ring turned so that a tree of links is positive: equal for readings that only turn rings over. */
function upright(rings: number, links: readonly CellLink[]): string {
  const faces = facesOf(rings, links);
  const turned = links.map(
    ({ a, b, cells, sign }) => `${a} ${b} ${cells} ${sign * (faces[a] ?? 1) * (faces[b] ?? 1)}`,
  );
  return turned.sort().join(', ');
}

/** Which rings to turn over, along a tree of links from the first ring on. */
function facesOf(rings: number, links: readonly CellLink[]): readonly number[] {
  const faces: number[] = Array.from({ length: rings }, () => 0);
  const open = (): CellLink | undefined => links.find(({ a, b }) => (faces[a] === 0) !== (faces[b] === 0));
  for (let root = 0; root < rings; root++) {
    if (faces[root] !== 0) continue;
    faces[root] = 1;
    for (let link = open(); link; link = open()) {
      const { a, b, sign } = link;
      if (faces[a] === 0) faces[a] = sign * (faces[b] ?? 1);
      else faces[b] = sign * (faces[a] ?? 1);
    }
  }
  return faces;
}
