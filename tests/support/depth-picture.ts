/**
 * Rings as a plain depth picture, pixel by pixel: each wire a row of balls so
 * close that together they are the torus, and in each pixel the nearest ball.
 * Slow, and knows nothing of how pictures are drawn: what they are held
 * against.
 */
import type { View } from '#lib/weave/picture/view.ts';
import type { RoundRing } from '#lib/weave/space/round-ring.ts';

export interface DepthPicture {
  readonly width: number;
  readonly height: number;
  /** By pixel, row by row: the nearest ring, -1 where there is none. */
  readonly ring: Int16Array;
  /** How near it is there, picture units. */
  readonly near: Float64Array;
  /** How far the surface there stands out from the middle of its wire towards the eye: 0 at an edge, 1 where it faces the eye. */
  readonly facing: Float32Array;
  /** Where across the wire the pixel lies: -1 and 1 at its two edges. */
  readonly across: Float32Array;
  /** The wire's light from the lamp across it, in the same measure. */
  readonly light: Float32Array;
}

/** Balls a ring; at 30 units' radius the dents between them are a two-hundredth of a unit deep. */
const BALLS = 420;

type Three = readonly [number, number, number];
const dotOf = (a: Three, b: Three): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

export function depthPicture(
  rings: readonly RoundRing[],
  { right, up, toward }: View,
  by: number,
  frame: {
    readonly left: number;
    readonly top: number;
    readonly width: number;
    readonly height: number;
    readonly zoom: number;
  },
  lamp: Three,
): DepthPicture {
  const { left, top, width, height, zoom } = frame;
  const size = width * height;
  const picture = {
    width,
    height,
    ring: new Int16Array(size).fill(-1),
    near: new Float64Array(size).fill(Number.NEGATIVE_INFINITY),
    facing: new Float32Array(size),
    across: new Float32Array(size),
    light: new Float32Array(size),
  };
  rings.forEach((ring, index) => {
    const [nx, ny, nz] = ring.normal;
    const helper: Three = Math.abs(nx) < 0.7 ? [1, 0, 0] : [0, 1, 0];
    const cross = (a: Three, b: Three): Three => [
      a[1] * b[2] - a[2] * b[1],
      a[2] * b[0] - a[0] * b[2],
      a[0] * b[1] - a[1] * b[0],
    ];
    const flat = cross(helper, [nx, ny, nz]);
    const long = Math.sqrt(dotOf(flat, flat));
    const u: Three = [flat[0] / long, flat[1] / long, flat[2] / long];
    const v = cross([nx, ny, nz], u);
    const seen = (p: Three): Three => [dotOf(right, p), -dotOf(up, p), dotOf(toward, p)];
    const [c, a, b] = [seen(ring.centre), seen(u), seen(v)];
    const half = (ring.wire * by) / 2;
    for (let i = 0; i < BALLS; i++) {
      const angle = (i * 2 * Math.PI) / BALLS;
      const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
      const at = (axis: 0 | 1 | 2): number => by * (c[axis] + ring.radius * (cos * a[axis] + sin * b[axis]));
      const [x, y, z] = [at(0), at(1), at(2)];
      const [tx, ty] = [cos * b[0] - sin * a[0], cos * b[1] - sin * a[1]];
      const speed = Math.max(1e-9, Math.hypot(tx, ty));
      const [ex, ey] = [ty / speed, -tx / speed];
      const light = lamp[0] * ex + lamp[1] * ey;
      const firstRow = Math.max(0, Math.floor((y - half - top) * zoom));
      const lastRow = Math.min(height - 1, Math.ceil((y + half - top) * zoom));
      for (let row = firstRow; row <= lastRow; row++) {
        const dy = (row + 0.5) / zoom + top - y;
        const reach = half * half - dy * dy;
        if (reach <= 0) continue;
        const wide = Math.sqrt(reach);
        const first = Math.max(0, Math.ceil((x - wide - left) * zoom - 0.5));
        const last = Math.min(width - 1, Math.floor((x + wide - left) * zoom - 0.5));
        for (let column = first; column <= last; column++) {
          const dx = (column + 0.5) / zoom + left - x;
          const out = Math.sqrt(Math.max(0, reach - dx * dx));
          const pixel = row * width + column;
          if (z + out <= (picture.near[pixel] as number)) continue;
          picture.near[pixel] = z + out;
          picture.ring[pixel] = index;
          picture.facing[pixel] = out / half;
          picture.across[pixel] = (dx * ex + dy * ey) / half;
          picture.light[pixel] = light;
        }
      }
    }
  });
  return picture;
}
