/**
 * Which ring of the endless weave each ring of a whole piece is. Rings of the
 * repeats by the match; start, finishing, a begun repeat, and all that comes
 * after another unit, by whom they are linked with.
 */
import { neighboursOf, type Woven } from '../walk.ts';
import type { KnownWeave } from './known-weave.ts';
import type { Image, PieceMatch } from './match-piece.ts';
import { keyOfRing, type PieceCell, repeatOfRing } from './piece-cell.ts';

interface Matched {
  readonly known: KnownWeave;
  readonly match: PieceMatch;
  readonly pieceCell: PieceCell;
}

/** By ring index of the piece; null for a ring that the endless weave has no place for. */
export function imagesOf(woven: Woven, { known, match, pieceCell }: Matched): readonly (Image | null)[] {
  const places = new Map(pieceCell.rings.map(({ key }, place) => [key, place]));
  let isSame = true;
  const images: (Image | null)[] = woven.rings.map(({ index }) => {
    const repeat = repeatOfRing(woven, index);
    const image = match.images[places.get(keyOfRing(woven, index)) ?? -1];
    if (pieceCell.isUnit) return image ?? null;
    if (repeat === null) return null;
    // Another unit may take on more or fewer cells: what comes after it is not where its number says.
    if (!image) isSame = false;
    return isSame && image ? { ring: image.ring, cell: image.cell + repeat * match.cellsARepeat } : null;
  });
  placeByLinks(images, woven, { weave: known.weave, grows: Math.sign(match.cellsARepeat) });
  return images;
}

const keyOf = ({ ring, cell }: Image): string => `${ring} ${cell}`;

/** Fills in what is linked with rings that have a place, those with the most of them first. */
function placeByLinks(
  images: (Image | null)[],
  woven: Woven,
  { weave, grows }: { readonly weave: KnownWeave['weave']; readonly grows: number },
): void {
  const near = nearOf(weave);
  const neighbours = neighboursOf(woven);
  const taken = new Map(images.flatMap((image, index) => (image ? [[keyOf(image), index] as const] : [])));
  const knownOf = (index: number): readonly number[] =>
    (neighbours[index] ?? []).filter((other) => images[other]);
  /** Rings without a place beside those with one, and how many those are. */
  const edge = new Map<number, number>();
  images.forEach((image, index) => {
    const known = image ? 0 : knownOf(index).length;
    if (known > 0) edge.set(index, known);
  });
  const placeFor = (index: number): Image | undefined => {
    const known = knownOf(index);
    const beside = known[0] as number;
    const from = images[beside] as Image;
    // Several places may have these links: what came earlier stands behind what came later.
    const behind = index < beside ? grows : -grows;
    const isBefore = ({ cell }: Image): boolean => (from.cell - cell) * behind >= 0;
    const candidates = near(from);
    return [...candidates.filter(isBefore), ...candidates.filter((each) => !isBefore(each))].find(
      (candidate) =>
        !taken.has(keyOf(candidate)) &&
        // Linked with exactly those placed rings that the piece links it with.
        near(candidate).every((other) => {
          const holder = taken.get(keyOf(other));
          return holder === undefined || known.includes(holder);
        }) &&
        known.every((other) => near(candidate).some((each) => keyOf(each) === keyOf(images[other] as Image))),
    );
  };
  for (;;) {
    const inOrder = [...edge].sort(([a, knownA], [b, knownB]) => knownB - knownA || a - b);
    let placed: { readonly index: number; readonly image: Image } | null = null;
    for (const [index] of inOrder) {
      const image = placeFor(index);
      if (!image) continue;
      placed = { index, image };
      break;
    }
    if (!placed) return;
    const { index, image } = placed;
    images[index] = image;
    taken.set(keyOf(image), index);
    edge.delete(index);
    for (const other of neighbours[index] ?? []) if (!images[other]) edge.set(other, knownOf(other).length);
  }
}

const nearOf =
  (weave: KnownWeave['weave']) =>
  ({ ring, cell }: Image): readonly Image[] =>
    weave.links.flatMap(({ a, b, cells }) => [
      ...(a === ring ? [{ ring: b, cell: cell + cells }] : []),
      ...(b === ring ? [{ ring: a, cell: cell - cells }] : []),
    ]);
