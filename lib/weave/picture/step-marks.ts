/**
 * What is written over a step's picture: numbers on rings, and an arrow where
 * the opened ring goes through an opening, the way it goes.
 */
import type { Side } from '../placement.ts';
import type { RoundRing } from '../space/round-ring.ts';
import { cross, dot, subtract, unit, type Vector } from '../space/vector.ts';
import { short } from './curve.ts';
import { UNITS_A_WIRE } from './draw-rings.ts';
import { alongRing, type SeenRing } from './seen-ring.ts';

const INK = '#16130e';
const PAPER = '#fffdf8';

/** A ring's number in a disc, on the ring where it is least covered. */
export function ringLabel(
  index: number,
  text: string,
  seen: readonly SeenRing[],
  shape: 'disc' | 'box' | 'plain',
): string {
  const ring = seen[index] as SeenRing;
  const [x, y] = clearestPoint(ring, seen);
  const half = 5.2 + 2.4 * (text.length - 1);
  const frame =
    shape === 'box'
      ? `<rect x="${short(x - half)}" y="${short(y - 5.6)}" width="${short(2 * half)}" height="11.2" fill="${PAPER}" stroke="${INK}"/>`
      : `<rect x="${short(x - half)}" y="${short(y - 5.6)}" width="${short(2 * half)}" height="11.2" rx="5.6" fill="${shape === 'disc' ? INK : PAPER}" stroke="${INK}"${shape === 'plain' ? ' stroke-dasharray="1.5 1.5"' : ''}/>`;
  return `${frame}<text x="${short(x)}" y="${short(y + 3.1)}" font-size="9" font-weight="700" font-family="sans-serif" text-anchor="middle" fill="${shape === 'disc' ? PAPER : INK}">${text}</text>`;
}

/** The point of a ring that lies furthest from all wires over it; the uppermost of equals. */
function clearestPoint(ring: SeenRing, seen: readonly SeenRing[]): Vector {
  let best: { at: number; room: number } = { at: 0, room: -1 };
  for (let i = 0; i < ring.count; i += 2) {
    const [x, y, z] = [ring.x[i] as number, ring.y[i] as number, ring.near[i] as number];
    let room = 40;
    for (const other of seen) {
      if (other === ring) continue;
      for (let j = 0; j < other.count; j += 2) {
        const away = Math.hypot((other.x[j] as number) - x, (other.y[j] as number) - y);
        room = Math.min(room, (other.near[j] as number) > z ? away : away * 2);
      }
    }
    if (room > best.room + 0.5) best = { at: i, room };
  }
  return alongRing(ring, (best.at * 2 * Math.PI) / ring.count);
}

/** The opening of a ring that is entered, as a wash under all wires: seen wherever the opening is. */
export function openingWash({ centre, cosine, sine }: SeenRing): string {
  const [cc, ss] = [cosine[0] ** 2 + cosine[1] ** 2, sine[0] ** 2 + sine[1] ** 2];
  const cs = cosine[0] * sine[0] + cosine[1] * sine[1];
  const spread = Math.hypot(cc - ss, 2 * cs);
  const angle = Math.atan2(2 * cs, cc - ss) / 2;
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const turned = (Math.atan2(cosine[1] * c + sine[1] * s, cosine[0] * c + sine[0] * s) * 180) / Math.PI;
  const long = Math.sqrt((cc + ss + spread) / 2);
  const wide = Math.sqrt(Math.max(0, (cc + ss - spread) / 2));
  return `<ellipse cx="${short(centre[0])}" cy="${short(centre[1])}" rx="${short(long)}" ry="${short(wide)}" transform="rotate(${short(turned)} ${short(centre[0])} ${short(centre[1])})" fill="#f0c35a" fill-opacity=".4"/>`;
}

/** Where a ring goes through another one's opening, and which way along it the ring runs there. */
export function throughPoint(
  by: RoundRing,
  through: RoundRing,
): { readonly at: Vector; readonly along: Vector } | null {
  const side: Vector = Math.abs(by.normal[0]) < 0.6 ? [1, 0, 0] : [0, 1, 0];
  const u = unit(cross(side, by.normal));
  const v = cross(by.normal, u);
  const h = dot(subtract(by.centre, through.centre), through.normal);
  const mu = by.radius * dot(u, through.normal);
  const mv = by.radius * dot(v, through.normal);
  const m = Math.hypot(mu, mv);
  if (m <= Math.abs(h)) return null;
  const phase = Math.atan2(mv, mu);
  const half = Math.acos(-h / m);
  for (const angle of [phase - half, phase + half]) {
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    const at = [0, 1, 2].map(
      (axis) => (by.centre[axis] as number) + by.radius * ((u[axis] as number) * c + (v[axis] as number) * s),
    ) as unknown as Vector;
    const off = subtract(at, through.centre);
    if (dot(off, off) < through.radius * through.radius)
      return {
        at,
        along: [0, 1, 2].map(
          (axis) => (v[axis] as number) * c - (u[axis] as number) * s,
        ) as unknown as Vector,
      };
  }
  return null;
}

/**
 * An arrow along the ring at an opening. From the back it comes towards the
 * eye: a full head and a dot at its foot; from the front it goes away: a
 * cross at its foot, as the feather of an arrow that is seen from behind.
 */
export function openingArrow(
  at: readonly [number, number],
  direction: readonly [number, number],
  from: Side,
): string {
  const long = Math.hypot(direction[0], direction[1]);
  const [dx, dy] = long < 1e-6 ? [0, -1] : [direction[0] / long, direction[1] / long];
  const reach = UNITS_A_WIRE * 1.05;
  const [x0, y0] = [at[0] - dx * reach, at[1] - dy * reach];
  const [x1, y1] = [at[0] + dx * reach, at[1] + dy * reach];
  const [bx, by] = [x1 - dx * 6, y1 - dy * 6];
  const shaft = `M${short(x0)} ${short(y0)}L${short(bx)} ${short(by)}`;
  const head = `M${short(x1)} ${short(y1)}L${short(bx - dy * 4)} ${short(by + dx * 4)}L${short(bx + dy * 4)} ${short(by - dx * 4)}z`;
  const foot =
    from === 'back'
      ? `<circle cx="${short(x0)}" cy="${short(y0)}" r="3.4" fill="${PAPER}" stroke="${INK}" stroke-width="1.2"/><circle cx="${short(x0)}" cy="${short(y0)}" r="1.2" fill="${INK}"/>`
      : `<circle cx="${short(x0)}" cy="${short(y0)}" r="3.4" fill="${PAPER}" stroke="${INK}" stroke-width="1.2"/><path d="M${short(x0 - 2.2)} ${short(y0 - 2.2)}l4.4 4.4m0-4.4l-4.4 4.4" stroke="${INK}" stroke-width="1.2"/>`;
  return `<path d="${shaft}" stroke="${PAPER}" stroke-width="5.5" stroke-linecap="round"/><path d="${head}" fill="${PAPER}" stroke="${PAPER}" stroke-width="3.5" stroke-linejoin="round"/><path d="${shaft}" stroke="${INK}" stroke-width="2.2" stroke-linecap="round"/><path d="${head}" fill="${INK}"/>${foot}`;
}
