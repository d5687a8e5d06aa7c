/**
 * An examination of rings in space that shares nothing with what is tested:
 * distances by sampling both circles and closing in, links by the Gauss
 * linking integral.
 */

export interface PlainRing {
  readonly centre: readonly [number, number, number];
  readonly normal: readonly [number, number, number];
  readonly radius: number;
  readonly wire: number;
}

type V = readonly [number, number, number];
const minus = (a: V, b: V): V => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const cross = (a: V, b: V): V => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const dot = (a: V, b: V): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const sized = (a: V): V => {
  const l = Math.sqrt(dot(a, a));
  return [a[0] / l, a[1] / l, a[2] / l];
};

function frame(ring: PlainRing): readonly [V, V] {
  const n = sized(ring.normal);
  const helper: V = Math.abs(n[2]) < 0.7 ? [0, 0, 1] : [1, 0, 0];
  const u = sized(cross(helper, n));
  return [u, cross(n, u)];
}

const pointOn = (ring: PlainRing, [u, v]: readonly [V, V], angle: number): V => {
  const c = Math.cos(angle) * ring.radius;
  const s = Math.sin(angle) * ring.radius;
  return [
    ring.centre[0] + u[0] * c + v[0] * s,
    ring.centre[1] + u[1] * c + v[1] * s,
    ring.centre[2] + u[2] * c + v[2] * s,
  ];
};

/** Least distance of two circles: a grid over both angles, then ever finer grids round its best places. */
export function sampledDistance(a: PlainRing, b: PlainRing, grid = 60): number {
  const fa = frame(a);
  const fb = frame(b);
  const squared = (s: number, t: number): number => {
    const d = minus(pointOn(a, fa, s), pointOn(b, fb, t));
    return dot(d, d);
  };
  const step = (2 * Math.PI) / grid;
  const pa = Array.from({ length: grid }, (_, i) => pointOn(a, fa, i * step));
  const pb = Array.from({ length: grid }, (_, i) => pointOn(b, fb, i * step));
  const best: { s: number; t: number; d: number }[] = [];
  pa.forEach((p, i) => {
    let least = { s: i * step, t: 0, d: Number.POSITIVE_INFINITY };
    pb.forEach((q, j) => {
      const gap = minus(p, q);
      const d = dot(gap, gap);
      if (d < least.d) least = { s: i * step, t: j * step, d };
    });
    best.push(least);
  });
  best.sort((x, y) => x.d - y.d);
  return Math.sqrt(
    Math.min(
      ...best.slice(0, 8).map((from) => {
        let at = from;
        for (let size = step; size > 1e-8; size /= 2)
          for (const [ds, dt] of [
            [1, 0],
            [-1, 0],
            [0, 1],
            [0, -1],
            [1, 1],
            [-1, -1],
            [1, -1],
            [-1, 1],
          ] as const) {
            const d = squared(at.s + ds * size, at.t + dt * size);
            if (d < at.d) at = { s: at.s + ds * size, t: at.t + dt * size, d };
          }
        return at.d;
      }),
    ),
  );
}

/** The Gauss linking integral of two circles by the trapezoid rule. */
export function gaussLinking(a: PlainRing, b: PlainRing, points = 160): number {
  const fa = frame(a);
  const fb = frame(b);
  const step = (2 * Math.PI) / points;
  const along = (ring: PlainRing, f: readonly [V, V]) =>
    Array.from({ length: points }, (_, i) => ({
      at: pointOn(ring, f, i * step),
      tangent: minus(pointOn({ ...ring, centre: [0, 0, 0] }, f, i * step + Math.PI / 2), [0, 0, 0]),
    }));
  const ofB = along(b, fb);
  let sum = 0;
  for (const p of along(a, fa))
    for (const q of ofB) {
      const r = minus(p.at, q.at);
      sum += dot(r, cross(p.tangent, q.tangent)) / dot(r, r) ** 1.5;
    }
  return (sum * step * step) / (4 * Math.PI);
}

/** The ring `cells` cells on: turned about x and moved along it. */
export function further(ring: PlainRing, pitch: number, twist: number, cells: number): PlainRing {
  const c = Math.cos(cells * twist);
  const s = Math.sin(cells * twist);
  const turned = ([x, y, z]: V): V => [x, y * c - z * s, y * s + z * c];
  const centre = turned(ring.centre);
  return { ...ring, centre: [centre[0] + cells * pitch, centre[1], centre[2]], normal: turned(ring.normal) };
}

export interface Examined {
  /** Least distance of any two rings over their mean wire. */
  readonly least: number;
  /** `a b cells sign`, sorted. */
  readonly links: readonly string[];
}

/** Every pair of rings of a chain that can meet. */
export function examineChain(
  cell: { readonly rings: readonly PlainRing[]; readonly pitch: number; readonly twist: number },
  grid = 48,
): Examined {
  const links: string[] = [];
  let least = Number.POSITIVE_INFINITY;
  const { rings, pitch, twist } = cell;
  for (let k = 0; k < 40; k++) {
    let met = false;
    rings.forEach((a, i) => {
      rings.forEach((b, j) => {
        if (k === 0 && j <= i) return;
        const image = further(b, pitch, twist, k);
        const gap = minus(a.centre, image.centre);
        if (Math.sqrt(dot(gap, gap)) > a.radius + b.radius + (a.wire + b.wire) / 2) return;
        met = true;
        least = Math.min(least, sampledDistance(a, image, grid) / ((a.wire + b.wire) / 2));
        const sign = Math.round(gaussLinking(a, image, 80));
        if (sign !== 0) links.push(`${i} ${j} ${k} ${sign}`);
      });
    });
    if (!met && k > 2) break;
  }
  return { least, links: links.sort() };
}
