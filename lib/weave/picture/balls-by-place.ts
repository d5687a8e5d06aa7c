/** All balls of all wires, found by where they are in the picture. */
import type { SeenRing } from './seen-ring.ts';

/** Picture units. */
export const MOST_ROUND = 1;

export class BallsByPlace {
  private readonly left: number;
  private readonly top: number;
  /** Side of a square; no ball reaches beyond the squares round its own. */
  private readonly side: number;
  private readonly columns: number;
  private readonly rows: number;
  /** First ball of each square, and one past the last of all; squares row by row. */
  private readonly first: Int32Array;
  /** Per ball its x, y, near and half wire, square by square. */
  private readonly balls: Float64Array;
  private readonly ringOf: Int32Array;

  /** @param rings at least one */
  constructor(rings: readonly SeenRing[]) {
    this.side = Math.max(1e-9, ...rings.map(({ half }) => half)) + MOST_ROUND;
    this.left = Math.min(...rings.map(({ box }) => box[0])) - this.side;
    this.top = Math.min(...rings.map(({ box }) => box[1])) - this.side;
    this.columns = this.column(Math.max(...rings.map(({ box }) => box[2]))) + 3;
    this.rows = this.row(Math.max(...rings.map(({ box }) => box[3]))) + 3;
    const count = rings.reduce((sum, ring) => sum + ring.count, 0);
    const places = new Int32Array(count);
    this.first = new Int32Array(this.columns * this.rows + 1);
    let n = 0;
    for (const { count: points, x, y } of rings)
      for (let p = 0; p < points; p++) {
        const place = this.row(y[p] as number) * this.columns + this.column(x[p] as number);
        places[n++] = place;
        this.first[place] = (this.first[place] as number) + 1;
      }
    // From how many each square holds to where it ends; filling moves that to where it begins.
    for (let at = 1; at < this.first.length; at++)
      this.first[at] = (this.first[at] as number) + (this.first[at - 1] as number);
    this.balls = new Float64Array(4 * count);
    this.ringOf = new Int32Array(count);
    n = 0;
    rings.forEach(({ count: points, x, y, near, half }, ring) => {
      for (let p = 0; p < points; p++) {
        const place = places[n++] as number;
        const to = (this.first[place] as number) - 1;
        this.first[place] = to;
        this.balls[4 * to] = x[p] as number;
        this.balls[4 * to + 1] = y[p] as number;
        this.balls[4 * to + 2] = near[p] as number;
        this.balls[4 * to + 3] = half;
        this.ringOf[to] = ring;
      }
    });
  }

  private column(x: number): number {
    return Math.floor((x - this.left) / this.side);
  }

  private row(y: number): number {
    return Math.floor((y - this.top) / this.side);
  }

  /**
   * Whether a ball of another ring covers a point of the picture and lies
   * nearer than that.
   *
   * @param round so far round a ball that is nearer by half its wire counts as covered too, picture units, at most `MOST_ROUND`; below 0 as much less of it
   */
  hide(x: number, y: number, near: number, ring: number, round = 0): boolean {
    const { balls, first, ringOf, columns } = this;
    const column = this.column(x);
    const row = this.row(y);
    const low = Math.max(0, column - 1);
    const high = Math.min(columns - 1, column + 1);
    const lowest = Math.min(this.rows - 1, row + 1);
    for (let r = Math.max(0, row - 1); r <= lowest; r++) {
      const end = first[r * columns + high + 1] as number;
      for (let n = first[r * columns + low] as number; n < end; n++) {
        const dx = (balls[4 * n] as number) - x;
        const dy = (balls[4 * n + 1] as number) - y;
        const half = balls[4 * n + 3] as number;
        const reach = half + round;
        const square = dx * dx + dy * dy;
        if (square >= reach * reach || ringOf[n] === ring) continue;
        // Wires that lie side by side and touch do not hide each other's outlines.
        if ((balls[4 * n + 2] as number) > (square < half * half ? near : near + half)) return true;
      }
    }
    return false;
  }
}
