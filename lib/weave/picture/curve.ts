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
/** A piece's four points. */
const CUBIC = new Float64Array(8);

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
  CUBIC[0] = at(START, 0);
  CUBIC[1] = at(START, 1);
  CUBIC[2] = at(START, 0) + at(START, 2) * k;
  CUBIC[3] = at(START, 1) + at(START, 3) * k;
  CUBIC[4] = at(END, 0) - at(END, 2) * k;
  CUBIC[5] = at(END, 1) - at(END, 3) * k;
  CUBIC[6] = at(END, 0);
  CUBIC[7] = at(END, 1);
  if (halvings > 0 && isLoose(curve, a, b, off)) {
    const middle = (a + b) / 2;
    const finer = { off, halvings: halvings - 1 };
    addPiece(path, curve, a, middle, finer);
    addPiece(path, curve, middle, b, finer);
    return;
  }
  path.add(CUBIC);
  START.set(END);
}

/** Whether the curve between two angles leaves the piece in CUBIC by more than `off`. */
function isLoose(curve: Curve, a: number, b: number, off: number): boolean {
  for (let quarter = 1; quarter < 4; quarter++) {
    const t = quarter / 4;
    const s = 1 - t;
    const w0 = s * s * s;
    const w1 = 3 * s * s * t;
    const w2 = 3 * s * t * t;
    const w3 = t * t * t;
    curve(a + (b - a) * t, BETWEEN);
    const dx = w0 * at(CUBIC, 0) + w1 * at(CUBIC, 2) + w2 * at(CUBIC, 4) + w3 * at(CUBIC, 6) - at(BETWEEN, 0);
    const dy = w0 * at(CUBIC, 1) + w1 * at(CUBIC, 3) + w2 * at(CUBIC, 5) + w3 * at(CUBIC, 7) - at(BETWEEN, 1);
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
  private isFirst = true;
  private mirroredX = 0;
  private mirroredY = 0;

  constructor(x: number, y: number) {
    this.text = moveTo(x, y);
    this.x = Math.round(x * 10);
    this.y = Math.round(y * 10);
  }

  /** @param cubic four points; the first is where the path is */
  add(cubic: Float64Array): void {
    const { x, y } = this;
    const px = Math.round(at(cubic, 2) * 10 - x);
    const py = Math.round(at(cubic, 3) * 10 - y);
    const qx = Math.round(at(cubic, 4) * 10 - x);
    const qy = Math.round(at(cubic, 5) * 10 - y);
    this.x = Math.round(at(cubic, 6) * 10);
    this.y = Math.round(at(cubic, 7) * 10);
    const ex = this.x - x;
    const ey = this.y - y;
    const isSmooth =
      !this.isFirst && Math.abs(this.mirroredX - px) <= 1 && Math.abs(this.mirroredY - py) <= 1;
    this.text += isSmooth ? `s${tenths(qx)}` : `c${tenths(px)}${after(py)}${after(qx)}`;
    this.text += after(qy) + after(ex) + after(ey);
    this.isFirst = false;
    this.mirroredX = ex - qx;
    this.mirroredY = ey - qy;
  }
}
