/**
 * A scene drawn with care: its rings, the openings that are entered, arrows
 * and numbers. Knows nothing of where shapes come from, so that a browser can
 * draw with it what it has turned.
 */
import type { Side } from '../placement.ts';
import { dot, type Vector } from '../space/vector.ts';
import { type Drawn, drawRings, type PictureRing, type RingRole, scaleOf } from './draw-rings.ts';
import { type SeenRing, seenPoint } from './seen-ring.ts';
import { openingArrow, openingWash, ringLabel } from './step-marks.ts';
import type { View } from './view.ts';

/** A ring, and the number that it carries where it takes part in a step; empty elsewhere. */
export type SceneRing = PictureRing & { readonly label: string };

/** Where an opened ring goes through an opening, and which way. */
export interface SceneArrow {
  readonly at: Vector;
  readonly way: Vector;
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

const FORMS: Readonly<Record<Exclude<RingRole, 'plain'>, 'disc' | 'box' | 'plain'>> = {
  new: 'disc',
  carried: 'box',
  entered: 'plain',
};

/** What comes towards the eye comes from the back of what it goes through. */
const sideSeen = (way: Vector, { toward }: View): Side => (dot(way, toward) > 0 ? 'back' : 'front');

export function drawScene({ rings, arrows }: Pick<Scene, 'rings' | 'arrows'>, view: View): Panel {
  const drawn = drawRings(rings, view);
  const by = scaleOf(rings);
  const entered = rings.flatMap(({ role }, at) => (role === 'entered' ? [drawn.seen[at] as SeenRing] : []));
  return {
    box: drawn.box,
    elements: [
      ...(arrows.length > 0 ? entered.map(openingWash) : []),
      ...drawn.elements,
      ...arrows.map(({ at, way }) => {
        const [x, y] = seenPoint(view, at);
        const [dx, dy] = seenPoint(view, way);
        return openingArrow([x * by, y * by], [dx, dy], sideSeen(way, view));
      }),
      ...rings.flatMap(({ role, label }, at) =>
        role === 'plain' || label === '' ? [] : [ringLabel(at, label, drawn.seen, FORMS[role])],
      ),
    ],
  };
}
