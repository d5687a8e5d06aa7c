/**
 * Whether a shape is what it is meant to be, found out by other means than
 * those of the solver that made it: distances by going round one circle in
 * small steps, links by the Gauss linking integral.
 */
import type { CellLink } from './cell-links.ts';
import { type Cell, inCell, leastDistance, type RoundRing } from './round-ring.ts';
import { add, cross, dot, scale, spanAcross, subtract, type Vector } from './vector.ts';

/** Wires may be nearer than they are thick by this part: what rounding of stored shapes leaves. */
const TOLERANCE = 1e-4;

/** Whether no two wires of a chain without end overlap, and exactly the wanted pairs are linked, with their signs. */
export function isTrueShape(cell: Cell, wanted: readonly CellLink[]): boolean {
  const signs = new Map(wanted.map(({ a, b, cells, sign }) => [`${a} ${b} ${cells}`, sign]));
  const near = [...pairsNear(cell)];
  return (
    near.every(
      ({ a, b, cells, first, second }) =>
        nearestOf(first, second) >= (1 - TOLERANCE) * leastDistance(first, second) &&
        linkingIntegral(first, second) === (signs.get(`${a} ${b} ${cells}`) ?? 0),
    ) &&
    wanted.every((link) =>
      near.some(({ a, b, cells }) => a === link.a && b === link.b && cells === link.cells),
    )
  );
}

interface NearPair {
  readonly a: number;
  readonly b: number;
  readonly cells: number;
  readonly first: RoundRing;
  readonly second: RoundRing;
}

function* pairsNear(cell: Cell): Iterable<NearPair> {
  for (let cells = 0; cells <= furthest(cell); cells++)
    for (const [b, ring] of cell.rings.entries()) {
      const second = inCell(ring, cell, cells);
      for (const [a, first] of cell.rings.entries())
        if ((cells > 0 || a < b) && mayMeet(first, second)) yield { a, b, cells, first, second };
    }
}

/** Cells after which no ring reaches another. */
function furthest({ rings, pitch }: Cell): number {
  const from = Math.min(...rings.map(({ centre, radius, wire }) => centre[0] - radius - wire));
  const to = Math.max(...rings.map(({ centre, radius, wire }) => centre[0] + radius + wire));
  return Math.min(60, Math.ceil((to - from) / pitch));
}

function mayMeet(a: RoundRing, b: RoundRing): boolean {
  const between = subtract(b.centre, a.centre);
  return Math.hypot(...between) < a.radius + b.radius + leastDistance(a, b);
}

const pointOn = (ring: RoundRing, [u, v]: readonly [Vector, Vector], angle: number): Vector =>
  add(ring.centre, add(scale(u, ring.radius * Math.cos(angle)), scale(v, ring.radius * Math.sin(angle))));

const STEPS = 240;

/** Least distance of two circles. */
function nearestOf(a: RoundRing, b: RoundRing): number {
  const spans = spanAcross(a.normal);
  const away = (angle: number): number => {
    const from = subtract(pointOn(a, spans, angle), b.centre);
    const height = dot(from, b.normal);
    const inPlane = Math.sqrt(Math.max(0, dot(from, from) - height * height));
    return Math.hypot(inPlane - b.radius, height);
  };
  const step = (2 * Math.PI) / STEPS;
  const around = Array.from({ length: STEPS }, (_, at) => away(at * step));
  let least = Number.POSITIVE_INFINITY;
  for (const [at, here] of around.entries()) {
    const [before = here, after = here] = [around.at(at - 1), around[(at + 1) % STEPS]];
    if (here <= before && here <= after)
      least = Math.min(least, narrowed(away, (at - 1) * step, (at + 1) * step));
  }
  return least;
}

/** Least value between two places, by cutting off thirds. */
function narrowed(value: (at: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  for (let n = 0; n < 40; n++) {
    const third = (high - low) / 3;
    if (value(low + third) < value(high - third)) high -= third;
    else low += third;
  }
  return value((low + high) / 2);
}

const PARTS = 72;

/** The linking number by the double integral of Gauss, over equal parts of both circles. */
function linkingIntegral(a: RoundRing, b: RoundRing): number {
  const points = (ring: RoundRing) => {
    const [u, v] = spanAcross(ring.normal);
    return Array.from({ length: PARTS }, (_, at) => {
      const angle = (at * 2 * Math.PI) / PARTS;
      const along = add(scale(u, -ring.radius * Math.sin(angle)), scale(v, ring.radius * Math.cos(angle)));
      return { at: pointOn(ring, [u, v], angle), along };
    });
  };
  const [first, second] = [points(a), points(b)];
  let sum = 0;
  for (const p of first)
    for (const q of second) {
      const between = subtract(p.at, q.at);
      const far = Math.sqrt(dot(between, between));
      sum += dot(between, cross(p.along, q.along)) / (far * far * far);
    }
  return Math.round((sum * ((2 * Math.PI) / PARTS) ** 2) / (4 * Math.PI)) + 0;
}
