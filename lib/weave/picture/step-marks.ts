/** What is written over a step's picture: numbers on rings, and a wash where an opening is entered. */
import type { RoundRing } from '../space/round-ring.ts';
import { cross, dot, subtract, unit, type Vector } from '../space/vector.ts';
import { short } from './curve.ts';
import { alongRing, type SeenRing } from './seen-ring.ts';

const INK = '#16130e';
const PAPER = '#fffdf8';

/** A place that a number keeps clear of: a disc round a point. */
export interface Taken {
  readonly at: readonly [number, number];
  readonly radius: number;
}

/** A ring's number, framed by its role. */
export interface RingNumber {
  readonly ring: SeenRing;
  readonly text: string;
  readonly frame: 'disc' | 'box' | 'dotted';
}

/** Numbers on rings, each where its ring is least covered, clear of the others and of what is drawn there. */
export function ringNumbers(
  numbers: readonly RingNumber[],
  seen: readonly SeenRing[],
  taken: readonly Taken[],
): readonly string[] {
  const held = [...taken];
  return numbers.map(({ ring, text, frame }) => {
    const [x, y] = clearestPoint(ring, seen, held);
    const half = 5.2 + 2.4 * (text.length - 1);
    held.push({ at: [x, y], radius: half + 1 });
    const box = `x="${short(x - half)}" y="${short(y - 5.6)}" width="${short(2 * half)}" height="11.2"`;
    const look = {
      disc: ` rx="5.6" fill="${INK}" stroke="${INK}"`,
      box: ` fill="${PAPER}" stroke="${INK}"`,
      dotted: ` rx="5.6" fill="${PAPER}" stroke="${INK}" stroke-dasharray="1.5 1.5"`,
    }[frame];
    return `<rect ${box}${look}/><text x="${short(x)}" y="${short(y + 3.1)}" font-size="9" font-weight="700" font-family="sans-serif" text-anchor="middle" fill="${frame === 'disc' ? PAPER : INK}">${text}</text>`;
  });
}

/** Half a number's frame. */
const NUMBER = 5.6;

/** The point of a ring that lies furthest from all wires over it and from what is taken; the uppermost of equals. */
function clearestPoint(ring: SeenRing, seen: readonly SeenRing[], taken: readonly Taken[]): Vector {
  let best: { at: number; room: number } = { at: 0, room: Number.NEGATIVE_INFINITY };
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
    // Where a number would lie on another mark it is worse than on any wire.
    for (const { at, radius } of taken) {
      const free = Math.hypot(at[0] - x, at[1] - y) - radius - NUMBER;
      if (free < 0) room = Math.min(room, 0) + free;
    }
    if (room > best.room + 0.5) best = { at: i, room };
  }
  return alongRing(ring, (best.at * 2 * Math.PI) / ring.count);
}

/** The opening of a ring that is entered, as a wash under all wires: seen wherever the opening is. */
export function openingWash({ centre, cosine, long, wide }: SeenRing): string {
  const turned = (Math.atan2(cosine[1], cosine[0]) * 180) / Math.PI;
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
