/**
 * Pictures of a ring sequence: the finished piece, and each placement with
 * the new ring, what it carries and the rings that it enters.
 */

import type { Side } from '../placement.ts';
import { linkSign } from '../space/linking.ts';
import type { PieceShape, PlacedPiece } from '../space/piece-in-space.ts';
import type { RoundRing } from '../space/round-ring.ts';
import { dot, scale, type Vector } from '../space/vector.ts';
import { drawRings, type PictureRing, type RingRole, scaleOf } from './draw-rings.ts';
import { framePicture } from './frame-picture.ts';
import { bestRoll, turnedOver, viewOf } from './picture-views.ts';
import { finishedWords, type KindLooks, stepWords } from './say-step.ts';
import { seenPoint } from './seen-ring.ts';
import { openingArrow, ringLabel, throughPoint } from './step-marks.ts';
import type { Scene } from './turned-scene.ts';
import type { View } from './view.ts';
import type { WholeLength } from './whole-length.ts';

export interface PictureWishes {
  readonly kinds: KindLooks;
  /** Degrees about the length, on top of the view that shows most; 0 for that one. */
  readonly roll: number;
  readonly side: 'front' | 'back';
  /** As the other hand sees it in a mirror: left and right change places, front and back do not. */
  readonly isMirrored?: boolean;
}

/** A picture and the words that stand for it, made from the same facts. */
export interface WeavePicture {
  readonly svg: string;
  readonly text: string;
}

const GREY = '#b9bcc2';

function viewFor(shape: PieceShape, { roll, side, isMirrored = false }: PictureWishes): View {
  const growsLeft = shape.match.cellsARepeat < 0;
  const straight = viewOf(bestRoll(shape) + roll, growsLeft);
  const view = side === 'back' ? turnedOver(straight) : straight;
  return isMirrored ? { ...view, right: scale(view.right, -1) } : view;
}

/** What `drawWholeLength` needs of a placed piece. */
export const wholeOf = (
  placed: PlacedPiece,
  shape: PieceShape,
  wishes: PictureWishes,
  text: string,
): WholeLength => ({
  rings: placed.rings.flatMap((ring, index) =>
    ring ? [pictured(ring, placed, index, 'plain', wishes)] : [],
  ),
  view: viewFor(shape, wishes),
  text,
});

/** The whole piece as it is placed. */
export function drawFinished(placed: PlacedPiece, shape: PieceShape, wishes: PictureWishes): WeavePicture {
  const rings = placed.rings.flatMap((ring, index) =>
    ring ? [pictured(ring, placed, index, 'plain', wishes)] : [],
  );
  const text = finishedWords(placed.woven, wishes.kinds);
  return {
    svg: framePicture(drawRings(rings, viewFor(shape, wishes)), { title: 'The piece', description: text }),
    text,
  };
}

const pictured = (
  ring: RoundRing,
  { woven }: PlacedPiece,
  index: number,
  role: RingRole,
  { kinds }: PictureWishes,
): PictureRing => ({ ring, role, colour: kinds.get(woven.rings[index]?.ringKind ?? '')?.colour ?? GREY });

/** Rings shown beside those that take part: enough to see where in the piece it happens. */
const CONTEXT = 4;

/** What a picture of one turn holds, before it is drawn or turned. */
interface TurnParts {
  /** Indices of the piece's rings that are shown, and what each is in the step. */
  readonly shown: readonly { readonly index: number; readonly role: RingRole; readonly ring: PictureRing }[];
  readonly arrows: readonly Opening[];
  readonly view: View;
  readonly text: string;
}

interface Opening {
  readonly at: Vector;
  /** The way in which the opened ring goes through. */
  readonly way: Vector;
  readonly from: Side;
}

/** Null where a ring that takes part has no place. */
function partsOfTurn(
  placed: PlacedPiece,
  shape: PieceShape,
  turn: number,
  wishes: PictureWishes,
): TurnParts | null {
  const { woven } = placed;
  const made = woven.turns[turn];
  if (!made) return null;
  const roles = new Map<number, RingRole>();
  for (const ring of made.passed) if (ring !== null) roles.set(ring, 'entered');
  for (const ring of made.carried) roles.set(ring, made.opened === null ? 'new' : 'carried');
  if (made.opened !== null) roles.set(made.opened, 'new');
  const there = woven.rings
    .filter((ring) => ring.turn <= turn && placed.rings[ring.index])
    .map(({ index }) => index);
  const shown = there.filter((index, at) => roles.has(index) || at >= there.length - CONTEXT - roles.size);
  if (roles.size === 0 || ![...roles.keys()].every((index) => shown.includes(index))) return null;
  const view = viewFor(shape, wishes);
  return {
    shown: shown.map((index) => {
      const role = roles.get(index) ?? 'plain';
      return { index, role, ring: pictured(placed.rings[index] as RoundRing, placed, index, role, wishes) };
    }),
    arrows: openings(placed, turn, view),
    view,
    text: stepWords({ woven, turn: made, kinds: wishes.kinds }),
  };
}

/** The piece once a turn is done: what it added and entered is picked out; null where a ring that takes part has no place. */
export function drawTurn(
  placed: PlacedPiece,
  shape: PieceShape,
  turn: number,
  wishes: PictureWishes,
): WeavePicture | null {
  const parts = partsOfTurn(placed, shape, turn, wishes);
  if (!parts) return null;
  const { shown, view, text } = parts;
  const rings = shown.map(({ ring }) => ring);
  const drawn = drawRings(rings, view);
  const by = scaleOf(rings);
  const marks = [
    ...parts.arrows.map(({ at, way, from }) => {
      const [x, y] = seenPoint(view, at);
      const [dx, dy] = seenPoint(view, way);
      return openingArrow([x * by, y * by], [dx, dy], from);
    }),
    ...shown.flatMap(({ index, role }, at) => {
      const form = role === 'new' ? 'disc' : role === 'carried' ? 'box' : 'plain';
      return role === 'plain' ? [] : [ringLabel(at, String(index + 1), drawn.seen, form)];
    }),
  ];
  return { svg: framePicture(drawn, { title: 'This step', description: text }, marks), text };
}

/** The same, to be turned by hand. */
export function sceneOfTurn(
  placed: PlacedPiece,
  shape: PieceShape,
  turn: number,
  wishes: PictureWishes,
): Scene | null {
  const parts = partsOfTurn(placed, shape, turn, wishes);
  return (
    parts && {
      rings: parts.shown.map(({ index, role, ring }) =>
        sceneRing(ring, role === 'plain' ? '' : String(index + 1)),
      ),
      arrows: parts.arrows,
      view: parts.view,
      text: parts.text,
    }
  );
}

/** The whole piece, to be turned by hand. */
export const sceneOfPiece = (placed: PlacedPiece, shape: PieceShape, wishes: PictureWishes): Scene => ({
  rings: placed.rings.flatMap((ring, index) =>
    ring ? [sceneRing(pictured(ring, placed, index, 'plain', wishes), '')] : [],
  ),
  arrows: [],
  view: viewFor(shape, wishes),
  text: finishedWords(placed.woven, wishes.kinds),
});

const sceneRing = ({ ring, colour, role }: PictureRing, label: string): Scene['rings'][number] => ({
  ...ring,
  colour,
  role,
  label,
});

/**
 * One opening for each ring that the opened ring goes through, passed or
 * carried. It goes through all of them one way: the way that most of the told
 * sides ask for; a side that is not seen so is left out.
 */
function openings(placed: PlacedPiece, turn: number, view: View): readonly Opening[] {
  const found = placed.woven.links.flatMap((link) => {
    const [ring, through] = [placed.rings[link.by], placed.rings[link.through]];
    if (link.turn !== turn || link.from === null || !ring || !through || linkSign(ring, through) === 0)
      return [];
    const place = throughPoint(ring, through);
    if (!place) return [];
    const facing = dot(through.normal, view.toward) > 0 ? 1 : -1;
    const isFromBack = dot(place.along, through.normal) * facing > 0;
    return [{ place, from: link.from, way: isFromBack === (link.from === 'back') ? 1 : -1 }];
  });
  const way = found.reduce((sum, each) => sum + each.way, 0) < 0 ? -1 : 1;
  return found
    .filter((each) => each.way === way)
    .map(({ place, from }) => ({ at: place.at, way: scale(place.along, way), from }));
}
