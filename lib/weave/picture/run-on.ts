/**
 * How far wires and the light on them are drawn beyond their own stretch, so
 * that no hair shows where the smoothed ends of two stretches meet.
 */
import type { SeenRing } from './seen-ring.ts';

/** What is drawn one upon the other along a wire, from below. */
export type Layer = 'wire' | 'light' | 'gleam';

type RunOn = Readonly<Record<Layer, number>>;

/** Picture units. */
export const RUN_ON: RunOn = { wire: 0.5, light: 1.2, gleam: 1.7 };
/** Where a wire turns away under itself its further part runs on more, as it does not go far in the picture there. */
const RUN_UNDER: RunOn = { wire: 1, light: 1.4, gleam: 1.8 };
/** The nearer part hardly runs on there, or its light would lie over its own edge. */
const RUN_OVER: RunOn = { wire: 0.6, light: 0.9, gleam: 1.3 };

/** A ring seen so nearly from its edge, by the ellipse's axes, that its cuts at the turn lie along its own outline. */
const FLAT = 0.2;

/** The angle by which a ring goes on for one picture unit; at most so many times that of where it is seen at its full length. */
export function angleOf({ cosine, sine }: SeenRing, angle: number, most: number): number {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const speed = Math.hypot(sine[0] * c - cosine[0] * s, sine[1] * c - cosine[1] * s);
  return 1 / Math.max(Math.hypot(...cosine) / most, speed);
}

/** The angle by which a cut across a ring's wire goes on for one picture unit, at its own ends too, which swing round where the wire turns on the spot. */
function angleOfCut({ cosine, sine, half }: SeenRing, angle: number): number {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const square = (sine[0] * c - cosine[0] * s) ** 2 + (sine[1] * c - cosine[1] * s) ** 2;
  const swing = Math.abs(cosine[0] * sine[1] - cosine[1] * sine[0]) / square;
  return 1 / (Math.sqrt(square) + half * swing);
}

/** A stretch of wire that does not turn between its ends, by angle. */
type Part = readonly [from: number, to: number];

/** Between which angles a layer of a part is drawn as skin. */
export const skinEnds = (ring: SeenRing, part: Part, layer: Layer): readonly [number, number] => [
  part[0] - onward(ring, part, -1, layer),
  part[1] + onward(ring, part, 1, layer),
];

const isNearSide = ({ sine }: SeenRing, [from, to]: Part): boolean => sine[2] * Math.sin((from + to) / 2) > 0;

const isSeenFlat = ({ wide, long }: SeenRing): boolean => wide < FLAT * long;

/** Where along a part a line on its ridge is drawn: on a ring seen nearly from its edge not on the far side, nor where it would curl round the end. */
export function ridgeEnds(ring: SeenRing, part: Part): Part | null {
  const [from, to] = skinEnds(ring, part, 'gleam');
  if (!isSeenFlat(ring)) return [from, to];
  if (!isNearSide(ring, part)) return null;
  const [before, after] = [toTurn(part[0], -1), toTurn(part[1], 1)];
  const ends: Part = [Math.max(from, part[0] - before + CURL), Math.min(to, part[1] + after - CURL)];
  return ends[0] < ends[1] ? ends : null;
}

/** Radians from the turn. */
const CURL = 0.3;

function onward(ring: SeenRing, part: Part, way: 1 | -1, layer: Layer): number {
  const [from, to] = part;
  const angle = way > 0 ? to : from;
  const isFlat = isSeenFlat(ring);
  const isNear = isNearSide(ring, part);
  const seam = isFlat ? seamOf(ring) : 0;
  const turn = toTurn(angle, way);
  const unit = angleOf(ring, angle, 2);
  if (turn === 0) {
    if (!isNear) return seam + RUN_UNDER[layer] * unit;
    return isFlat ? -Math.min(seam, (to - from) / 2) * SHARE[layer] : RUN_OVER[layer] * unit;
  }
  const most = RUN_ON[layer] * (isFlat ? angleOfCut(ring, angle) : angleOf(ring, angle, 6));
  // Light that ran on round a turn would lie over the wire's own edge.
  const on = Math.max(RUN_OVER[layer] * unit, Math.min(turn, most));
  return isFlat ? Math.max(0, Math.min(on, isNear ? turn - seam : turn)) : on;
}

/**
 * By how much the nearer part of a ring that is seen nearly from its edge
 * begins beyond the turn, and the further one runs on under it. At the turn
 * itself the wire runs at the eye: a cut across it is half of its round end's
 * outline, and a shape that turned on the spot there would leave hairs.
 */
const seamOf = ({ long, wide }: SeenRing): number =>
  Math.min(Math.atan((2.5 * wide) / long), Math.sqrt((2 * SEAM_SHIFT) / long));

/** Layers end one before the other there too, by parts of the way from the turn to the seam. */
const SHARE: RunOn = { wire: 1, light: 0.8, gleam: 0.6 };

/** How far the seam may lie from the turn in the picture, in picture units. */
const SEAM_SHIFT = 0.3;

const NO_ANGLE = 1e-9;

/** The angle from a point of a ring to where it next turns towards the eye or away from it. */
function toTurn(angle: number, way: 1 | -1): number {
  const off = (-way * angle) % Math.PI;
  const on = off < 0 ? off + Math.PI : off;
  return on < NO_ANGLE || Math.PI - on < NO_ANGLE ? 0 : on;
}
