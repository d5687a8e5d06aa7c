/** Points and directions in space: three numbers, never changed in place. */
export type Vector = readonly [x: number, y: number, z: number];

export const add = (a: Vector, b: Vector): Vector => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const subtract = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const scale = (a: Vector, by: number): Vector => [a[0] * by, a[1] * by, a[2] * by];
export const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
export const length = (a: Vector): number => Math.hypot(a[0], a[1], a[2]);
export const unit = (a: Vector): Vector => scale(a, 1 / length(a));

/** Turned about the x axis, right-handed. */
export function turnAboutX(a: Vector, radians: number): Vector {
  const c = Math.cos(radians);
  const s = Math.sin(radians);
  return [a[0], a[1] * c - a[2] * s, a[1] * s + a[2] * c];
}

/** Turned about the axis whose direction is the turn and whose length is the angle (Rodrigues). */
export function turn(a: Vector, by: Vector): Vector {
  const angle = length(by);
  if (angle < 1e-300) return a;
  const axis = scale(by, 1 / angle);
  const c = Math.cos(angle);
  return add(add(scale(a, c), scale(cross(axis, a), Math.sin(angle))), scale(axis, dot(axis, a) * (1 - c)));
}

/** Two unit vectors that span the plane across `normal`, right-handed with it (first x second = normal). */
export function spanAcross(normal: Vector): readonly [Vector, Vector] {
  const far: Vector = Math.abs(normal[0]) < 0.6 ? [1, 0, 0] : [0, 1, 0];
  const first = unit(cross(far, normal));
  return [first, cross(normal, first)];
}
