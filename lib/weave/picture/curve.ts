/** Smooth curves as short path text: cubic pieces through points with their slopes, numbers with one decimal. */

/** Writes the point at an angle, and how it changes with the angle, into `out`: x, y, dx, dy. */
export type Curve = (angle: number, out: Float64Array) => void;

/** One decimal, as short as it can be written. */
export const short = (value: number): string => tenths(Math.round(value * 10));

/** Numbers that pictures are full of, written once. */
const WRITTEN: string[] = [];
const MOST_WRITTEN = 4096;

function tenths(count: number): string {
  if (count < 0) return `-${tenths(-count)}`;
  const known = WRITTEN[count];
  if (known !== undefined) return known;
  const [whole, rest] = [Math.floor(count / 10), count % 10];
  const text = rest === 0 ? String(whole) : `${whole === 0 ? '' : whole}.${rest}`;
  if (count < MOST_WRITTEN) WRITTEN[count] = text;
  return text;
}

/** A number after another: a minus sign parts them, anything else needs a space. */
const after = (count: number): string => (count < 0 ? tenths(count) : ` ${tenths(count)}`);

export const moveTo = (x: number, y: number): string =>
  `M${tenths(Math.round(x * 10))}${after(Math.round(y * 10))}`;

/** Longest piece, in radians. */
const PIECE = Math.PI / 2;
/** A piece is halved so often at most, where a curve turns on the spot. */
const HALVINGS = 13;

/** Room for one curve: point and slope at a piece's start, at its end, and between. */
const START = new Float64Array(4);
const END = new Float64Array(4);
const BETWEEN = new Float64Array(4);

/** A curve from one angle to another, as path text that leaves it by no more than `off`, in the unit of the picture. */
export function curvePath(curve: Curve, from: number, to: number, off: number): string {
  curve(from, START);
  const path = new CubicPath(at(START, 0), at(START, 1));
  addCurve(path, { curve, from, to }, off);
  return path.text;
}

/** A stretch of a curve; run backwards where `to` is the lesser. */
export interface Stretch {
  readonly curve: Curve;
  readonly from: number;
  readonly to: number;
}

/** Stretches that each begin where the one before ends, and the last where the first began, as path text. */
export function closedPath(stretches: readonly Stretch[], off: number): string {
  const [first] = stretches;
  if (!first) return '';
  first.curve(first.from, START);
  const path = new CubicPath(at(START, 0), at(START, 1));
  for (const each of stretches) {
    each.curve(each.from, START);
    addCurve(path, each, off);
  }
  return path.text;
}

/** Expects where the curve begins in START. */
function addCurve(path: CubicPath, { curve, from, to }: Stretch, off: number): void {
  const pieces = Math.max(1, Math.ceil(Math.abs(to - from) / PIECE - 1e-9));
  for (let n = 0; n < pieces; n++)
    addPiece(path, curve, from + ((to - from) * n) / pieces, from + ((to - from) * (n + 1)) / pieces, {
      off,
      halvings: HALVINGS,
    });
}

const at = (values: Float64Array, index: number): number => values[index] as number;

/** Expects the curve at `a` in START, and leaves the curve at `b` there. */
function addPiece(
  path: CubicPath,
  curve: Curve,
  a: number,
  b: number,
  { off, halvings }: { readonly off: number; readonly halvings: number },
): void {
  curve(b, END);
  const k = (b - a) / 3;
  const [x0, y0, x1, y1] = [at(START, 0), at(START, 1), at(END, 0), at(END, 1)];
  const [ax, ay] = [x0 + at(START, 2) * k, y0 + at(START, 3) * k];
  const [bx, by] = [x1 - at(END, 2) * k, y1 - at(END, 3) * k];
  if (halvings > 0 && isLoose(curve, a, b, off, [x0, y0, ax, ay, bx, by, x1, y1])) {
    const middle = (a + b) / 2;
    const finer = { off, halvings: halvings - 1 };
    addPiece(path, curve, a, middle, finer);
    addPiece(path, curve, middle, b, finer);
    return;
  }
  path.add(ax, ay, bx, by, x1, y1);
  START.set(END);
}

type Cubic = readonly [number, number, number, number, number, number, number, number];

function isLoose(
  curve: Curve,
  a: number,
  b: number,
  off: number,
  [x0, y0, ax, ay, bx, by, x1, y1]: Cubic,
): boolean {
  for (let quarter = 1; quarter < 4; quarter++) {
    const t = quarter / 4;
    const s = 1 - t;
    const [w0, w1, w2, w3] = [s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t];
    curve(a + (b - a) * t, BETWEEN);
    const dx = w0 * x0 + w1 * ax + w2 * bx + w3 * x1 - at(BETWEEN, 0);
    const dy = w0 * y0 + w1 * ay + w2 * by + w3 * y1 - at(BETWEEN, 1);
    if (!(dx * dx + dy * dy <= off * off)) return true;
  }
  return false;
}

/** Path text of cubic pieces, each from where the one before ends; in whole tenths, so that no rounding adds up. */
class CubicPath {
  text: string;
  private x: number;
  private y: number;
  /** From the end of the last piece to its second handle, mirrored: where a smooth next piece has its first one. */
  private mirrored: readonly [number, number] | null = null;

  constructor(x: number, y: number) {
    this.text = moveTo(x, y);
    this.x = Math.round(x * 10);
    this.y = Math.round(y * 10);
  }

  add(ax: number, ay: number, bx: number, by: number, toX: number, toY: number): void {
    const { x, y, mirrored } = this;
    const [px, py] = [Math.round(ax * 10 - x), Math.round(ay * 10 - y)];
    const [qx, qy] = [Math.round(bx * 10 - x), Math.round(by * 10 - y)];
    this.x = Math.round(toX * 10);
    this.y = Math.round(toY * 10);
    const [ex, ey] = [this.x - x, this.y - y];
    const isSmooth = mirrored && Math.abs(mirrored[0] - px) <= 1 && Math.abs(mirrored[1] - py) <= 1;
    this.text += isSmooth ? `s${tenths(qx)}` : `c${tenths(px)}${after(py)}${after(qx)}`;
    this.text += after(qy) + after(ex) + after(ey);
    this.mirrored = [ex - qx, ey - qy];
  }
}
