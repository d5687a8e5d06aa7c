/**
 * The pictures of a lesson, computed from its ring sequence and its rings:
 * the piece, and every placement where it is made for the first time. Where
 * no shape is known, the flat scheme stands in.
 */

import type { Result } from '#lib/result.ts';
import {
  drawFinished,
  drawInTwo,
  drawTurn,
  type PictureWishes,
  type Stage,
  sceneOfPiece,
  sceneOfTurn,
  type WeavePicture,
  wholeOf,
} from '#lib/weave/picture/draw-piece.ts';
import type { Scene } from '#lib/weave/picture/draw-scene.ts';
import { drawScheme } from '#lib/weave/picture/link-scheme.ts';
import { finishedWords, type KindLooks, runsWords, stepWords } from '#lib/weave/picture/say-step.ts';
import { drawWholeLength } from '#lib/weave/picture/whole-length.ts';
import { planRuns } from '#lib/weave/runs.ts';
import { findSettledWeave } from '#lib/weave/space/known-shape.ts';
import { pieceCell } from '#lib/weave/space/piece-cell.ts';
import {
  type PieceShape,
  type PieceShapeFault,
  type PlacedPiece,
  placePiece,
  shapeOfPiece,
  weaveOfPiece,
} from '#lib/weave/space/piece-in-space.ts';
import { type Woven, walkPiece } from '#lib/weave/walk.ts';
import { whyNoWholeLength } from './fits-a-picture.ts';
import { measuresOf } from './measures.ts';
import type { Pictured } from './pictured.ts';

export interface PictureAsked {
  /** A placement's id, or `piece` for the whole. */
  readonly of: string;
  /** Degrees that the piece is rolled from the view that shows most. */
  readonly roll: number;
  readonly side: 'front' | 'back';
  /** Left and right exchanged, for who works with the other hand. */
  readonly isMirrored?: boolean;
}

/** Enough repeats to show how the piece grows. */
const REPEATS_OF_STEPS = 2;
const RINGS_OF_PIECE = 36;

const looksOf = ({ ringKinds }: Pictured): KindLooks =>
  new Map(ringKinds.map(({ id, name, colourCode }) => [id, { name, colour: colourCode }]));

const shapeUnfolded = (content: Pictured): Result<PieceShape, PieceShapeFault> | null => {
  const unfolded = unfoldedLesson(content);
  return unfolded && shapeOfLesson(unfolded);
};

/** The shape that the pictures of a lesson are drawn from. Takes up to some tenths of a second: keep it. */
export const shapeOfLesson = (content: Pictured): Result<PieceShape, PieceShapeFault> =>
  shapeOfPiece(content, measuresOf(content), content.leaning === 'left');

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

/** The sequence with nothing folded back: how it hangs until it is; null where nothing ever is. */
export function unfoldedLesson(content: Pictured): Pictured | null {
  if (firstFold(walkPiece(content, 1)) === null) return null;
  const plain = (placements: Pictured['start']) =>
    placements.map((each) => ({ ...each, lie: 'as it falls' as const, lays: [] }));
  return { ...content, start: plain(content.start), repeat: plain(content.repeat) };
}

/** The turn that first folds anything back; null where none does. */
function firstFold({ turns }: Woven): number | null {
  const turn = turns.findIndex(({ placement }) => placement.lie === 'fold back');
  return turn < 0 ? null : turn;
}

/**
 * One picture of a lesson; null where there is nothing to show. Until the
 * first fold is made the piece is shown as it hangs without it.
 *
 * @param unfolded the shape of `unfoldedLesson`
 */
export function drawLesson(
  content: Pictured,
  shape: Result<PieceShape, PieceShapeFault>,
  { of, ...turned }: PictureAsked,
  unfolded = shapeUnfolded(content),
): WeavePicture | null {
  const kinds = looksOf(content);
  const wishes = { kinds, ...turned };
  if (of === 'piece')
    return shape.ok ? drawFinished(finished(content, shape.value), shape.value, wishes) : null;
  const woven = walkPiece(content, REPEATS_OF_STEPS);
  const turn = turnOf(woven, of);
  if (turn === null || !woven.isNamed) return null;
  const stage = (of: Result<PieceShape, PieceShapeFault> | null): Stage | null =>
    of?.ok
      ? { shape: of.value, placed: placePiece(content, of.value, REPEATS_OF_STEPS, measuresOf(content)) }
      : null;
  const drawn = drawTurnOf(woven, turn, { lying: stage(shape), hanging: stage(unfolded) }, wishes);
  return drawn ?? drawScheme(woven, turn, kinds);
}

/** A turn as the piece lies when it is made: what is folded back only later still hangs. */
function drawTurnOf(
  woven: Woven,
  turn: number,
  { lying, hanging }: { readonly lying: Stage | null; readonly hanging: Stage | null },
  wishes: PictureWishes,
): WeavePicture | null {
  const fold = firstFold(woven);
  if (lying && hanging && fold !== null && turn >= fold) {
    const end = workingEnd(woven, turn);
    const close = turn === fold ? hanging : { ...hanging, from: end.from };
    if (woven.turns[turn]?.placement.lie === 'fold back') return drawInTwo(close, lying, turn, wishes, false);
    if (end.hanging.size > 0) return drawInTwo({ ...lying, without: end.hanging }, close, turn, wishes, true);
  }
  const seen = hanging && fold !== null && turn < fold ? hanging : lying;
  return seen && drawTurn(seen.placed, seen.shape, turn, wishes);
}

/** Placements whose picture shows two moments, one above the other, where it can be drawn at all; told without any shape. */
export function picturesInTwo(content: Pictured): ReadonlySet<string> {
  const woven = walkPiece(content, REPEATS_OF_STEPS);
  const fold = firstFold(woven);
  const inTwo = woven.turns.filter(
    ({ placement }, turn) =>
      fold !== null &&
      turn >= fold &&
      turn === turnOf(woven, placement.id) &&
      (placement.lie === 'fold back' || workingEnd(woven, turn).hanging.size > 0),
  );
  return new Set(inTwo.map(({ placement }) => placement.id));
}

/** Rings that are there once a turn is done and that this turn or a later one folds back, and the ring that carries them. */
function workingEnd(
  woven: Woven,
  turn: number,
): { readonly hanging: ReadonlySet<number>; readonly from: number } {
  const hanging = new Set<number>();
  woven.turns.forEach(({ placement, laid }, at) => {
    if (at < turn || placement.lie !== 'fold back') return;
    for (const ring of laid) if (ring !== null && (woven.rings[ring]?.turn ?? 0) <= turn) hanging.add(ring);
  });
  const carriers = [...hanging].map((ring) => woven.turns[woven.rings[ring]?.turn ?? 0]?.opened ?? ring);
  return { hanging, from: Math.min(...carriers) };
}

/** Enough repeats to see the weave, with both ends. */
function finished(content: Pictured, shape: PieceShape): PlacedPiece {
  const ringsARepeat = Math.max(1, shape.pieceCell.rings.length);
  const repeats = Math.max(2, Math.min(12, Math.round(RINGS_OF_PIECE / ringsARepeat)));
  return placePiece(content, shape, repeats, measuresOf(content));
}

/** The text alternative of the picture of a whole length; made without any shape. */
export function wholeText(content: Pictured, repeats: number): string {
  const kinds = looksOf(content);
  const runs = runsWords(planRuns(content.runs, repeats), kinds);
  return `${finishedWords(walkPiece(content, repeats), kinds)} ${runs}`;
}

/** Id of the weave in space that a lesson's sequence is, whatever its rings; null where none is known. */
export function weaveOfLesson(content: Pictured): string | null {
  const cell = pieceCell(content);
  return (cell && weaveOfPiece(cell)?.weave.id) ?? null;
}

/**
 * Whether the whole piece most likely has a picture, told without working out
 * its shape: false is sure, and true fails only where sizes that are mixed do
 * not go together.
 */
export function mayBePictured(content: Pictured): boolean {
  const cell = pieceCell(content);
  const found = cell && weaveOfPiece(cell);
  if (!found) return false;
  const sizes = measuresOf(content);
  const ratios = cell.rings.map(({ ringKind }) => {
    const size = sizes.get(ringKind);
    return size ? size.inner / size.wire : 0;
  });
  const least = findSettledWeave(found.weave.id)?.leastAspectRatio ?? 0;
  return Math.max(...ratios) >= least - 1e-4;
}

/** The whole length of a piece of `repeats` repeats; null where no shape is known or no picture can hold it. */
export function drawWhole(
  content: Pictured,
  shape: Result<PieceShape, PieceShapeFault>,
  { repeats, isMirrored }: { readonly repeats: number; readonly isMirrored: boolean },
): WeavePicture | null {
  if (!shape.ok || whyNoWholeLength(content, repeats) !== null) return null;
  const kinds = looksOf(content);
  const placed = placePiece(content, shape.value, repeats, measuresOf(content));
  const text = wholeText(content, repeats);
  const whole = wholeOf(placed, shape.value, { kinds, roll: 0, side: 'front', isMirrored }, text);
  return drawWholeLength(placed, shape.value, whole);
}

/** What a picture shows, to be turned by hand; null where no shape is known. */
export function sceneOfLesson(
  content: Pictured,
  shape: Result<PieceShape, PieceShapeFault>,
  { of, ...turned }: PictureAsked,
): Scene | null {
  if (!shape.ok) return null;
  const wishes = { kinds: looksOf(content), ...turned };
  if (of === 'piece') return sceneOfPiece(finished(content, shape.value), shape.value, wishes);
  const woven = walkPiece(content, REPEATS_OF_STEPS);
  const turn = turnOf(woven, of);
  if (turn === null) return null;
  const fold = firstFold(woven);
  const end = workingEnd(woven, turn);
  // The fold too is shown as it hangs before: that is where the openings are seen.
  const hanging = fold !== null && (turn <= fold || end.hanging.size > 0) ? shapeUnfolded(content) : null;
  const seen = hanging?.ok ? hanging.value : shape.value;
  const placed = placePiece(content, seen, REPEATS_OF_STEPS, measuresOf(content));
  const from = fold !== null && turn > fold && end.hanging.size > 0 ? end.from : 0;
  return sceneOfTurn(placed, seen, turn, wishes, { from });
}

/** The first time that a placement is made; null where it never is. */
function turnOf(woven: Woven, placementId: string): number | null {
  const turn = woven.turns.findIndex(({ placement }) => placement.id === placementId);
  return turn < 0 ? null : turn;
}
