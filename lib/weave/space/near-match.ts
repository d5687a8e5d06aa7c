/**
 * How far a repeat is from a weave whose shape is known: the placing of its
 * rings with the fewest links too many and too few, then with the fewest
 * sides that the shape contradicts. For telling where a sequence goes wrong;
 * nothing is drawn from it.
 */
import {
  beginnings,
  facingsOf,
  fewestWrong,
  type Image,
  imagesNear,
  type Neighbour,
  shifted,
  signBetween,
} from './match-piece.ts';
import type { PieceCell, PieceLink } from './piece-cell.ts';
import type { WeaveInSpace } from './weave-in-space.ts';

/** A link of the weave that the repeat does not make: of ring `a`, the later one, with ring `b` of the repeat `repeats` back (0 or below). */
export interface UntoldLink {
  readonly a: number;
  readonly b: number;
  readonly repeats: number;
}

export interface NearMatch {
  readonly tooMany: readonly PieceLink[];
  readonly tooFew: readonly UntoldLink[];
  readonly contradictions: readonly PieceLink[];
  /** What the weave asks of its folds against what the repeat tells. */
  readonly fold: 'as told' | 'missing' | 'too many';
}

/** More differences than this are another weave, not a slip: one ring mistaken for another makes two. */
const mostDifferences = ({ links }: PieceCell): number => (links.length < 6 ? 2 : 3);
/** Placings tried from one beginning. */
const MOST_TRIED = 3000;

export const differencesOf = ({ tooMany, tooFew, contradictions, fold }: NearMatch): number =>
  tooMany.length + tooFew.length + contradictions.length + (fold === 'as told' ? 0 : 1);

/** The nearest placing; null where more than a slip parts the repeat from the weave. */
export function nearMatch(piece: PieceCell, weave: WeaveInSpace): NearMatch | null {
  const times = piece.rings.length / weave.rings;
  if (!Number.isInteger(times)) return null;
  const near = imagesNear(weave);
  let best: NearMatch | null = null;
  for (const { cellsARepeat, first } of beginnings(times, weave))
    for (const images of nearPlacings({ piece, near, cellsARepeat }, first)) {
      const found = compared({ piece, near, cellsARepeat }, images, weave);
      if (found && (!best || differencesOf(found) < differencesOf(best))) best = found;
    }
  return best && differencesOf(best) <= mostDifferences(piece) ? best : null;
}

/** What parts the repeat from the weave in one placing; null where its links alone are more than a slip away. */
function compared(grounds: Grounds, images: readonly Image[], weave: WeaveInSpace): NearMatch | null {
  const { piece, near, cellsARepeat } = grounds;
  const { tooMany, tooFew } = linksAgainst(grounds, images);
  if (tooMany.length + tooFew.length > mostDifferences(piece)) return null;
  const isFolded = weave.isFolded ?? false;
  const fold = piece.isFolded === isFolded ? 'as told' : isFolded ? 'missing' : 'too many';
  const links = piece.links.filter((link) => !tooMany.includes(link));
  const contradictions = fewestWrong(
    { links },
    images,
    { cellsARepeat, neighbours: near, isTwisted: weave.twist !== 0 },
    facingsOf({ ...piece, isFolded }, weave),
  );
  return { tooMany, tooFew, contradictions, fold };
}

interface Grounds {
  readonly piece: PieceCell;
  readonly near: readonly (readonly Neighbour[])[];
  readonly cellsARepeat: number;
}

const placeOf = ({ ring, cell }: Image, times: number): string =>
  `${ring} ${((cell % times) + times) % times}`;

/** Ways to place all rings, ring by ring, each beside a ring that it is told to be linked with. */
function nearPlacings({ piece, near, cellsARepeat }: Grounds, first: Image): readonly (readonly Image[])[] {
  const times = Math.abs(cellsARepeat);
  const images: (Image | null)[] = piece.rings.map(() => null);
  images[0] = first;
  const taken = new Set([placeOf(first, times)]);
  const found: (readonly Image[])[] = [];
  let tried = 0;
  /** Told links of a ring with rings that have a place, itself one repeat on among them. */
  const toldOf = (ring: number): readonly PieceLink[] =>
    piece.links.filter(
      ({ by, through }) => (by === ring && images[through]) || (through === ring && images[by]),
    );
  const isWrong = ({ by, through, repeats }: PieceLink): boolean => {
    const [from, to] = [images[by], images[through]];
    return !!from && !!to && signBetween(near, from, shifted(to, repeats * cellsARepeat)) === 0;
  };
  /** The ring without a place that is told to be linked with the most that have one. */
  const nextRing = (): { readonly ring: number; readonly told: readonly PieceLink[] } | null => {
    let next: { ring: number; told: readonly PieceLink[] } | null = null;
    for (const [ring, image] of images.entries()) {
      const told = image ? [] : toldOf(ring);
      if (told.length > (next?.told.length ?? 0)) next = { ring, told };
    }
    return next;
  };
  /** Places for it that are free, each once. */
  const optionsFor = (ring: number, told: readonly PieceLink[]): readonly Image[] => {
    const options = new Map<string, Image>();
    for (const link of told) {
      const known = link.by === ring ? link.through : link.by;
      const away = (link.by === ring ? -link.repeats : link.repeats) * cellsARepeat;
      const from = images[known] as Image;
      for (const beside of near[from.ring] ?? []) {
        const image = { ring: beside.ring, cell: from.cell + beside.cell - away };
        if (!taken.has(placeOf(image, times))) options.set(`${image.ring} ${image.cell}`, image);
      }
    }
    return [...options.values()];
  };
  const extend = (wrong: number): void => {
    if (tried >= MOST_TRIED || wrong > mostDifferences(piece)) return;
    const next = nextRing();
    if (!next) {
      if (images.every((image) => image !== null)) found.push([...images] as Image[]);
      return;
    }
    const { ring, told } = next;
    for (const image of optionsFor(ring, told)) {
      tried += 1;
      images[ring] = image;
      taken.add(placeOf(image, times));
      extend(wrong + toldOf(ring).filter(isWrong).length);
      taken.delete(placeOf(image, times));
      images[ring] = null;
    }
  };
  extend(0);
  return found;
}

function linksAgainst(
  { piece, near, cellsARepeat }: Grounds,
  images: readonly Image[],
): Pick<NearMatch, 'tooMany' | 'tooFew'> {
  const tooMany = piece.links.filter(({ by, through, repeats }) => {
    const to = shifted(images[through] as Image, repeats * cellsARepeat);
    return signBetween(near, images[by] as Image, to) === 0;
  });
  const isTold = (a: number, b: number, repeats: number): boolean =>
    piece.links.some(
      (link) =>
        (link.by === a && link.through === b && link.repeats === repeats) ||
        (link.by === b && link.through === a && link.repeats === -repeats),
    );
  const tooFew = images.flatMap((image, a) =>
    (near[image.ring] ?? []).flatMap((beside): readonly UntoldLink[] => {
      const cell = image.cell + beside.cell;
      const b = images.findIndex(
        (other) => other.ring === beside.ring && (cell - other.cell) % cellsARepeat === 0,
      );
      const repeats = (cell - (images[b]?.cell ?? 0)) / cellsARepeat;
      const isLater = repeats < 0 || (repeats === 0 && a > b);
      return b >= 0 && isLater && !isTold(a, b, repeats) ? [{ a, b, repeats: repeats + 0 }] : [];
    }),
  );
  return { tooMany, tooFew };
}
