/**
 * The thickest wire that a chain of given inner diameters and links can have,
 * sought in a plain way that shares nothing with the solver: overlaps of wires
 * are springs, their energy is minimised (limited-memory BFGS), and the wire
 * grows for as long as the energy can be brought to nothing. Lengths in mm.
 */
import { further, gaussLinking, type PlainRing } from './check-in-space.ts';

type V = readonly [number, number, number];
const plus = (a: V, b: V, by = 1): V => [a[0] + b[0] * by, a[1] + b[1] * by, a[2] + b[2] * by];
const dot = (a: V, b: V): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: V, b: V): V => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const times = (a: V, by: number): V => [a[0] * by, a[1] * by, a[2] * by];
const sized = (a: V): V => times(a, 1 / Math.sqrt(dot(a, a)));

export interface Chain {
  readonly rings: readonly Pick<PlainRing, 'centre' | 'normal'>[];
  readonly pitch: number;
}

interface Near {
  readonly distance: number;
  readonly onA: V;
  readonly onB: V;
}

const SAMPLES = 40;

/** Every local least distance of two circles that is below `within`. */
function nearPlaces(
  a: { centre: V; normal: V; radius: number },
  b: { centre: V; normal: V; radius: number },
  within: number,
): readonly Near[] {
  const u = sized(cross(Math.abs(a.normal[0]) < 0.7 ? [1, 0, 0] : [0, 1, 0], a.normal));
  const v = cross(a.normal, u);
  const at = (angle: number): Near => {
    const onA = plus(plus(a.centre, u, a.radius * Math.cos(angle)), v, a.radius * Math.sin(angle));
    const off = plus(onA, b.centre, -1);
    const flat = plus(off, b.normal, -dot(off, b.normal));
    const long = Math.sqrt(dot(flat, flat)) || 1e-9;
    const onB = plus(b.centre, flat, b.radius / long);
    const gap = plus(onA, onB, -1);
    return { distance: Math.sqrt(dot(gap, gap)), onA, onB };
  };
  const step = (2 * Math.PI) / SAMPLES;
  const d = Array.from({ length: SAMPLES }, (_, i) => at(i * step).distance);
  const found: Near[] = [];
  d.forEach((here, i) => {
    const before = d[(i + SAMPLES - 1) % SAMPLES] as number;
    const after = d[(i + 1) % SAMPLES] as number;
    if (here > before || here >= after || here > within + 0.5 * a.radius * step) return;
    // Golden section between the neighbours.
    let [low, high] = [(i - 1) * step, (i + 1) * step];
    const g = (Math.sqrt(5) - 1) / 2;
    let [x1, x2] = [high - g * (high - low), low + g * (high - low)];
    let [f1, f2] = [at(x1).distance, at(x2).distance];
    for (let n = 0; n < 22; n++)
      if (f1 < f2) {
        [high, x2, f2] = [x2, x1, f1];
        x1 = high - g * (high - low);
        f1 = at(x1).distance;
      } else {
        [low, x1, f1] = [x1, x2, f2];
        x2 = low + g * (high - low);
        f2 = at(x2).distance;
      }
    const near = at((low + high) / 2);
    if (near.distance < within) found.push(near);
  });
  return found;
}

const PER_RING = 6;

/** Energy of overlaps, and which way it rises; per ring three of place and three of normal, then the pitch. */
function energyOf(
  x: Float64Array,
  inner: readonly number[],
  wire: number,
): { readonly energy: number; readonly slope: Float64Array; readonly deepest: number } {
  const slope = new Float64Array(x.length);
  const pitchAt = x.length - 1;
  const pitch = x[pitchAt] as number;
  const rings = inner.map((each, i) => {
    const o = i * PER_RING;
    const raw: V = [x[o + 3] as number, x[o + 4] as number, x[o + 5] as number];
    return {
      centre: [x[o] as number, x[o + 1] as number, x[o + 2] as number] as V,
      normal: sized(raw),
      long: Math.sqrt(dot(raw, raw)),
      radius: (each + wire) / 2,
    };
  });
  let [energy, deepest] = [0, 0];
  const wide = 2 * Math.max(...rings.map(({ radius }) => radius)) + wire;
  const most = Math.min(8, Math.ceil((2 * wide) / Math.max(0.2, pitch)));
  for (let k = 0; k <= most; k++)
    rings.forEach((a, i) => {
      rings.forEach((other, j) => {
        if (k === 0 && j <= i) return;
        const b = { ...other, centre: plus(other.centre, [k * pitch, 0, 0]) };
        const apart = plus(a.centre, b.centre, -1);
        if (dot(apart, apart) > (a.radius + b.radius + wire) ** 2) return;
        for (const { distance, onA, onB } of nearPlaces(a, b, wire)) {
          const deep = wire - distance;
          deepest = Math.max(deepest, deep);
          energy += deep * deep;
          const way = times(plus(onA, onB, -1), 1 / Math.max(1e-12, distance));
          const pull = -2 * deep;
          push(slope, i, a, plus(onA, a.centre, -1), times(way, pull));
          push(slope, j, b, plus(onB, b.centre, -1), times(way, -pull));
          slope[pitchAt] = (slope[pitchAt] as number) - way[0] * pull * k;
        }
      });
    });
  return { energy, slope, deepest };
}

/** A force at a point of a ring: it moves the ring, and turns it. */
function push(slope: Float64Array, i: number, ring: { normal: V; long: number }, arm: V, force: V): void {
  const turning = cross(cross(arm, force), ring.normal);
  const o = i * PER_RING;
  for (let axis = 0; axis < 3; axis++) {
    slope[o + axis] = (slope[o + axis] as number) + (force[axis] as number);
    slope[o + 3 + axis] = (slope[o + 3 + axis] as number) + (turning[axis] as number) / ring.long;
  }
}

const KEPT = 10;

interface Bend {
  readonly s: Float64Array;
  readonly y: Float64Array;
  readonly r: number;
}

/** Which way to go downhill, by what the last steps told of how the slope bends. */
function downhill(slope: Float64Array, past: readonly Bend[]): Float64Array {
  const q = Float64Array.from(slope);
  const take = (by: number, from: Float64Array): void => {
    for (let i = 0; i < q.length; i++) q[i] = (q[i] as number) + by * (from[i] as number);
  };
  const alphas = past.toReversed().map(({ s, y, r }) => {
    const alpha = r * product(s, q);
    take(-alpha, y);
    return alpha;
  });
  const last = past.at(-1);
  const scale = last ? 1 / (last.r * product(last.y, last.y)) : 0.2;
  for (let i = 0; i < q.length; i++) q[i] = (q[i] as number) * scale;
  past.forEach(({ s, y, r }, n) => {
    take((alphas[past.length - 1 - n] as number) - r * product(y, q), s);
  });
  return q;
}

/** Limited-memory BFGS with steps no longer than a quarter of a wire, so that no wire slips through another unseen. */
function relaxed(from: Float64Array<ArrayBuffer>, inner: readonly number[], wire: number, rounds: number) {
  let at = { x: from, ...energyOf(from, inner, wire) };
  let past: Bend[] = [];
  for (let round = 0; round < rounds && at.deepest > NOTHING * wire; round++) {
    const way = downhill(at.slope, past);
    const fall = product(way, at.slope);
    const size = Math.min(1, (0.25 * wire) / Math.max(1e-12, ...way.map(Math.abs)));
    const next = fall > 0 ? lower(at, way, { fall, size }, inner, wire) : null;
    if (!next) {
      if (past.length === 0) break;
      past = [];
      continue;
    }
    const { x, slope } = at;
    const s = next.x.map((value, i) => value - (x[i] as number));
    const y = next.slope.map((value, i) => value - (slope[i] as number));
    const sy = product(s, y);
    if (sy > 1e-16) past = [...past, { s, y, r: 1 / sy }].slice(-KEPT);
    at = next;
  }
  return { x: at.x, deepest: at.deepest };
}

type Place = ReturnType<typeof energyOf> & { readonly x: Float64Array<ArrayBuffer> };

/** The first of ever shorter steps that leads down; null where none does. */
function lower(
  { x, energy }: Place,
  way: Float64Array,
  { fall, size: longest }: { readonly fall: number; readonly size: number },
  inner: readonly number[],
  wire: number,
): Place | null {
  for (let tries = 0, size = longest; tries < 25; tries++, size /= 2) {
    const next = x.map((value, i) => value - size * (way[i] as number));
    const then = energyOf(next, inner, wire);
    if (then.energy <= energy - 1e-4 * size * fall) return { x: next, ...then };
  }
  return null;
}

const product = (a: Float64Array, b: Float64Array): number =>
  a.reduce((sum, value, i) => sum + value * (b[i] as number), 0);

/** Overlap that is called none, as a part of the wire. */
const NOTHING = 1e-4;
const FIRST_GROWTH = 0.08;
const LAST_GROWTH = 5e-4;

export interface Grown {
  readonly wire: number;
  readonly chain: Chain;
}

/**
 * Grows the wire of a chain from thin to as thick as it gets from there, for
 * as long as its links stay what they are.
 *
 * @param thin a wire with which the start has no overlaps, or hardly any
 * @param rounds of each relaxation
 * @param links `a b cells sign`, as wanted; null where the start has others
 */
export function grown(
  start: Chain,
  inner: readonly number[],
  {
    thin,
    rounds,
    links,
  }: { readonly thin: number; readonly rounds: number; readonly links: readonly string[] },
): Grown | null {
  let x = unknownsOf(start, inner);
  let wire = thin;
  const wanted = links.toSorted().join();
  if (linksOf(chainOf(x, inner.length), inner, wire) !== wanted) return null;
  for (let by = FIRST_GROWTH; by > LAST_GROWTH; ) {
    const next = relaxed(x, inner, wire * (1 + by), rounds);
    const isSame =
      next.deepest <= NOTHING * wire && linksOf(chainOf(next.x, inner.length), inner, wire) === wanted;
    if (!isSame) {
      by /= 2;
      continue;
    }
    [x, wire] = [next.x, wire * (1 + by)];
  }
  return { wire, chain: chainOf(x, inner.length) };
}

/**
 * The chain after a random walk: every ring is moved and turned by less than
 * half a wire at a time, and what then overlaps is pushed apart again. A step
 * that changes the links, as a wire slipped through another, is not taken.
 */
export function wandered(
  start: Chain,
  inner: readonly number[],
  {
    wire,
    steps,
    random,
    links,
  }: {
    readonly wire: number;
    readonly steps: number;
    readonly random: () => number;
    readonly links: readonly string[];
  },
): Chain {
  const wanted = links.toSorted().join();
  let x = unknownsOf(start, inner);
  for (let n = 0; n < steps; n++) {
    const shaken = x.map((value) => value + (random() - 0.5) * 0.5 * wire);
    const next = relaxed(shaken, inner, wire, 40);
    if (next.deepest <= NOTHING * wire && linksOf(chainOf(next.x, inner.length), inner, wire) === wanted)
      x = next.x;
  }
  return chainOf(x, inner.length);
}

/** Normals as long as their rings are wide, so that turning and moving go equally far. */
const unknownsOf = ({ rings, pitch }: Chain, inner: readonly number[]): Float64Array<ArrayBuffer> =>
  new Float64Array([
    ...rings.flatMap(({ centre, normal }, i) => [
      ...centre,
      ...times(sized(normal), (inner[i] as number) / 2),
    ]),
    pitch,
  ]);

function chainOf(x: Float64Array, rings: number): Chain {
  const at = (i: number): number => x[i] as number;
  return {
    rings: Array.from({ length: rings }, (_, i) => {
      const o = i * PER_RING;
      return { centre: [at(o), at(o + 1), at(o + 2)], normal: sized([at(o + 3), at(o + 4), at(o + 5)]) };
    }),
    pitch: at(x.length - 1),
  };
}

/** Who is linked with whom and which way, by the linking integral of Gauss, as text. */
function linksOf({ rings, pitch }: Chain, inner: readonly number[], wire: number): string {
  const round = rings.map((ring, i) => ({ ...ring, radius: ((inner[i] as number) + wire) / 2, wire }));
  const found: string[] = [];
  for (let k = 0; k <= 3; k++)
    round.forEach((a, i) => {
      round.forEach((b, j) => {
        if (k === 0 && j <= i) return;
        const image = further(b, pitch, 0, k);
        const apart = plus(a.centre, image.centre, -1);
        if (dot(apart, apart) > (a.radius + b.radius) ** 2) return;
        const sign = Math.round(gaussLinking(a, image, 48));
        if (sign !== 0) found.push(`${i} ${j} ${k} ${sign}`);
      });
    });
  return found.sort().join();
}
