/**
 * Every picture against the rings that it shows: at each crossing, and at
 * random points, what was painted last is what lies nearest. A subset runs by
 * default; `WEAVE_VIEWS=12 WEAVE_ALL=1` runs all views, weaves and aspect
 * ratios.
 */
import { expect, test } from 'vitest';
import { drawRings } from '#lib/weave/picture/draw-rings.ts';
import { tonesOf } from '#lib/weave/picture/look.ts';
import { viewAt } from '#lib/weave/picture/view.ts';
import { randomRow } from '#lib/weave/space/random-row.ts';
import { inCell, type RoundRing } from '#lib/weave/space/round-ring.ts';
import { SETTLED_SHAPES } from '#lib/weave/space/settled-shapes.ts';
import { shapeOfWeave } from '#lib/weave/space/shape-of-weave.ts';
import { covers, type Stroke, strokesIn } from '#tests/support/read-picture.ts';

const VIEWS = Number(process.env['WEAVE_VIEWS'] ?? 2);
const ALL = process.env['WEAVE_ALL'] !== undefined;

const WIRE = 12;

/** Points along a ring in the picture's directions, one wire 12 units thick; roll as the picture's. */
function pointsOf(
  ring: RoundRing,
  roll: number,
  count = 360,
): readonly (readonly [number, number, number])[] {
  const c = Math.cos((roll * Math.PI) / 180);
  const s = Math.sin((roll * Math.PI) / 180);
  const [nx, ny, nz] = ring.normal;
  const helper = Math.abs(nx) < 0.7 ? [1, 0, 0] : [0, 1, 0];
  const [hx = 0, hy = 0, hz = 0] = helper;
  const u = [hy * nz - hz * ny, hz * nx - hx * nz, hx * ny - hy * nx];
  const size = Math.hypot(u[0] ?? 0, u[1] ?? 0, u[2] ?? 0);
  const [ux = 0, uy = 0, uz = 0] = u.map((part) => part / size);
  const v = [ny * uz - nz * uy, nz * ux - nx * uz, nx * uy - ny * ux];
  return Array.from({ length: count }, (_, i) => {
    const a = (i * 2 * Math.PI) / count;
    const at = (axis: 0 | 1 | 2, part: number): number =>
      ring.centre[axis] + ring.radius * (Math.cos(a) * part + Math.sin(a) * (v[axis] ?? 0));
    const [x, y, z] = [at(0, ux), at(1, uy), at(2, uz)];
    const k = WIRE / ring.wire;
    return [k * x, -k * (y * c - z * s), k * (y * s + z * c)];
  });
}

type Points = ReturnType<typeof pointsOf>;

/** Where two rings' middle lines cross in the picture, with both depths. */
function crossings(a: Points, b: Points): readonly { x: number; y: number; za: number; zb: number }[] {
  const found: { x: number; y: number; za: number; zb: number }[] = [];
  a.forEach((p, i) => {
    const p2 = a[(i + 1) % a.length] ?? p;
    b.forEach((q, j) => {
      if (Math.abs(p[0] - q[0]) > 2 || Math.abs(p[1] - q[1]) > 2) return;
      const q2 = b[(j + 1) % b.length] ?? q;
      const [dx, dy, ex, ey] = [p2[0] - p[0], p2[1] - p[1], q2[0] - q[0], q2[1] - q[1]];
      const det = dx * ey - dy * ex;
      if (Math.abs(det) < 1e-9) return;
      const t = ((q[0] - p[0]) * ey - (q[1] - p[1]) * ex) / det;
      const s = ((q[0] - p[0]) * dy - (q[1] - p[1]) * dx) / det;
      if (t < 0 || t >= 1 || s < 0 || s >= 1) return;
      found.push({
        x: p[0] + t * dx,
        y: p[1] + t * dy,
        za: p[2] + t * (p2[2] - p[2]),
        zb: q[2] + s * (q2[2] - q[2]),
      });
    });
  });
  return found;
}

/** The ring whose surface lies nearest over a point of the picture; undefined where there is none. */
function nearestAt(points: readonly Points[], x: number, y: number, half: number): number | undefined {
  let nearest: number | undefined;
  let height = -Infinity;
  points.forEach((ring, index) => {
    for (const [px, py, pz] of ring) {
      const flat = (px - x) ** 2 + (py - y) ** 2;
      if (flat >= half * half || pz + Math.sqrt(half * half - flat) <= height) continue;
      height = pz + Math.sqrt(half * half - flat);
      nearest = index;
    }
  });
  return nearest;
}

const colourOf = (index: number): string => `#${(0x202020 + index * 0x030507).toString(16).slice(-6)}`;

function check(
  rings: readonly RoundRing[],
  roll: number,
  seed: number,
): { crossings: number; points: number } {
  const pictured = rings.map((ring, index) => ({ ring, colour: colourOf(index), role: 'plain' as const }));
  const svg = drawRings(pictured, viewAt(roll)).elements.join('');
  expect(drawRings(pictured, viewAt(roll)).elements.join('')).toBe(svg);
  const ringOf = new Map(rings.map((_, index) => [tonesOf(colourOf(index)).shade, index]));
  expect(ringOf.size).toBe(rings.length);
  const wires: readonly Stroke[] = strokesIn(svg).filter(
    ({ width, colour }) => width === WIRE || (width === 0 && ringOf.has(colour)),
  );
  const paintedAt = (x: number, y: number): number | undefined => {
    const top = wires.findLast((stroke) => covers(stroke, x, y));
    return top && ringOf.get(top.colour);
  };
  const points = rings.map((ring) => pointsOf(ring, roll));
  const wrong: string[] = [];
  let count = 0;
  points.forEach((a, i) => {
    points.forEach((b, j) => {
      if (j <= i) return;
      for (const { x, y, za, zb } of crossings(a, b)) {
        count += 1;
        const nearer = za > zb ? i : j;
        const top = paintedAt(x, y);
        // Another wire, or another side of one of the two, may lie over both.
        const isOver = points.some((c, k) =>
          c.some(
            (p) =>
              (p[0] - x) ** 2 + (p[1] - y) ** 2 < (WIRE / 2 + 0.3) ** 2 &&
              p[2] > Math.max(za, zb) + (k === i || k === j ? WIRE / 2 : 0),
          ),
        );
        if (!isOver && top !== nearer)
          wrong.push(`crossing ${i}/${j} at ${x.toFixed(1)} ${y.toFixed(1)}: ${top}`);
      }
    });
  });
  const random = randomRow(seed);
  let tried = 0;
  for (let n = 0; n < 120; n++) {
    const some = points[Math.floor(random() * points.length)]?.[Math.floor(random() * 360)];
    if (!some) continue;
    const [x, y] = [some[0] + (random() - 0.5) * WIRE, some[1] + (random() - 0.5) * WIRE];
    // Points within 1.5 % of a wire of an edge are left out: curves are drawn to 1 %, numbers to a tenth of a unit.
    const expected = nearestAt(points, x, y, 0.5 * WIRE);
    if ([0.485, 0.492, 0.508, 0.515].some((half) => nearestAt(points, x, y, half * WIRE) !== expected))
      continue;
    tried += 1;
    const painted = paintedAt(x, y);
    if (painted !== expected)
      wrong.push(`point ${x.toFixed(1)} ${y.toFixed(1)}: ${painted}, not ${expected}`);
  }
  expect(wrong).toEqual([]);
  return { crossings: count, points: tried };
}

test.each(SETTLED_SHAPES.map((weave) => [weave.id, weave] as const))(
  '%s: every crossing as in space',
  (id, weave) => {
    const ratios = weave.shapes.map(({ aspectRatio }) => aspectRatio);
    const chosen = ALL ? [ratios[1], ratios[6], ratios[11]] : [ratios[5]];
    let seen = 0;
    for (const aspectRatio of chosen) {
      const shape = shapeOfWeave(id, [{ inner: aspectRatio ?? 4, wire: 1 }]);
      if (!shape.ok) throw new Error(`${id} ${aspectRatio}: ${shape.fault.code}`);
      const { cell } = shape.value;
      const cells = cell.pitch > 1000 ? 1 : Math.max(2, Math.ceil(7 / cell.rings.length));
      const rings = Array.from({ length: cells }, (_, k) =>
        cell.rings.map((ring) => inCell(ring, cell, k)),
      ).flat();
      for (let n = 0; n < VIEWS; n++) seen += check(rings, ALL ? n * 15 : 20 + n * 55, n + 1).crossings;
    }
    expect(seen).toBeGreaterThan(0);
  },
);
