/** From where a piece is shown: level, rolled so that no ring is seen from its edge, its growth to the right. */
import { type PieceShape, sidesSeenOtherwise } from '../space/piece-in-space.ts';
import { dot, type Vector } from '../space/vector.ts';
import { type View, viewAt } from './view.ts';

const STEP = 15;

/**
 * The roll, in degrees, at which sides are seen as the piece tells them, and
 * then the ring seen most nearly from its edge is seen best; the first of
 * equals.
 */
export function bestRoll(shape: PieceShape): number {
  let best = { roll: 0, wrong: Number.POSITIVE_INFINITY, open: -1 };
  for (let roll = 0; roll < 180; roll += STEP) {
    const { toward } = viewOf(roll, false);
    const open = Math.min(...shape.cell.rings.map((ring) => Math.abs(dot(ring.normal, toward))));
    const rounded = Math.round(open * 1000) / 1000;
    const wrong = sidesSeenOtherwise(shape, toward);
    if (wrong < best.wrong || (wrong === best.wrong && rounded > best.open))
      best = { roll, wrong, open: rounded };
  }
  return best.roll;
}

/** A view at a roll; a piece that grows to the left is shown from the other side, so that it grows to the right. */
export function viewOf(roll: number, growsLeft: boolean): View {
  const view = viewAt(roll);
  return growsLeft ? turnedOver(view) : view;
}

/** The back of what a view shows: turned about its upright line, as a hand turns it over. */
export function turnedOver({ right, up, toward }: View): View {
  const away = ([x, y, z]: Vector): Vector => [-x, -y, -z];
  return { right: away(right), up, toward: away(toward) };
}
