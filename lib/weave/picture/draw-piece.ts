/**
 * Pictures of a ring sequence: the finished piece, and each placement with
 * the new ring, what it carries and the rings that it enters.
 */

import { linkSign } from '../space/linking.ts';
import type { PieceShape, PlacedPiece } from '../space/piece-in-space.ts';
import type { RoundRing } from '../space/round-ring.ts';
import { dot, scale } from '../space/vector.ts';
import { drawRings, type PictureRing, type RingRole } from './draw-rings.ts';
import { drawScene, type Scene, type SceneArrow } from './draw-scene.ts';
import { framePicture, oneAboveOther } from './frame-picture.ts';
import { bestLook, turnedOver, viewOf } from './picture-views.ts';
import { finishedWords, type KindLooks, stepWords } from './say-step.ts';
import { throughPoint } from './step-marks.ts';
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

function viewFor(
  shape: PieceShape,
  { roll, side, isMirrored = false }: PictureWishes,
  best = bestLook(shape),
): View {
  const growsLeft = shape.match.cellsARepeat < 0;
  const straight = viewOf({ ...best, roll: best.roll + roll }, growsLeft);
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
): PictureRing => {
  const look = kinds.get(woven.rings[index]?.ringKind ?? '');
  return { ring, role, colour: look?.colour ?? GREY, ...(look?.line && { line: look.line }) };
};

/** Rings shown beside those that take part: enough to see where in the piece it happens. */
const CONTEXT = 4;

/** What of a piece a picture shows. */
export interface Seen {
  /** Rings that are left out, as they do not lie where the shape has them. */
  readonly without?: ReadonlySet<number>;
  /** Beside the rings that take part only those from this one on. */
  readonly from?: number;
}

/** The piece once a turn is done, to be drawn or turned by hand; null where a ring that takes part has no place. */
export function sceneOfTurn(
  placed: PlacedPiece,
  shape: PieceShape,
  turn: number,
  wishes: PictureWishes,
  { without, from = 0 }: Seen = {},
): Scene | null {
  const { woven } = placed;
  const made = woven.turns[turn];
  if (!made) return null;
  const roles = new Map<number, RingRole>();
  for (const ring of made.passed) if (ring !== null) roles.set(ring, 'entered');
  for (const ring of made.carried) roles.set(ring, made.opened === null ? 'new' : 'carried');
  if (made.opened !== null) roles.set(made.opened, 'new');
  for (const ring of without ?? []) roles.delete(ring);
  const there = woven.rings
    .filter(({ index, turn: at }) => at <= turn && placed.rings[index] && !without?.has(index))
    .map(({ index }) => index);
  const near = new Set(
    there.filter(
      (index, at) => roles.has(index) || (index >= from && at >= there.length - CONTEXT - roles.size),
    ),
  );
  // What holds two of them together stays, lest one seems to hang in the air.
  const holds = (index: number): boolean =>
    index >= from &&
    woven.links.filter(
      ({ by, through }) => (by === index && near.has(through)) || (through === index && near.has(by)),
    ).length > 1;
  const shown = there.filter((index) => near.has(index) || holds(index));
  if (roles.size === 0 || ![...roles.keys()].every((index) => shown.includes(index))) return null;
  const taking = [...roles.keys()].map((index) => placed.rings[index] as RoundRing);
  const view = viewOfTurn(placed, shape, { turn, taking, wishes });
  const isLinked = woven.links.some((link) => link.turn <= turn);
  const rings = shown.map((index) => placed.rings[index] as RoundRing);
  const lying = isLinked ? rings : laidOut(rings, view);
  return {
    rings: shown.map((index, at) => ({
      ...pictured(lying[at] as RoundRing, placed, index, roles.get(index) ?? 'plain', wishes),
      label: roles.has(index) ? String(index + 1) : '',
    })),
    arrows: openings(placed, turn, view).seen.filter(({ into }) => !without?.has(Number(into) - 1)),
    view,
    text: stepWords({ woven, turn: made, kinds: wishes.kinds }),
  };
}

/** Room between rings that are laid out, in wires. */
const LAID_APART = 0.8;

/** Rings that nothing joins yet, side by side as on the bench, lest they look as if they went through each other. */
function laidOut(rings: readonly RoundRing[], { right }: View): readonly RoundRing[] {
  let edge = 0;
  return rings.map((ring) => {
    const half = ring.radius + ring.wire * (0.5 + LAID_APART / 2);
    const middle = edge + half;
    edge += 2 * half;
    return { ...ring, centre: scale(right, middle) };
  });
}

/** The piece once a turn is done: what it added and entered is picked out; null where a ring that takes part has no place. */
export function drawTurn(
  placed: PlacedPiece,
  shape: PieceShape,
  turn: number,
  wishes: PictureWishes,
): WeavePicture | null {
  const parts = sceneOfTurn(placed, shape, turn, wishes);
  return (
    parts && {
      svg: framePicture(drawScene(parts, parts.view), { title: 'This step', description: parts.text }),
      text: parts.text,
    }
  );
}

/** A piece and its shape, and what of it is shown. */
export interface Stage extends Seen {
  readonly placed: PlacedPiece;
  readonly shape: PieceShape;
}

/** A turn that folds back, or whose rings are folded back only later: what is seen first, and below it what is seen then. */
export function drawInTwo(
  before: Stage,
  after: Stage,
  turn: number,
  wishes: PictureWishes,
  arrowsThen: boolean,
): WeavePicture | null {
  const first = sceneOfTurn(before.placed, before.shape, turn, wishes, before);
  const then = sceneOfTurn(after.placed, after.shape, turn, wishes, after);
  if (!first || !then) return null;
  const second = arrowsThen ? then : { ...then, arrows: [] };
  return {
    svg: framePicture(oneAboveOther(drawScene(first, first.view), drawScene(second, then.view)), {
      title: 'This step',
      description: first.text,
    }),
    text: first.text,
  };
}

/** The whole piece, to be turned by hand. */
export const sceneOfPiece = (placed: PlacedPiece, shape: PieceShape, wishes: PictureWishes): Scene => ({
  rings: placed.rings.flatMap((ring, index) =>
    ring ? [{ ...pictured(ring, placed, index, 'plain', wishes), label: '' }] : [],
  ),
  arrows: [],
  view: viewFor(shape, wishes),
  text: finishedWords(placed.woven, wishes.kinds),
});

/**
 * The view of the whole piece where the told sides are seen from there; else,
 * as hands turn a chain that twists, the nearest roll from which they are.
 */
function viewOfTurn(
  placed: PlacedPiece,
  shape: PieceShape,
  {
    turn,
    taking,
    wishes,
  }: { readonly turn: number; readonly taking: readonly RoundRing[]; readonly wishes: PictureWishes },
): View {
  const best = bestLook(shape);
  const front = { ...wishes, roll: 0, side: 'front' as const, isMirrored: false };
  const rolledBy = (roll: number): View => viewFor(shape, { ...front, roll }, best);
  const unseen = (roll: number): number => openings(placed, turn, rolledBy(roll)).unseen;
  if (unseen(0) === 0) return viewFor(shape, wishes, best);
  const rolls = Array.from({ length: 24 }, (_, n) => (n % 2 === 0 ? 1 : -1) * ROLL_STEP * Math.ceil(n / 2));
  let chosen = { roll: 0, unseen: Number.POSITIVE_INFINITY };
  for (const roll of rolls) {
    const { toward } = rolledBy(roll);
    const isOpen = taking.every(({ normal }) => Math.abs(dot(normal, toward)) > LEAST_OPEN);
    const count = isOpen ? unseen(roll) : Number.POSITIVE_INFINITY;
    if (count < chosen.unseen) chosen = { roll, unseen: count };
  }
  return viewFor(shape, wishes, { ...best, roll: best.roll + chosen.roll });
}

const ROLL_STEP = 15;
/** Cosine below which a ring is seen too nearly from its edge to show its opening. */
const LEAST_OPEN = 0.18;

interface Openings {
  readonly seen: readonly SceneArrow[];
  /** Told sides that are not seen so. */
  readonly unseen: number;
}

/**
 * One opening for each ring that the opened ring goes through, passed or
 * carried. It goes through all of them one way: the way that most of the told
 * sides ask for; a side that is not seen so is left out.
 */
function openings(placed: PlacedPiece, turn: number, view: View): Openings {
  const found = placed.woven.links.flatMap((link) => {
    const [ring, through] = [placed.rings[link.by], placed.rings[link.through]];
    if (link.turn !== turn || link.from === null || !ring || !through || linkSign(ring, through) === 0)
      return [];
    const place = throughPoint(ring, through);
    if (!place) return [];
    const facing = dot(through.normal, view.toward) > 0 ? 1 : -1;
    const isFromBack = dot(place.along, through.normal) * facing > 0;
    // Where both ways are told as often, the rings that are entered first decide: they are there already.
    const passed = placed.woven.turns[turn]?.passed ?? [];
    const weight = passed.includes(link.through) ? 1 + 0.01 / (1 + passed.indexOf(link.through)) : 1;
    return [{ place, weight, way: isFromBack === (link.from === 'back') ? 1 : -1, into: link.through }];
  });
  const way = found.reduce((sum, each) => sum + each.weight * each.way, 0) < 0 ? -1 : 1;
  const seen = found.filter((each) => each.way === way);
  return {
    seen: seen.map(({ place, into }) => ({
      at: place.at,
      way: scale(place.along, way),
      into: String(into + 1),
    })),
    unseen: found.length - seen.length,
  };
}
