/** Where a piece is looked at from: straight, without perspective. */
import { turnAboutX, type Vector } from '../space/vector.ts';

export interface View {
  /** Directions in space that lie to the right, up, and towards the eye in the picture; unit, square. */
  readonly right: Vector;
  readonly up: Vector;
  readonly toward: Vector;
}

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

/**
 * The chain lies level, its start at the left. `roll` turns the piece about
 * its length, `swing` turns its far end towards the eye; degrees.
 */
export function viewAt(roll: number, swing = 0): View {
  const level = (v: Vector): Vector => turnAboutX(v, radians(-roll));
  const s = Math.sin(radians(swing));
  const c = Math.cos(radians(swing));
  return {
    right: [c, ...rest(level([0, 0, -s]))],
    up: level([0, 1, 0]),
    toward: [s, ...rest(level([0, 0, c]))],
  };
}

const rest = ([, y, z]: Vector): readonly [number, number] => [y, z];
