/**
 * Rings as a scene that is turned by hand: quick enough to be drawn anew at
 * every movement. Every wire is cut into short straight pieces that are
 * painted from the furthest to the nearest; as wires never come nearer than
 * they are thick, that order is right wherever pieces are short beside the
 * wire. The still pictures are cut more carefully; see paint-order.ts.
 */
import { cross, dot, spanAcross, unit, type Vector } from '../space/vector.ts';
import type { Scene, SceneRing } from './draw-scene.ts';
import type { View } from './view.ts';

const radians = (degrees: number): number => (degrees * Math.PI) / 180;
const mixed = (a: Vector, b: Vector, angle: number): Vector => {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return [a[0] * c + b[0] * s, a[1] * c + b[1] * s, a[2] * c + b[2] * s];
};

/** The view once the piece is rolled about its length and then swung about the upright; degrees. */
export function turnedBy({ right, up, toward }: View, roll: number, swing: number): View {
  const rolledUp = mixed(up, toward, radians(-roll));
  const rolled = mixed(toward, up, radians(roll));
  return {
    right: mixed(right, rolled, radians(-swing)),
    up: rolledUp,
    toward: mixed(rolled, right, radians(swing)),
  };
}

/** A straight piece of wire in the picture; y counts down, all in the unit of the rings. */
export interface WirePiece {
  readonly ring: number;
  /** Which piece of its ring, from 0. */
  readonly index: number;
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
  readonly near: number;
  /** 1 where the wire lies square to the lamp, 0 where along it. */
  readonly light: number;
  /** Where the wire runs at the eye a piece has hardly any length in the picture. */
  readonly isAtEye: boolean;
}

/** Half way between lamp and eye: upper left, in the picture's directions (up, here, is positive). */
const TO_LIGHT: Vector = unit([-0.42, 0.62, 0.66]);
const AT_EYE = 0.4;

/** All pieces, the furthest first. */
export function wirePieces(
  { rings }: Pick<Scene, 'rings'>,
  view: View,
  piecesARing: number,
): readonly WirePiece[] {
  const pieces: WirePiece[] = [];
  const seen = (v: Vector): Vector => [dot(view.right, v), dot(view.up, v), dot(view.toward, v)];
  rings.forEach(({ ring: { centre, normal, radius } }, ring) => {
    const [u, v] = spanAcross(normal).map(seen) as [Vector, Vector];
    const [cx, cy, cz] = seen(centre);
    const at = (angle: number): Vector => {
      const [c, s] = [radius * Math.cos(angle), radius * Math.sin(angle)];
      return [cx + u[0] * c + v[0] * s, cy + u[1] * c + v[1] * s, cz + u[2] * c + v[2] * s];
    };
    const step = (2 * Math.PI) / piecesARing;
    let from = at(0);
    for (let index = 0; index < piecesARing; index++) {
      const to = at((index + 1) * step);
      const run: Vector = [to[0] - from[0], to[1] - from[1], to[2] - from[2]];
      const long = Math.hypot(...run);
      const along = dot(run, TO_LIGHT) / long;
      pieces.push({
        ring,
        index,
        from: [from[0], -from[1]],
        to: [to[0], -to[1]],
        near: (from[2] + to[2]) / 2,
        light: Math.sqrt(Math.max(0, 1 - along * along)),
        isAtEye: Math.hypot(run[0], run[1]) < AT_EYE * long,
      });
      from = to;
    }
  });
  return pieces.sort((a, b) => a.near - b.near);
}

/** The point of a ring that is nearest to the eye, in the picture: nothing is likelier to be in sight. */
export function nearestPoint(
  { ring: { centre, normal, radius } }: SceneRing,
  view: View,
): readonly [number, number] {
  const away = cross(normal, cross(view.toward, normal));
  const size = Math.hypot(...away);
  const k = size < 1e-6 ? 0 : radius / size;
  const p: Vector = [centre[0] + away[0] * k, centre[1] + away[1] * k, centre[2] + away[2] * k];
  return [dot(view.right, p), -dot(view.up, p)];
}
