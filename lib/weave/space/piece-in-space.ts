/**
 * A ring sequence as rings in space: its repeat is matched with a weave whose
 * shape is known, and every ring of the piece, ends included, stands where
 * the same ring of the endless weave stands.
 */
import { failed, ok, type Result } from '#lib/result.ts';
import type { Piece } from '../placement.ts';
import { type Link, type Woven, walkPiece } from '../walk.ts';
import { type CellLink, linksOf } from './cell-links.ts';
import { findKnownWeave, type KnownWeave } from './known-weave.ts';
import {
  facingsOf,
  type Image,
  imagesNear,
  matchPiece,
  type PieceMatch,
  signBetween,
  wrongTold,
} from './match-piece.ts';
import { type NotSought, type OwnShape, type OwnShapes, ownKey, ownSequenceOf } from './own-weave.ts';
import { type PieceCell, pieceCell } from './piece-cell.ts';
import { imagesOf } from './place-images.ts';
import { type Cell, inCell, middleRadius, mirroredCell, type RoundRing, scaledCell } from './round-ring.ts';
import { settledChain } from './shape-chain.ts';
import { type RingMeasure, type ShapeFault, shapeOfKnown } from './shape-of-weave.ts';
import { type LyingPass, passesOtherwise } from './sides-seen.ts';
import type { Vector } from './vector.ts';
import { WEAVES_IN_SPACE } from './weave-in-space.ts';

export interface PieceShape {
  readonly known: KnownWeave;
  readonly match: PieceMatch;
  readonly pieceCell: PieceCell;
  /** Holds as many cells as one repeat takes. */
  readonly cell: Cell;
  readonly cells: number;
  readonly links: readonly CellLink[];
}

export type PieceShapeFault =
  /** Passes do not name their rings: nothing can be placed. */
  | { readonly code: 'rings-not-named' }
  /** A repeat goes through rings of the start, or of a repeat far back: no repeat is like the one before. */
  | { readonly code: 'repeats-not-alike' }
  /** No weave whose shape is known has these links and sides, and why none was derived from them. */
  | { readonly code: 'no-known-shape'; readonly why: NotSought | 'not-sought' | 'waiting' | 'none' }
  | { readonly code: 'size-unknown'; readonly ringKind: string }
  | ShapeFault;

interface Found {
  readonly known: KnownWeave;
  readonly match: PieceMatch;
}

/**
 * The weave that a piece is, by links, sides and folds: a stored one, or the
 * one that was derived from it; null where none is known.
 */
export function weaveOfPiece(cell: PieceCell, own?: OwnShapes): Found | null {
  for (const weave of WEAVES_IN_SPACE) {
    if ((weave.kind === 'unit') !== cell.isUnit || (weave.isFolded ?? false) !== cell.isFolded) continue;
    const match = matchPiece(cell, weave);
    const known = match?.contradictions.length === 0 ? findKnownWeave(weave.id) : null;
    if (match && known) return { known, match };
  }
  const shape = own && ownShape(cell, own);
  if (shape?.state !== 'derived') return null;
  // Its repeat is the cell that was derived, ring by ring.
  const images = cell.rings.map((_, ring) => ({ ring, cell: 0 }));
  return { known: shape.known, match: { images, cellsARepeat: 1, contradictions: [] } };
}

function ownShape(cell: PieceCell, own: OwnShapes): OwnShape | undefined {
  const sequence = ownSequenceOf(cell);
  return sequence.ok ? own.get(ownKey(sequence.value)) : undefined;
}

/** What a piece's repeat is, and the measures of its rings in the order of the weave's cells. */
export interface PieceMeasured {
  readonly pieceCell: PieceCell;
  readonly known: KnownWeave;
  readonly match: PieceMatch;
  /** Cells of the weave in one repeat. */
  readonly cells: number;
  readonly measures: readonly RingMeasure[];
}

/** A piece's repeat as a weave with measures; sizes in mm by ring kind. Works nothing out in space. */
export function measuredPiece(
  piece: Piece,
  sizes: ReadonlyMap<string, RingMeasure>,
  own?: OwnShapes,
): Result<PieceMeasured, PieceShapeFault> {
  const repeat = pieceCell(piece);
  if (!repeat) return failed({ code: walkPiece(piece, 1).isNamed ? 'repeats-not-alike' : 'rings-not-named' });
  const found = weaveOfPiece(repeat, own);
  if (!found) return failed({ code: 'no-known-shape', why: whyNone(repeat, own) });
  const { known, match } = found;
  const cells = Math.abs(match.cellsARepeat);
  const measures: RingMeasure[] = [];
  for (const [place, { ringKind }] of repeat.rings.entries()) {
    const size = sizes.get(ringKind);
    const image = match.images[place];
    if (!size || !image) return failed({ code: 'size-unknown', ringKind });
    measures[modulo(image.cell, cells) * known.weave.rings + image.ring] = size;
  }
  return ok({ pieceCell: repeat, known, match, cells, measures });
}

function whyNone(repeat: PieceCell, own?: OwnShapes): NotSought | 'not-sought' | 'waiting' | 'none' {
  const sequence = ownSequenceOf(repeat);
  if (!sequence.ok) return sequence.fault;
  const shape = own && ownShape(repeat, own);
  return shape === undefined || shape.state === 'derived' ? 'not-sought' : shape.state;
}

/** The taut shape of a piece's repeat in its own rings; sizes in mm by ring kind. */
export function shapeOfPiece(
  piece: Piece,
  sizes: ReadonlyMap<string, RingMeasure>,
  { isMirrored = false, own }: { readonly isMirrored?: boolean; readonly own?: OwnShapes | undefined } = {},
): Result<PieceShape, PieceShapeFault> {
  const measured = measuredPiece(piece, sizes, own);
  if (!measured.ok) return measured;
  const { known, match, cells, measures, pieceCell } = measured.value;
  const shape = shapeOfKnown(known, measures);
  if (!shape.ok) return shape;
  const cell = isMirrored ? mirroredCell(shape.value.cell) : shape.value.cell;
  return ok({ known, match, pieceCell, cell, cells, links: linksOf(cell) });
}

/** The pitch of a repeat pushed together from taut, in the unit of its rings; taut where nothing gives. */
export function pushedPitch({ cell, links }: PieceShape): number {
  const wire = cell.rings[0]?.wire ?? 1;
  const rules = { links, freeTwist: false, rounds: 160 };
  const pushed = settledChain(scaledCell(cell, 1 / wire), 'shortest', rules);
  return Math.min(cell.pitch, (pushed?.pitch ?? Number.POSITIVE_INFINITY) * wire);
}

const modulo = (value: number, by: number): number => ((value % by) + by) % by;

export interface PlacedPiece {
  readonly woven: Woven;
  /** By ring index of the piece; null for a ring that the endless weave has no place for. */
  readonly rings: readonly (RoundRing | null)[];
}

/**
 * A piece of so many repeats, ring by ring. A ring of another size than the
 * weave has at its place (a clasp's ring, say) gets none.
 */
export function placePiece(
  piece: Piece,
  shape: PieceShape,
  repeats: number,
  sizes: ReadonlyMap<string, RingMeasure>,
): PlacedPiece {
  const woven = walkPiece(piece, repeats);
  const rings = imagesOf(woven, shape).map((image, index) => {
    const ring = image && ringAt(shape, image);
    const size = sizes.get(woven.rings[index]?.ringKind ?? '');
    return ring && size && isOfSize(ring, size) ? ring : null;
  });
  return { woven, rings };
}

const isOfSize = (ring: RoundRing, { inner, wire }: RingMeasure): boolean =>
  Math.abs(ring.wire - wire) < 1e-6 * wire &&
  Math.abs(ring.radius - middleRadius(inner, wire)) < 1e-6 * inner;

/** The ring of the endless weave at an image. */
function ringAt({ cell, cells }: PieceShape, { ring, cell: at }: Image): RoundRing | null {
  const perCell = cell.rings.length / cells;
  const inside = cell.rings[modulo(at, cells) * perCell + ring];
  return inside ? inCell(inside, cell, Math.floor(at / cells)) : null;
}

/**
 * Passes of the repeat whose side, looked at along `toward`, is not the one
 * that the piece tells: a ring must go through all openings one way.
 */
export function sidesSeenOtherwise(shape: PieceShape, toward: Vector): number {
  const { match, pieceCell: repeat } = shape;
  const passes = repeat.links.flatMap(({ by, through, repeats, from }): readonly LyingPass[] => {
    const [image, other] = [match.images[by], match.images[through]];
    const ring = image && ringAt(shape, image);
    const passed =
      other && ringAt(shape, { ring: other.ring, cell: other.cell + repeats * match.cellsARepeat });
    return ring && passed && from !== null ? [{ by, ring, through: passed, from }] : [];
  });
  return passesOtherwise(passes, toward);
}

export interface ToldSides {
  /** How many links say their side. */
  readonly told: number;
  /** Those that cannot be with the ones before them. */
  readonly wrong: readonly Link[];
}

/** The sides of a whole piece, ends included, held against the shape. */
export function sidesOfPiece(woven: Woven, shape: PieceShape): ToldSides {
  const { weave } = shape.known;
  const images = imagesOf(woven, shape);
  const links = woven.links.filter(({ by, through, from }) => from !== null && images[by] && images[through]);
  const { cellsARepeat } = shape.match;
  const near = imagesNear(weave);
  let best: ToldSides | null = null;
  for (const facing of facingsOf(shape.pieceCell, weave)) {
    const wrong = wrongTold(
      links.map((link) => {
        const [by, through] = [images[link.by] as Image, images[link.through] as Image];
        const repeat = Math.floor(through.cell / cellsARepeat);
        const place = `${through.ring} ${modulo(through.cell, Math.abs(cellsARepeat))}`;
        const sign = signBetween(near, by, through);
        const faced = modulo(repeat, 2) === 0 ? 1 : facing;
        return {
          link,
          by: `by ${link.by}`,
          through: weave.twist === 0 ? `row ${through.ring}` : `place ${place}`,
          parity: sign * faced * (link.from === 'back' ? 1 : -1),
        };
      }),
    );
    if (!best || wrong.length < best.wrong.length) best = { told: links.length, wrong };
  }
  return best ?? { told: 0, wrong: [] };
}
