/** From where a piece is shown: level, rolled so that no ring is seen from its edge, its growth to the right. */
import { type PieceShape, sidesSeenOtherwise } from '../space/piece-in-space.ts';
import { dot, turnAboutX, type Vector } from '../space/vector.ts';
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
  const { rings, twist } = shape.cell;
  const normals = rings.map(({ normal }) => normal);
  const round = Array.from({ length: REPEATS_ROUND }, (_, n) =>
    normals.map((normal) => turnAboutX(normal, n * twist)),
  ).flat();
  // Of some chains one ring or another is always seen from its edge: then one repeat decides.
  return bestOf(shape, round) ?? bestOf(shape, normals) ?? { roll: 0, swing: 0 };
}

/** Repeats looked at where each is turned against the one before. */
const REPEATS_ROUND = 12;

/** From where rings that face these ways are seen best; of several repeats null where none shows them all. */
function bestOf(shape: PieceShape, normals: readonly Vector[]): Look | null {
  const looks = SWINGS.flatMap((swing) =>
    Array.from({ length: 180 / STEP }, (_, n) => {
      const look = { roll: n * STEP, swing };
      const { toward } = viewOf(look, false);
      const open = Math.min(...normals.map((normal) => Math.abs(dot(normal, toward))));
      return { look, open: Math.round(open * 1000) / 1000, wrong: sidesSeenOtherwise(shape, toward) };
    }),
  );
  const level = looks.filter(({ look, open }) => open >= WELL_OPEN && look.swing === 0);
  const open = level.length > 0 ? level : looks.filter((each) => each.open >= WELL_OPEN);
  const [best] = open.toSorted((a, b) => a.wrong - b.wrong || b.open - a.open);
  if (best) return best.look;
  const isOneRepeat = normals.length === shape.cell.rings.length;
  return isOneRepeat ? (looks.toSorted((a, b) => b.open - a.open)[0]?.look ?? null) : null;
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
