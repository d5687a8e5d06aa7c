/**
 * A scene drawn with care: its rings, the openings that are entered, arrows
 * and numbers. Knows nothing of where shapes come from, so that a browser can
 * draw with it what it has turned.
 */
import type { Side } from '../placement.ts';
import { dot, type Vector } from '../space/vector.ts';
import { type Drawn, drawRings, type PictureRing, type RingRole, scaleOf } from './draw-rings.ts';
import { arrowsThrough, drawArrow, type NumberedArrow } from './opening-arrows.ts';
import { type SeenRing, seenPoint } from './seen-ring.ts';
import { openingWash, ringNumbers, type Taken } from './step-marks.ts';
import type { View } from './view.ts';

/** A ring, and the number that it carries where it takes part in a step; empty elsewhere. */
export type SceneRing = PictureRing & { readonly label: string };

/** Where an opened ring goes through an opening, and which way. */
export interface SceneArrow {
  readonly at: Vector;
  readonly way: Vector;
  /** Number of the ring whose opening it is. */
  readonly into: string;
}

export interface Scene {
  readonly rings: readonly SceneRing[];
  readonly arrows: readonly SceneArrow[];
  /** From where the still picture is seen. */
  readonly view: View;
  /** What the still picture shows, in words. */
  readonly text: string;
}

type Panel = Pick<Drawn, 'elements' | 'box'>;

const FORMS: Readonly<Record<Exclude<RingRole, 'plain'>, 'disc' | 'box' | 'dotted'>> = {
  new: 'disc',
  carried: 'box',
  entered: 'dotted',
};

/**
 * The face of the opening that is entered, as it is seen: what leaves by the
 * face that is turned to the eye came from the back. Which way it goes in the
 * picture's depth does not tell that where the opening is seen aslant.
 */
export function sideEntered(
  rings: readonly SceneRing[],
  { way, into }: Pick<SceneArrow, 'way' | 'into'>,
  { toward }: View,
): Side {
  const normal = rings.find(({ label }) => label === into)?.ring.normal ?? toward;
  return dot(way, normal) * dot(normal, toward) > 0 ? 'back' : 'front';
}

export function drawScene({ rings, arrows }: Pick<Scene, 'rings' | 'arrows'>, view: View): Panel {
  const drawn = drawRings(rings, view);
  const by = scaleOf(rings);
  const entered = rings.flatMap(({ role }, at) => (role === 'entered' ? [drawn.seen[at] as SeenRing] : []));
  const through = arrowsThrough(
    arrows.map((arrow) => {
      const [x, y] = seenPoint(view, arrow.at);
      const [dx, dy] = seenPoint(view, arrow.way);
      const from = sideEntered(rings, arrow, view);
      return { at: [x * by, y * by], way: [dx, dy], from, into: arrow.into };
    }),
  );
  const numbers = rings.flatMap(({ role, label }, at) =>
    role === 'plain' || label === ''
      ? []
      : [{ ring: drawn.seen[at] as SeenRing, text: label, frame: FORMS[role] }],
  );
  return {
    box: drawn.box,
    elements: [
      ...(arrows.length > 0 ? entered.map(openingWash) : []),
      ...drawn.elements,
      ...through.map(drawArrow),
      ...ringNumbers(numbers, drawn.seen, through.flatMap(takenBy)),
    ],
  };
}

/** Where an arrow lies: its numbers, and points along it. */
function takenBy({ foot, head, numbers }: NumberedArrow): readonly Taken[] {
  const { text, at, half } = numbers;
  return [
    ...(text === '' ? [] : [{ at, radius: half[0] }]),
    ...[0, 1 / 3, 2 / 3, 1].map((part) => ({
      at: [foot[0] + (head[0] - foot[0]) * part, foot[1] + (head[1] - foot[1]) * part] as const,
      radius: 4,
    })),
  ];
}
