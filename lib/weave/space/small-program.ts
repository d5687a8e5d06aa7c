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

  // A condition is about two rings, so most of its row is 0.
  const held = conditions.map(({ row }) => heldIn(row));

  const direction = (comp: (i: number) => number): void => {
    // comp(i): what slack x force should lose. dz from the reduced system, then ds and df.
    for (let i = 0; i < n; i++) rhs[i] = -at(rd, i);
    for (let k = 0; k < m; k++) {
      const t = (-comp(k) - at(force, k) * at(rp, k)) / at(slack, k);
      addTo(rhs, held[k] as Held, t);
    }
    backSolve(matrix, n, rhs, dz);
    for (let k = 0; k < m; k++) {
      const moved = product(held[k] as Held, dz) + at(rp, k);
      ds[k] = moved;
      df[k] = (-comp(k) - at(force, k) * moved) / at(slack, k);
    }
  };

  for (let round = 0; round < 40; round++) {
    let gap = 0;
    let worst = 0;
    for (let i = 0; i < n; i++) rd[i] = at(z, i) / reach - at(wish, i);
    for (let k = 0; k < m; k++) {
      const { floor } = conditions[k] as Condition;
      const row = held[k] as Held;
      const f = at(force, k);
      addTo(rd, row, -f);
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
      const { places, values } = held[k] as Held;
      const weight = at(force, k) / at(slack, k);
      for (let i = 0; i < places.length; i++) {
        const w = at(values, i) * weight;
        const line = (places[i] as number) * n;
        for (let j = 0; j <= i; j++) {
          const place = line + (places[j] as number);
          matrix[place] = at(matrix, place) + w * at(values, j);
        }
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
