/**
 * Which ring of a known weave each ring of a sequence's repeat is: found by
 * their links alone, then held against the sides from which rings are
 * passed. So a sequence is proved against the shape: a link too many or too
 * few, or a side that no turning over of rings explains, is told.
 */
import type { CellLink } from './cell-links.ts';
import type { KnownWeave } from './known-weave.ts';
import type { PieceCell, PieceLink } from './piece-cell.ts';

/** The image of a ring of repeat 0: ring of the weave's cell, and which cell. */
export interface Image {
  readonly ring: number;
  readonly cell: number;
}

export interface PieceMatch {
  readonly images: readonly Image[];
  /** Cells of the weave in one repeat; negative where the piece grows the other way along. */
  readonly cellsARepeat: number;
  /** Passes whose side the shape contradicts; empty where all agree. */
  readonly contradictions: readonly PieceLink[];
}

export interface Neighbour extends Image {
  readonly sign: number;
}

/** The best match: fewest contradictions, growing forwards where both ways fit; null where the links differ. */
export function matchPiece(piece: PieceCell, weave: KnownWeave['weave']): PieceMatch | null {
  const facings = facingsOf(piece, weave);
  const times = piece.rings.length / weave.rings;
  if (!Number.isInteger(times) || piece.links.length !== times * weave.links.length) return null;
  const neighbours = imagesNear(weave);
  const isTwisted = weave.twist !== 0;
  let best: PieceMatch | null = null;
  for (const { cellsARepeat, first } of beginnings(times, weave))
    for (const images of placings(piece, neighbours, cellsARepeat, first)) {
      const contradictions = fewestWrong(piece, images, { cellsARepeat, neighbours, isTwisted }, facings);
      if (!best || contradictions.length < best.contradictions.length)
        best = { images, cellsARepeat, contradictions };
      if (contradictions.length === 0) return best;
    }
  return best;
}

/** Where the first ring of a repeat may stand, and which way the repeats may grow from there. */
export function* beginnings(
  times: number,
  weave: KnownWeave['weave'],
): Iterable<{ readonly cellsARepeat: number; readonly first: Image }> {
  for (const cellsARepeat of [times, -times])
    for (let ring = 0; ring < weave.rings; ring++) yield { cellsARepeat, first: { ring, cell: 0 } };
}

/**
 * Whether a ring of the next repeat turns the same face to the maker (1) or
 * the other one (-1). A repeat that turns the chain by half shows the other
 * face; what is folded back was passed before it was folded, so either may be.
 */
export function facingsOf(piece: PieceCell, weave: KnownWeave['weave']): readonly (1 | -1)[] {
  if (piece.isFolded) return [1, -1];
  const turned = Math.abs((weave.twist * piece.rings.length) / weave.rings) % 360;
  return turned === 180 ? [-1] : [1];
}

export function imagesNear(weave: KnownWeave['weave']): readonly (readonly Neighbour[])[] {
  const all: Neighbour[][] = Array.from({ length: weave.rings }, () => []);
  for (const { a, b, cells, sign } of weave.links satisfies readonly CellLink[]) {
    all[a]?.push({ ring: b, cell: cells, sign });
    all[b]?.push({ ring: a, cell: -cells, sign });
  }
  return all;
}

/** How two images are linked in the weave; 0 where they are not. */
export function signBetween(neighbours: readonly (readonly Neighbour[])[], a: Image, b: Image): number {
  const found = neighbours[a.ring]?.find(({ ring, cell }) => ring === b.ring && cell === b.cell - a.cell);
  return found?.sign ?? 0;
}

export const shifted = (image: Image, cells: number): Image => ({
  ring: image.ring,
  cell: image.cell + cells,
});

/** Every way to place the piece's rings so that all its links are links of the weave; at most a few hundred. */
function placings(
  piece: PieceCell,
  neighbours: readonly (readonly Neighbour[])[],
  cellsARepeat: number,
  first: Image,
): readonly (readonly Image[])[] {
  const found: (readonly Image[])[] = [];
  const times = Math.abs(cellsARepeat);
  const images: (Image | null)[] = piece.rings.map(() => null);
  images[0] = first;
  // The same ring one repeat on is another image; images must differ within one repeat's cells.
  const placeOf = ({ ring, cell }: Image): string => `${ring} ${((cell % times) + times) % times}`;
  const taken = new Set([placeOf(first)]);
  const fits = (link: PieceLink): boolean => {
    const [by, through] = [images[link.by], images[link.through]];
    if (!by || !through) return true;
    return signBetween(neighbours, by, shifted(through, link.repeats * cellsARepeat)) !== 0;
  };
  /** Where the ring at the open end of a link may stand, beside the one at its other end. */
  const optionsFor = (link: PieceLink): { readonly asked: number; readonly options: readonly Image[] } => {
    const known = images[link.by] ? link.by : link.through;
    const asked = known === link.by ? link.through : link.by;
    const away = (known === link.by ? link.repeats : -link.repeats) * cellsARepeat;
    const from = images[known] as Image;
    const beside = (neighbours[from.ring] ?? []).map(({ ring, cell }) => ({
      ring,
      cell: from.cell + cell - away,
    }));
    return { asked, options: beside.filter((image) => !taken.has(placeOf(image))) };
  };
  const extend = (): void => {
    if (found.length >= 400) return;
    const link = piece.links.find(({ by, through }) => !images[by] !== !images[through]);
    if (!link) {
      if (images.every((image) => image !== null) && piece.links.every(fits))
        found.push([...images] as Image[]);
      return;
    }
    const { asked, options } = optionsFor(link);
    const own = piece.links.filter((each) => each.by === asked || each.through === asked);
    for (const image of options) {
      images[asked] = image;
      taken.add(placeOf(image));
      if (own.every(fits)) extend();
      taken.delete(placeOf(image));
      images[asked] = null;
    }
  };
  extend();
  return found;
}

interface Grounds {
  readonly cellsARepeat: number;
  readonly neighbours: readonly (readonly Neighbour[])[];
  readonly facing: 1 | -1;
  readonly isTwisted: boolean;
}

/** The contradictions under the facing that leaves the fewest. */
export function fewestWrong(
  piece: Pick<PieceCell, 'links'>,
  images: readonly Image[],
  grounds: Omit<Grounds, 'facing'>,
  facings: readonly (1 | -1)[],
): readonly PieceLink[] {
  let fewest: readonly PieceLink[] | null = null;
  for (const facing of facings) {
    const wrong = wrongSides(piece, images, { ...grounds, facing });
    if (!fewest || wrong.length < fewest.length) fewest = wrong;
    if (fewest.length === 0) break;
  }
  return fewest ?? [];
}

/**
 * A ring runs one way through all that it passes, and turns one face to the
 * maker: two signs that are free, the second one for all rings of a row of an
 * untwisted weave together. Passes that no choice of them explains are
 * contradictions. Passes without a side are not held against anything.
 */
function wrongSides(
  piece: Pick<PieceCell, 'links'>,
  images: readonly Image[],
  { cellsARepeat, neighbours, facing, isTwisted }: Grounds,
): readonly PieceLink[] {
  const told = piece.links.flatMap((link) => {
    const [by, through] = [images[link.by], images[link.through]];
    if (!by || !through || link.from === null) return [];
    const sign = signBetween(neighbours, by, shifted(through, link.repeats * cellsARepeat));
    const faced = link.repeats % 2 === 0 ? 1 : facing;
    return [
      {
        link,
        by: `by ${link.by}`,
        through: `through ${isTwisted ? `${link.through}` : `row ${through.ring}`}`,
        parity: sign * faced * (link.from === 'back' ? 1 : -1),
      },
    ];
  });
  return wrongTold(told);
}

/** A told side: whose sign of going through, whose sign of facing, and the product that both must have. */
export interface ToldSide<L> {
  readonly link: L;
  readonly by: string;
  readonly through: string;
  readonly parity: number;
}

/**
 * Told sides that contradict the others: signs are chosen so that what is
 * told first holds, and turned round again where more sides then agree.
 */
export function wrongTold<L>(told: readonly ToldSide<L>[]): readonly L[] {
  const signs = new Map<string, number>();
  for (let left = told; left.length > 0; ) {
    const next = left.find(({ by, through }) => signs.has(by) || signs.has(through)) ?? left[0];
    if (!next) break;
    left = left.filter((each) => each !== next);
    const { by, through, parity } = next;
    if (!signs.has(by)) signs.set(by, signs.has(through) ? parity * (signs.get(through) ?? 1) : 1);
    if (!signs.has(through)) signs.set(through, parity * (signs.get(by) ?? 1));
  }
  const isWrong = ({ by, through, parity }: ToldSide<L>): boolean =>
    (signs.get(by) ?? 1) * (signs.get(through) ?? 1) !== parity;
  const turnsBetter = (key: string): boolean => {
    const own = told.filter(({ by, through }) => by === key || through === key);
    return 2 * own.filter(isWrong).length > own.length;
  };
  // Each turn leaves fewer sides wrong, so it comes to an end.
  for (;;) {
    const key = told.some(isWrong) ? [...signs.keys()].find(turnsBetter) : undefined;
    if (key === undefined) break;
    signs.set(key, -(signs.get(key) ?? 1));
  }
  return told.filter(isWrong).map(({ link }) => link);
}
