/**
 * A small convex program: the step z that goes furthest along a wish, while
 * it stays short and keeps every linear condition. Solved by a primal-dual
 * interior-point method with Mehrotra's correction (Nocedal and Wright,
 * Numerical Optimization, 16.6, from memory); a few dozen unknowns.
 */

/** One condition: row . z >= floor. */
export interface Condition {
  readonly row: Float64Array;
  readonly floor: number;
}

export interface Step {
  readonly z: Float64Array;
  /** How strongly each condition holds the step back; 0 where it does not. */
  readonly forces: Float64Array;
}

const ROUNDS = 40;

/** Minimises |z|2 / (2 reach) - wish . z under the conditions; null where no step was found. */
export function furthestStep(
  wish: Float64Array,
  reach: number,
  conditions: readonly Condition[],
): Step | null {
  if (conditions.length === 0) return { z: wish.map((w) => w * reach), forces: new Float64Array(0) };
  const path = new InnerPath(wish, reach, conditions);
  for (let round = 0; round < ROUNDS; round++) {
    const { gap, worst } = path.residuals();
    if (!Number.isFinite(gap) || !Number.isFinite(worst)) return null;
    if (gap < 1e-14 && worst < 1e-10) return { z: path.z, forces: path.force };
    if (!path.assemble()) return null;
    path.advance(gap);
  }
  return null;
}

/** A point inside all conditions, moved along until what holds it back is in balance with the wish. */
class InnerPath {
  readonly z: Float64Array;
  readonly force: Float64Array;
  private readonly n: number;
  private readonly m: number;
  private readonly wish: Float64Array;
  private readonly reach: number;
  private readonly floors: Float64Array;
  /** A condition is about two rings, so most of its row is 0. */
  private readonly held: readonly Held[];
  private readonly slack: Float64Array;
  private readonly rd: Float64Array;
  private readonly rp: Float64Array;
  private readonly matrix: Float64Array;
  private readonly rhs: Float64Array;
  private readonly dz: Float64Array;
  private readonly ds: Float64Array;
  private readonly df: Float64Array;

  constructor(wish: Float64Array, reach: number, conditions: readonly Condition[]) {
    const n = wish.length;
    const m = conditions.length;
    this.n = n;
    this.m = m;
    this.wish = wish;
    this.reach = reach;
    this.floors = Float64Array.from(conditions, ({ floor }) => floor);
    this.held = conditions.map(({ row }) => heldIn(row));
    this.z = new Float64Array(n);
    this.slack = this.floors.map((floor) => Math.max(1e-2 * reach, -floor));
    this.force = new Float64Array(m).fill(1 / m);
    this.rd = new Float64Array(n);
    this.rp = new Float64Array(m);
    this.matrix = new Float64Array(n * n);
    this.rhs = new Float64Array(n);
    this.dz = new Float64Array(n);
    this.ds = new Float64Array(m);
    this.df = new Float64Array(m);
  }

  /** How far slack and force are from holding each other at 0, and the worst of what is not yet met. */
  residuals(): { readonly gap: number; readonly worst: number } {
    const { n, m, z, rd, rp, slack, force } = this;
    let gap = 0;
    let worst = 0;
    for (let i = 0; i < n; i++) rd[i] = at(z, i) / this.reach - at(this.wish, i);
    for (let k = 0; k < m; k++) {
      const row = this.held[k] as Held;
      addTo(rd, row, -at(force, k));
      // ds = row . dz + rp drives slack to row . z - floor.
      rp[k] = product(row, z) - at(this.floors, k) - at(slack, k);
      worst = Math.max(worst, Math.abs(at(rp, k)));
      gap += at(slack, k) * at(force, k);
    }
    for (let i = 0; i < n; i++) worst = Math.max(worst, Math.abs(at(rd, i)));
    return { gap: gap / m, worst };
  }

  /** The reduced matrix, factored; false where it is not positive. */
  assemble(): boolean {
    const { n, m, matrix } = this;
    matrix.fill(0);
    for (let i = 0; i < n; i++) matrix[i * n + i] = 1 / this.reach;
    for (let k = 0; k < m; k++)
      addSquare(matrix, n, this.held[k] as Held, at(this.force, k) / at(this.slack, k));
    return factor(matrix, n);
  }

  /** Mehrotra: first straight at the goal, then again with what that taught about the bend. */
  advance(gap: number): void {
    const { n, m, z, slack, force, dz, ds, df } = this;
    this.direction((k) => at(slack, k) * at(force, k));
    const plain = Math.min(longest(slack, ds), longest(force, df));
    let plainGap = 0;
    for (let k = 0; k < m; k++)
      plainGap += (at(slack, k) + plain * at(ds, k)) * (at(force, k) + plain * at(df, k));
    const centring = (plainGap / m / gap) ** 3 * gap;
    const curl = Float64Array.from(ds, (d, k) => d * at(df, k));
    this.direction((k) => at(slack, k) * at(force, k) + at(curl, k) - centring);
    const step = Math.min(1, 0.995 * Math.min(longest(slack, ds), longest(force, df)));
    for (let i = 0; i < n; i++) z[i] = at(z, i) + step * at(dz, i);
    for (let k = 0; k < m; k++) {
      slack[k] = at(slack, k) + step * at(ds, k);
      force[k] = at(force, k) + step * at(df, k);
    }
  }

  /** `comp`: what slack x force should lose. dz from the reduced system, then ds and df. */
  private direction(comp: (k: number) => number): void {
    const { n, m, rd, rp, rhs, slack, force, dz, ds, df } = this;
    for (let i = 0; i < n; i++) rhs[i] = -at(rd, i);
    for (let k = 0; k < m; k++)
      addTo(rhs, this.held[k] as Held, (-comp(k) - at(force, k) * at(rp, k)) / at(slack, k));
    backSolve(this.matrix, n, rhs, dz);
    for (let k = 0; k < m; k++) {
      const moved = product(this.held[k] as Held, dz) + at(rp, k);
      ds[k] = moved;
      df[k] = (-comp(k) - at(force, k) * moved) / at(slack, k);
    }
  }
}

/** Adds weight x row rowT to the lower triangle. */
function addSquare(matrix: Float64Array, n: number, { places, values }: Held, weight: number): void {
  for (let i = 0; i < places.length; i++) {
    const w = at(values, i) * weight;
    const line = (places[i] as number) * n;
    for (let j = 0; j <= i; j++) {
      const place = line + (places[j] as number);
      matrix[place] = at(matrix, place) + w * at(values, j);
    }
  }
}

/** Element of an array that is known to be long enough. */
const at = (values: Float64Array, index: number): number => values[index] as number;

/** What of a row is not 0, by rising place. */
interface Held {
  readonly places: Int32Array;
  readonly values: Float64Array;
}

function heldIn(row: Float64Array): Held {
  const places = new Int32Array(row.length);
  let count = 0;
  for (let place = 0; place < row.length; place++) if (row[place] !== 0) places[count++] = place;
  const values = new Float64Array(count);
  for (let i = 0; i < count; i++) values[i] = at(row, places[i] as number);
  return { places: places.subarray(0, count), values };
}

function product({ places, values }: Held, by: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < places.length; i++) sum += at(values, i) * at(by, places[i] as number);
  return sum;
}

function addTo(sums: Float64Array, { places, values }: Held, times: number): void {
  for (let i = 0; i < places.length; i++) {
    const place = places[i] as number;
    sums[place] = at(sums, place) + at(values, i) * times;
  }
}

/** How far along `by` values may go before the first one is 0; at most 1. */
function longest(values: Float64Array, by: Float64Array): number {
  let far = 1;
  for (let i = 0; i < values.length; i++) if (at(by, i) < 0) far = Math.min(far, -at(values, i) / at(by, i));
  return far;
}

/** Cholesky's factor in the lower triangle, in place; false where the matrix is not positive. */
function factor(a: Float64Array, n: number): boolean {
  for (let j = 0; j < n; j++) {
    for (let i = j; i < n; i++) {
      let sum = at(a, i * n + j);
      for (let k = 0; k < j; k++) sum -= at(a, i * n + k) * at(a, j * n + k);
      if (i === j) {
        if (!(sum > 0)) return false;
        a[j * n + j] = Math.sqrt(sum);
      } else a[i * n + j] = sum / at(a, j * n + j);
    }
  }
  return true;
}

function backSolve(a: Float64Array, n: number, b: Float64Array, out: Float64Array): void {
  for (let i = 0; i < n; i++) {
    let sum = at(b, i);
    for (let k = 0; k < i; k++) sum -= at(a, i * n + k) * at(out, k);
    out[i] = sum / at(a, i * n + i);
  }
  for (let i = n - 1; i >= 0; i--) {
    let sum = at(out, i);
    for (let k = i + 1; k < n; k++) sum -= at(a, k * n + i) * at(out, k);
    out[i] = sum / at(a, i * n + i);
  }
}
