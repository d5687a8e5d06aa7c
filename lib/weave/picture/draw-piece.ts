/**
 * Pictures of a ring sequence: the finished piece, and each placement with
 * the new ring, what it carries and the rings that it enters.
 */

import { linkSign } from '../space/linking.ts';
import type { PieceShape, PlacedPiece } from '../space/piece-in-space.ts';
import type { RoundRing } from '../space/round-ring.ts';
import { dot } from '../space/vector.ts';
import { drawRings, type PictureRing, type RingRole, UNITS_A_WIRE } from './draw-rings.ts';
import { framePicture } from './frame-picture.ts';
import { bestRoll, turnedOver, viewOf } from './picture-views.ts';
import { finishedWords, type KindLooks, stepWords } from './say-step.ts';
import { seenPoint } from './seen-ring.ts';
import { openingArrow, ringLabel, throughPoint } from './step-marks.ts';
import type { View } from './view.ts';

export interface PictureWishes {
  readonly kinds: KindLooks;
  /** Degrees about the length, on top of the view that shows most; 0 for that one. */
  readonly roll: number;
  readonly side: 'front' | 'back';
}

/** A picture and the words that stand for it, made from the same facts. */
export interface WeavePicture {
  readonly svg: string;
  readonly text: string;
}

const GREY = '#b9bcc2';

function viewFor(shape: PieceShape, { roll, side }: PictureWishes): View {
  const growsLeft = shape.match.cellsARepeat < 0;
  const view = viewOf(bestRoll(shape) + roll, growsLeft);
  return side === 'back' ? turnedOver(view) : view;
}

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

/** The piece once a turn is done: what it added and entered is picked out; null where a ring that takes part has no place. */
export function drawTurn(
  placed: PlacedPiece,
  shape: PieceShape,
  turn: number,
  wishes: PictureWishes,
): WeavePicture | null {
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
  const rings = shown.map((index) =>
    pictured(placed.rings[index] as RoundRing, placed, index, roles.get(index) ?? 'plain', wishes),
  );
  const drawn = drawRings(rings, view);
  const text = stepWords({ woven, turn: made, kinds: wishes.kinds });
  const marks = [
    ...arrows(placed, turn, view, rings),
    ...shown.flatMap((index, at) => {
      const role = roles.get(index);
      if (!role) return [];
      const form = role === 'new' ? 'disc' : role === 'carried' ? 'box' : 'plain';
      return [ringLabel(at, String(index + 1), drawn.seen, form)];
    }),
  ];
  return { svg: framePicture(drawn, { title: 'This step', description: text }, marks), text };
}

/**
 * One arrow for each opening that the opened ring goes through, passed or
 * carried. All arrows of a ring run the same way round it: the way that most
 * of the told sides ask for; a side that is not seen so gets no arrow.
 */
function arrows(
  placed: PlacedPiece,
  turn: number,
  view: View,
  rings: readonly PictureRing[],
): readonly string[] {
  const by = UNITS_A_WIRE / (rings.reduce((sum, { ring }) => sum + ring.wire, 0) / rings.length);
  const openings = placed.woven.links.flatMap((link) => {
    const [ring, through] = [placed.rings[link.by], placed.rings[link.through]];
    if (link.turn !== turn || link.from === null || !ring || !through || linkSign(ring, through) === 0)
      return [];
    const place = throughPoint(ring, through);
    if (!place) return [];
    const facing = dot(through.normal, view.toward) > 0 ? 1 : -1;
    const isFromBack = dot(place.along, through.normal) * facing > 0;
    return [{ place, from: link.from, way: isFromBack === (link.from === 'back') ? 1 : -1 }];
  });
  const way = openings.reduce((sum, each) => sum + each.way, 0) < 0 ? -1 : 1;
  return openings
    .filter((each) => each.way === way)
    .map(({ place, from }) => {
      const [x, y] = seenPoint(view, place.at);
      const [dx, dy] = seenPoint(view, place.along);
      return openingArrow([x * by, y * by], [dx * way, dy * way], from);
    });
}
