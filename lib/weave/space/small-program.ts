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

/** Minimises |z|2 / (2 reach) - wish . z under the conditions; null where no step was found. */
export function furthestStep(
  wish: Float64Array,
  reach: number,
  conditions: readonly Condition[],
): Step | null {
  const n = wish.length;
  const m = conditions.length;
  const z = new Float64Array(n);
  if (m === 0) return { z: wish.map((w) => w * reach), forces: new Float64Array(0) };
  const slack = Float64Array.from(conditions, ({ floor }) => Math.max(1e-2 * reach, -floor));
  const force = new Float64Array(m).fill(1 / m);
  const rd = new Float64Array(n);
  const rp = new Float64Array(m);
  const matrix = new Float64Array(n * n);
  const rhs = new Float64Array(n);
  const dz = new Float64Array(n);
  const ds = new Float64Array(m);
  const df = new Float64Array(m);

  const direction = (comp: (i: number) => number): void => {
    // comp(i): what slack x force should lose. dz from the reduced system, then ds and df.
    for (let i = 0; i < n; i++) rhs[i] = -at(rd, i);
    for (let k = 0; k < m; k++) {
      const { row } = conditions[k] as Condition;
      const t = (-comp(k) - at(force, k) * at(rp, k)) / at(slack, k);
      for (let i = 0; i < n; i++) rhs[i] = at(rhs, i) + at(row, i) * t;
    }
    backSolve(matrix, n, rhs, dz);
    for (let k = 0; k < m; k++) {
      const moved = product((conditions[k] as Condition).row, dz) + at(rp, k);
      ds[k] = moved;
      df[k] = (-comp(k) - at(force, k) * moved) / at(slack, k);
    }
  };

  for (let round = 0; round < 40; round++) {
    let gap = 0;
    let worst = 0;
    for (let i = 0; i < n; i++) rd[i] = at(z, i) / reach - at(wish, i);
    for (let k = 0; k < m; k++) {
      const { row, floor } = conditions[k] as Condition;
      const f = at(force, k);
      for (let i = 0; i < n; i++) rd[i] = at(rd, i) - at(row, i) * f;
      // ds = row . dz + rp drives slack to row . z - floor.
      rp[k] = product(row, z) - floor - at(slack, k);
      worst = Math.max(worst, Math.abs(at(rp, k)));
      gap += at(slack, k) * f;
    }
    gap /= m;
    for (let i = 0; i < n; i++) worst = Math.max(worst, Math.abs(at(rd, i)));
    if (!Number.isFinite(gap) || !Number.isFinite(worst)) return null;
    if (gap < 1e-14 && worst < 1e-10) return { z, forces: force };

    matrix.fill(0);
    for (let i = 0; i < n; i++) matrix[i * n + i] = 1 / reach;
    for (let k = 0; k < m; k++) {
      const { row } = conditions[k] as Condition;
      const weight = at(force, k) / at(slack, k);
      for (let i = 0; i < n; i++) {
        const w = at(row, i) * weight;
        if (w === 0) continue;
        for (let j = 0; j <= i; j++) matrix[i * n + j] = at(matrix, i * n + j) + w * at(row, j);
      }
    }
    if (!factor(matrix, n)) return null;

    direction((k) => at(slack, k) * at(force, k));
    const plain = Math.min(longest(slack, ds), longest(force, df));
    let plainGap = 0;
    for (let k = 0; k < m; k++)
      plainGap += (at(slack, k) + plain * at(ds, k)) * (at(force, k) + plain * at(df, k));
    plainGap /= m;
    const centring = (plainGap / gap) ** 3 * gap;
    const curl = Float64Array.from(ds, (d, k) => d * at(df, k));
    direction((k) => at(slack, k) * at(force, k) + at(curl, k) - centring);
    const step = Math.min(1, 0.995 * Math.min(longest(slack, ds), longest(force, df)));
    for (let i = 0; i < n; i++) z[i] = at(z, i) + step * at(dz, i);
    for (let k = 0; k < m; k++) {
      slack[k] = at(slack, k) + step * at(ds, k);
      force[k] = at(force, k) + step * at(df, k);
    }
  }
  return null;
}

/** Element of an array that is known to be long enough. */
const at = (values: Float64Array, index: number): number => values[index] as number;

function product(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += at(a, i) * at(b, i);
  return sum;
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
