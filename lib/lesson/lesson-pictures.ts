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
} from '#lib/weave/picture/draw-piece.ts';
import type { Scene } from '#lib/weave/picture/draw-scene.ts';
import { drawScheme } from '#lib/weave/picture/link-scheme.ts';
import { stepWords } from '#lib/weave/picture/say-step.ts';
import { planRuns, repeatsShowing } from '#lib/weave/runs.ts';
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
import { measuresOf } from './measures.ts';
import { looksOf, type Pictured } from './pictured.ts';
import { sectionsOf } from './sections.ts';
import { lessonWith, unitAlone } from './unit-alone.ts';

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

/** The shape of a lesson's piece, worked out or kept: pictures of one lesson ask for it again and again. */
export type ShapeOf = (content: Pictured) => Result<PieceShape, PieceShapeFault>;

/** The shape that the pictures of a lesson are drawn from. Takes up to some tenths of a second: keep it. */
export const shapeOfLesson: ShapeOf = (content) =>
  shapeOfPiece(content, measuresOf(content), { isMirrored: content.leaning === 'left', own: content.own });

/** The text alternatives of all placements' pictures, by placement id; made without any shape. */
export function pictureTexts(content: Pictured): ReadonlyMap<string, string> {
  const kinds = looksOf(content);
  const texts = new Map<string, string>();
  for (const { woven, turn } of firstTurns(content)) {
    const made = woven.turns[turn];
    if (made && woven.isNamed && (made.opened !== null || made.carried.length > 0))
      texts.set(made.placement.id, stepWords({ woven, turn: made, kinds }));
  }
  return texts;
}

interface FirstTurn {
  readonly woven: Woven;
  readonly turn: number;
}

/** Where each placement is first made, its unit walked alone. */
function firstTurns(content: Pictured): readonly FirstTurn[] {
  const walked = new Map<string, Woven>();
  return [...content.start, ...content.repeat, ...content.finishing].flatMap(({ id }) => {
    const alone = lessonWith(content, id);
    const unit = alone.repeat[0]?.id ?? '';
    const woven = walked.get(unit) ?? walkPiece(alone, REPEATS_OF_STEPS);
    walked.set(unit, woven);
    const turn = turnOf(woven, id);
    return turn === null ? [] : [{ woven, turn }];
  });
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
 * first fold is made the piece is shown as it hangs without it. Where units
 * differ, each is drawn alone.
 */
export function drawLesson(
  content: Pictured,
  shapeOf: ShapeOf,
  { of, ...turned }: PictureAsked,
): WeavePicture | null {
  const kinds = looksOf(content);
  const wishes = { kinds, ...turned };
  if (of === 'piece') {
    const piece = onePiece(content);
    const shape = shapeOf(piece);
    return shape.ok ? drawFinished(finished(piece, shape.value), shape.value, wishes) : null;
  }
  const alone = lessonWith(content, of);
  const woven = walkPiece(alone, REPEATS_OF_STEPS);
  const turn = turnOf(woven, of);
  if (turn === null || !woven.isNamed) return null;
  const stage = (lesson: Pictured | null): Stage | null => {
    const shape = lesson && shapeOf(lesson);
    return shape?.ok
      ? {
          shape: shape.value,
          placed: placePiece(alone, shape.value, REPEATS_OF_STEPS, measuresOf(content)),
        }
      : null;
  };
  const stages = { lying: stage(alone), hanging: stage(unfoldedLesson(alone)) };
  return drawTurnOf(woven, turn, stages, wishes) ?? drawScheme(woven, turn, kinds);
}

/** What a picture of the piece from near shows: its first unit where others are other weaves or in other sizes. */
function onePiece(content: Pictured): Pictured {
  const repeats = repeatsShowing(content);
  if (sectionsOf(content, repeats).length < 2) return content;
  return unitAlone(content, planRuns(content.runs, repeats)[0]?.run?.unit ?? '');
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
  const inTwo = firstTurns(content).flatMap(({ woven, turn }) => {
    const fold = firstFold(woven);
    const placement = woven.turns[turn]?.placement;
    const isInTwo =
      fold !== null &&
      turn >= fold &&
      (placement?.lie === 'fold back' || workingEnd(woven, turn).hanging.size > 0);
    return placement && isInTwo ? [placement.id] : [];
  });
  return new Set(inTwo);
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

/** Id of the weave in space that a lesson's sequence is, whatever its rings; null where none is known. */
export function weaveOfLesson(content: Pictured): string | null {
  const cell = pieceCell(content);
  return (cell && weaveOfPiece(cell, content.own)?.known.weave.id) ?? null;
}

/**
 * Whether the piece most likely has a picture from near, told without working out
 * its shape: false is sure, and true fails only where sizes that are mixed do
 * not go together.
 */
export function mayBePictured(content: Pictured): boolean {
  const cell = pieceCell(onePiece(content));
  const found = cell && weaveOfPiece(cell, content.own);
  if (!found) return false;
  const sizes = measuresOf(content);
  const ratios = cell.rings.map(({ ringKind }) => {
    const size = sizes.get(ringKind);
    return size ? size.inner / size.wire : 0;
  });
  const least = found.known.settled.leastAspectRatio;
  return Math.max(...ratios) >= least - 1e-4;
}

/** What a picture shows, to be turned by hand; null where no shape is known. */
export function sceneOfLesson(
  content: Pictured,
  shapeOf: ShapeOf,
  { of, ...turned }: PictureAsked,
): Scene | null {
  const wishes = { kinds: looksOf(content), ...turned };
  const alone = of === 'piece' ? onePiece(content) : lessonWith(content, of);
  const shape = shapeOf(alone);
  if (!shape.ok) return null;
  if (of === 'piece') return sceneOfPiece(finished(alone, shape.value), shape.value, wishes);
  const woven = walkPiece(alone, REPEATS_OF_STEPS);
  const turn = turnOf(woven, of);
  if (turn === null) return null;
  const fold = firstFold(woven);
  const end = workingEnd(woven, turn);
  // The fold too is shown as it hangs before: that is where the openings are seen.
  const unfolded = fold !== null && (turn <= fold || end.hanging.size > 0) ? unfoldedLesson(alone) : null;
  const hanging = unfolded && shapeOf(unfolded);
  const seen = hanging?.ok ? hanging.value : shape.value;
  const placed = placePiece(alone, seen, REPEATS_OF_STEPS, measuresOf(content));
  const from = fold !== null && turn > fold && end.hanging.size > 0 ? end.from : 0;
  return sceneOfTurn(placed, seen, turn, wishes, { from });
}

/** The first time that a placement is made with all the rings there that it enters, or at all; null where it never is. */
function turnOf(woven: Woven, placementId: string): number | null {
  const turns = woven.turns.flatMap(({ placement, passed }, turn) =>
    placement.id === placementId ? [{ turn, isWhole: !passed.includes(null) }] : [],
  );
  return (turns.find(({ isWhole }) => isWhole) ?? turns[0])?.turn ?? null;
}
