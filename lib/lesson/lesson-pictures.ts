/**
 * The pictures of a lesson, computed from its ring sequence and its rings:
 * the piece, and every placement where it is made for the first time. Where
 * no shape is known, the flat scheme stands in.
 */

import type { Result } from '#lib/result.ts';
import { sizesOf } from '#lib/rings/ring.ts';
import { drawFinished, drawTurn, type WeavePicture } from '#lib/weave/picture/draw-piece.ts';
import { drawScheme } from '#lib/weave/picture/link-scheme.ts';
import { type KindLooks, stepWords } from '#lib/weave/picture/say-step.ts';
import {
  type PieceShape,
  type PieceShapeFault,
  placePiece,
  pushedPitch,
  shapeOfPiece,
} from '#lib/weave/space/piece-in-space.ts';
import type { RingMeasure } from '#lib/weave/space/shape-of-weave.ts';
import { type Woven, walkPiece } from '#lib/weave/walk.ts';
import type { Pictured } from './pictured.ts';

export interface PictureAsked {
  /** A placement's id, or `piece` for the whole. */
  readonly of: string;
  /** Degrees that the piece is rolled from the view that shows most. */
  readonly roll: number;
  readonly side: 'front' | 'back';
}

/** Enough repeats to show how the piece grows. */
const REPEATS_OF_STEPS = 2;
const RINGS_OF_PIECE = 36;

const looksOf = ({ ringKinds }: Pictured): KindLooks =>
  new Map(ringKinds.map(({ id, name, colourCode }) => [id, { name, colour: colourCode }]));

/** The shape that the pictures of a lesson are drawn from. Takes up to some tenths of a second: keep it. */
export const shapeOfLesson = (content: Pictured): Result<PieceShape, PieceShapeFault> =>
  shapeOfPiece(content, measuresOf(content), content.leaning === 'left');

const measuresOf = ({ ringKinds }: Pictured): ReadonlyMap<string, RingMeasure> =>
  new Map(
    ringKinds.map((kind) => {
      const { innerMm, wireMm } = sizesOf(kind);
      return [kind.id, { inner: innerMm, wire: wireMm }] as const;
    }),
  );

/** The text alternatives of all placements' pictures, by placement id; made without any shape. */
export function pictureTexts(content: Pictured): ReadonlyMap<string, string> {
  const woven = walkPiece(content, REPEATS_OF_STEPS);
  const kinds = looksOf(content);
  const texts = new Map<string, string>();
  if (!woven.isNamed) return texts;
  for (const turn of woven.turns)
    if (!texts.has(turn.placement.id) && (turn.opened !== null || turn.carried.length > 0))
      texts.set(turn.placement.id, stepWords({ woven, turn, kinds }));
  return texts;
}

/** One picture of a lesson; null where there is nothing to show. */
export function drawLesson(
  content: Pictured,
  shape: Result<PieceShape, PieceShapeFault>,
  { of, roll, side }: PictureAsked,
): WeavePicture | null {
  const kinds = looksOf(content);
  const wishes = { kinds, roll, side };
  if (of === 'piece') {
    if (!shape.ok) return null;
    const ringsARepeat = Math.max(1, shape.value.pieceCell.rings.length);
    const repeats = Math.max(2, Math.min(12, Math.round(RINGS_OF_PIECE / ringsARepeat)));
    return drawFinished(placePiece(content, shape.value, repeats, measuresOf(content)), shape.value, wishes);
  }
  const woven = walkPiece(content, REPEATS_OF_STEPS);
  const turn = turnOf(woven, of);
  if (turn === null || !woven.isNamed) return null;
  const drawn = shape.ok
    ? drawTurn(
        placePiece(content, shape.value, REPEATS_OF_STEPS, measuresOf(content)),
        shape.value,
        turn,
        wishes,
      )
    : null;
  return drawn ?? drawScheme(woven, turn, kinds);
}

/** The first time that a placement is made; null where it never is. */
function turnOf(woven: Woven, placementId: string): number | null {
  const turn = woven.turns.findIndex(({ placement }) => placement.id === placementId);
  return turn < 0 ? null : turn;
}

/** What the shape foretells of a piece before any sample is made; lengths in mm of one repeat. */
export interface Foretold {
  readonly weave: string;
  /** Pulled taut: no piece of these rings is longer, so none takes fewer repeats. */
  readonly tautMm: number;
  /** Pushed together from taut until nothing gives. */
  readonly pushedMm: number;
}

export const foretoldOf = (shape: PieceShape): Foretold => ({
  weave: shape.weave,
  tautMm: shape.cell.pitch,
  pushedMm: pushedPitch(shape),
});
