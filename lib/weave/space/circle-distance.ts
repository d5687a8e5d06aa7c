/**
 * How near two circles come. For a point of one circle the distance to the
 * other has a closed form, so one angle is left to search: a scan finds every
 * valley, safeguarded Newton steps find its floor.
 */
import type { RoundRing } from './round-ring.ts';
import { dot, spanAcross, subtract, type Vector } from './vector.ts';

/** A place where two circles are nearer than anywhere around. */
export interface Approach {
  readonly distance: number;
  readonly onA: Vector;
  readonly onB: Vector;
}

const ANGLES = 48;
const STEP = (2 * Math.PI) / ANGLES;
/** A valley whose bend is less than this part of the squared radius is looked at more finely. */
const FLAT = 0.3;
/** So many steps to either side, in so many finer ones. */
const WIDE = 3;
const FINER = 48;
const COS = Float64Array.from({ length: ANGLES }, (_, i) => Math.cos(i * STEP));
const SIN = Float64Array.from({ length: ANGLES }, (_, i) => Math.sin(i * STEP));

/** Squared distance from the point of A at an angle to all of circle B, as f = g + r2 - 2 r sqrt(g - h2). */
class Along {
  private readonly u: Vector;
  private readonly v: Vector;
  private readonly between: Vector;
  private readonly g0: number;
  private readonly gc: number;
  private readonly gs: number;
  private readonly h0: number;
  private readonly hc: number;
  private readonly hs: number;
  private readonly a: RoundRing;
  private readonly b: RoundRing;

  constructor(a: RoundRing, b: RoundRing) {
    this.a = a;
    this.b = b;
    [this.u, this.v] = spanAcross(a.normal);
    this.between = subtract(a.centre, b.centre);
    const { between } = this;
    this.g0 = dot(between, between) + a.radius * a.radius;
    this.gc = 2 * a.radius * dot(between, this.u);
    this.gs = 2 * a.radius * dot(between, this.v);
    this.h0 = dot(between, b.normal);
    this.hc = a.radius * dot(this.u, b.normal);
    this.hs = a.radius * dot(this.v, b.normal);
  }

  squared(c: number, s: number): number {
    const g = this.g0 + this.gc * c + this.gs * s;
    const h = this.h0 + this.hc * c + this.hs * s;
    const r = this.b.radius;
    return g + r * r - 2 * r * Math.sqrt(Math.max(0, g - h * h));
  }

  /** First and second derivative of the squared distance by the angle. */
  slopes(angle: number): readonly [number, number] {
    const c = Math.cos(angle);
    const s = Math.sin(angle);
    const g = this.g0 + this.gc * c + this.gs * s;
    const g1 = this.gs * c - this.gc * s;
    const g2 = -this.gc * c - this.gs * s;
    const h = this.h0 + this.hc * c + this.hs * s;
    const h1 = this.hs * c - this.hc * s;
    const h2 = -this.hc * c - this.hs * s;
    const q = Math.max(1e-300, g - h * h);
    const q1 = g1 - 2 * h * h1;
    const q2 = g2 - 2 * h1 * h1 - 2 * h * h2;
    const root = Math.sqrt(q);
    const r = this.b.radius;
    return [g1 - (r * q1) / root, g2 - r * (q2 / root - (q1 * q1) / (2 * q * root))];
  }

  /** The lowest points round an angle that is lower than its neighbours; a flat valley may hold two. */
  floorsNear(middle: number): readonly number[] {
    const floor = this.floorBetween(middle - STEP, middle + STEP);
    const [, bend] = this.slopes(floor);
    if (bend > FLAT * this.a.radius * this.a.radius) return [floor];
    const low = middle - WIDE * STEP;
    const step = (2 * WIDE * STEP) / FINER;
    const fine = Array.from({ length: FINER + 3 }, (_, n) => {
      const angle = low + (n - 1) * step;
      return this.squared(Math.cos(angle), Math.sin(angle));
    });
    const floors: number[] = [];
    for (let n = 1; n < fine.length - 1; n++) {
      const here = fine[n] as number;
      if (here > (fine[n - 1] as number) || here >= (fine[n + 1] as number)) continue;
      const angle = low + (n - 1) * step;
      floors.push(this.floorBetween(angle - step, angle + step));
    }
    return floors.length > 0 ? floors : [floor];
  }

  /** The lowest point between two angles that hold one valley. */
  floorBetween(low: number, high: number): number {
    let lo = low;
    let hi = high;
    let at = (lo + hi) / 2;
    for (let n = 0; n < 60; n++) {
      const [slope, bend] = this.slopes(at);
      if (slope > 0) hi = at;
      else lo = at;
      const newton = at - slope / bend;
      const next = bend > 0 && newton > lo && newton < hi ? newton : (lo + hi) / 2;
      if (Math.abs(next - at) < 1e-13) return next;
      at = next;
    }
    return at;
  }

  approach(angle: number): Approach {
    const { a, b, u, v, between } = this;
    const c = Math.cos(angle) * a.radius;
    const s = Math.sin(angle) * a.radius;
    const p: Vector = [
      between[0] + u[0] * c + v[0] * s,
      between[1] + u[1] * c + v[1] * s,
      between[2] + u[2] * c + v[2] * s,
    ];
    const height = dot(p, b.normal);
    let flat: Vector = [
      p[0] - height * b.normal[0],
      p[1] - height * b.normal[1],
      p[2] - height * b.normal[2],
    ];
    let size = Math.hypot(flat[0], flat[1], flat[2]);
    if (size < 1e-12) {
      // On B's axis every point of B is as near as any other.
      flat = spanAcross(b.normal)[0];
      size = 1;
    }
    const k = b.radius / size;
    const onB: Vector = [flat[0] * k, flat[1] * k, flat[2] * k];
    return {
      distance: Math.hypot(p[0] - onB[0], p[1] - onB[1], p[2] - onB[2]),
      onA: [p[0] + b.centre[0], p[1] + b.centre[1], p[2] + b.centre[2]],
      onB: [onB[0] + b.centre[0], onB[1] + b.centre[1], onB[2] + b.centre[2]],
    };
  }
}

/**
 * Every place where the middle circles of two rings are locally nearest and
 * nearer than `within`. Where the distance is the same all round (rings on
 * one axis, or one inside the other about one centre) three places stand for
 * all.
 */
export function approaches(
  a: RoundRing,
  b: RoundRing,
  within = Number.POSITIVE_INFINITY,
): readonly Approach[] {
  const apart = subtract(a.centre, b.centre);
  const reach = a.radius + b.radius + within;
  if (dot(apart, apart) > reach * reach) return [];
  const along = new Along(a, b);
  const squared = new Float64Array(ANGLES);
  let least = Number.POSITIVE_INFINITY;
  let most = 0;
  for (let i = 0; i < ANGLES; i++) {
    const value = along.squared(COS[i] as number, SIN[i] as number);
    squared[i] = value;
    if (value < least) least = value;
    if (value > most) most = value;
  }
  if (most - least <= 1e-10 * (1 + most))
    return [0, 1, 2]
      .map((third) => along.approach((third * 2 * Math.PI) / 3))
      .filter((x) => x.distance < within);
  const found: Approach[] = [];
  for (let i = 0; i < ANGLES; i++) {
    const here = squared[i] as number;
    // Equal neighbours: only the later of the two holds the valley.
    if (
      here > (squared[(i + ANGLES - 1) % ANGLES] as number) ||
      here >= (squared[(i + 1) % ANGLES] as number)
    )
      continue;
    for (const angle of along.floorsNear(i * STEP)) {
      const approach = along.approach(angle);
      if (approach.distance < within) found.push(approach);
    }
  }
  return found;
}

/** The distance of the middle circles of two rings. */
export const circleDistance = (a: RoundRing, b: RoundRing): number =>
  Math.min(...approaches(a, b).map((approach) => approach.distance));
