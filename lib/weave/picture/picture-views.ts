/** From where a piece is shown: level, rolled so that no ring is seen from its edge, its growth to the right. */
import { type PieceShape, sidesSeenOtherwise } from '../space/piece-in-space.ts';
import { dot, type Vector } from '../space/vector.ts';
import { type View, viewAt } from './view.ts';

const STEP = 15;
/** Swings that are tried where no roll alone shows every ring's opening, as where some stand across the length. */
const SWINGS = [0, 25];
/** Cosine from which an opening is seen well enough. */
const WELL_OPEN = 0.15;

/** Degrees. */
export interface Look {
  readonly roll: number;
  readonly swing: number;
}

/**
 * From where every opening is seen, sides are seen as the piece tells them,
 * and then the ring seen most nearly from its edge is seen best; the first of
 * equals.
 */
export function bestLook(shape: PieceShape): Look {
  const looks = SWINGS.flatMap((swing) =>
    Array.from({ length: 180 / STEP }, (_, n) => {
      const look = { roll: n * STEP, swing };
      const { toward } = viewOf(look, false);
      const open = Math.min(...shape.cell.rings.map((ring) => Math.abs(dot(ring.normal, toward))));
      return { look, open: Math.round(open * 1000) / 1000, wrong: sidesSeenOtherwise(shape, toward) };
    }),
  );
  const level = looks.filter(({ look, open }) => open >= WELL_OPEN && look.swing === 0);
  const open = level.length > 0 ? level : looks.filter((each) => each.open >= WELL_OPEN);
  const [best] =
    open.length > 0
      ? open.toSorted((a, b) => a.wrong - b.wrong || b.open - a.open)
      : looks.toSorted((a, b) => b.open - a.open);
  return best?.look ?? { roll: 0, swing: 0 };
}

/** The view of a look; a piece that grows to the left is shown from the other side, so that it grows to the right. */
export function viewOf({ roll, swing }: Look, growsLeft: boolean): View {
  const view = viewAt(roll, swing);
  return growsLeft ? turnedOver(view) : view;
}

/** The back of what a view shows: turned about its upright line, as a hand turns it over. */
export function turnedOver({ right, up, toward }: View): View {
  const away = ([x, y, z]: Vector): Vector => [-x, -y, -z];
  return { right: away(right), up, toward: away(toward) };
}
