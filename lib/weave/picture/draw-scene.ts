/**
 * A scene drawn with care: its rings, the openings that are entered, arrows
 * and numbers. Knows nothing of where shapes come from, so that a browser can
 * draw with it what it has turned.
 */
import type { Side } from '../placement.ts';
import { dot, type Vector } from '../space/vector.ts';
import { type Drawn, drawRings, type PictureRing, type RingRole, scaleOf } from './draw-rings.ts';
import { arrowsThrough, drawArrow, numbersOf, type ThroughArrow } from './opening-arrows.ts';
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

/** What comes towards the eye comes from the back of what it goes through. */
const sideSeen = (way: Vector, { toward }: View): Side => (dot(way, toward) > 0 ? 'back' : 'front');

export function drawScene({ rings, arrows }: Pick<Scene, 'rings' | 'arrows'>, view: View): Panel {
  const drawn = drawRings(rings, view);
  const by = scaleOf(rings);
  const entered = rings.flatMap(({ role }, at) => (role === 'entered' ? [drawn.seen[at] as SeenRing] : []));
  const through = arrowsThrough(
    arrows.map(({ at, way, into }) => {
      const [x, y] = seenPoint(view, at);
      const [dx, dy] = seenPoint(view, way);
      return { at: [x * by, y * by], way: [dx, dy], from: sideSeen(way, view), into };
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
function takenBy(arrow: ThroughArrow): readonly Taken[] {
  const { foot, head } = arrow;
  const { text, at, half } = numbersOf(arrow);
  return [
    ...(text === '' ? [] : [{ at, radius: half[0] }]),
    ...[0, 1 / 3, 2 / 3, 1].map((part) => ({
      at: [foot[0] + (head[0] - foot[0]) * part, foot[1] + (head[1] - foot[1]) * part] as const,
      radius: 4,
    })),
  ];
}
