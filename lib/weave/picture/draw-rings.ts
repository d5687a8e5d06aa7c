/**
 * Rings in space as a picture: wire by wire from the furthest to the nearest,
 * then the outlines. The same rings give the same bytes.
 */
import type { RoundRing } from '../space/round-ring.ts';
import type { Arc } from './arcs.ts';
import { curvePath, short } from './curve.ts';
import { type Tones, tonesOf } from './look.ts';
import { visibleEdges } from './outline.ts';
import { overlapsOf } from './overlaps.ts';
import { paintOrder } from './paint-order.ts';
import { type Box, bendAt, edgeCurve, middleCurve, type SeenRing, seeRing } from './seen-ring.ts';
import { dimmest, glints, lightLine } from './shine.ts';
import type { View } from './view.ts';

/** What a ring is in the step that a picture shows. */
export type RingRole = 'plain' | 'new' | 'carried' | 'entered';

export interface PictureRing {
  readonly ring: RoundRing;
  /** `#rrggbb`. */
  readonly colour: string;
  readonly role: RingRole;
}

/** A picture before it is framed: elements, and the box that they fill. */
export interface Drawn {
  readonly elements: readonly string[];
  readonly seen: readonly SeenRing[];
  readonly box: Box;
}

/** Picture units to one wire of the mean thickness. */
export const UNITS_A_WIRE = 12;

/** Width of the outline and its dashes by role, in picture units. */
const EDGES: Readonly<
  Record<RingRole, { readonly width: number; readonly dashes: string; readonly colour: string | null }>
> = {
  plain: { width: 1.1, dashes: '', colour: null },
  new: { width: 2.6, dashes: '', colour: '#16130e' },
  carried: { width: 2.4, dashes: '7 3', colour: '#16130e' },
  entered: { width: 1.8, dashes: '1.5 3', colour: '#16130e' },
};

/** Picture units to the unit of the rings: their mean wire sets the scale. */
export const scaleOf = (rings: readonly PictureRing[]): number =>
  UNITS_A_WIRE / (rings.reduce((sum, { ring }) => sum + ring.wire, 0) / Math.max(1, rings.length));

/** `simple` leaves out what is not seen from far away: a broad gleam with a bright line in it tells polished metal from enamel. */
export type Look = 'polished' | 'simple';

/** Draws rings; lengths may be in any unit. */
export function drawRings(
  rings: readonly PictureRing[],
  view: View,
  by = scaleOf(rings),
  look: Look = 'polished',
): Drawn {
  const seen = rings.map(({ ring }) =>
    seeRing(
      {
        centre: [ring.centre[0] * by, ring.centre[1] * by, ring.centre[2] * by],
        normal: ring.normal,
        radius: ring.radius * by,
        wire: ring.wire * by,
      },
      view,
    ),
  );
  const arcs = paintOrder(seen, overlapsOf(seen));
  const tones = new Map<string, Tones>();
  for (const { colour } of rings) if (!tones.has(colour)) tones.set(colour, tonesOf(colour));
  const painted = arcs.flatMap((arc) => {
    const tone = tones.get(rings[arc.ring]?.colour ?? '');
    return tone ? paintArc(seen[arc.ring] as SeenRing, arc, tone, look) : [];
  });
  const lines = outlines(rings, seen, tones);
  const box = seen.reduce<Box>(
    (all, { box: one }) => [
      Math.min(all[0], one[0]),
      Math.min(all[1], one[1]),
      Math.max(all[2], one[2]),
      Math.max(all[3], one[3]),
    ],
    [Infinity, Infinity, -Infinity, -Infinity],
  );
  return {
    elements: [
      `<g fill="none" stroke-linecap="round" stroke-linejoin="round">${painted.join('')}${lines.join('')}</g>`,
    ],
    seen,
    box,
  };
}

const stroked = (d: string, colour: string, width: number, cap: string): string =>
  `<path d="${d}" stroke="${colour}" stroke-width="${short(width)}"${cap}/>`;

const FLAT = ' stroke-linecap="butt"';

/** Radius of a bend, in half wires, from which on the flat end of a stroke does not reach beyond its middle. */
const GENTLE = 1.3;

function paintArc(ring: SeenRing, arc: Arc, tones: Tones, look: Look): readonly string[] {
  const step = (2 * Math.PI) / ring.count;
  const wire = 2 * ring.half;
  const isWhole = arc.to - arc.from >= ring.count;
  // Flat ends meet without a trace, but only where the wire bends gently; elsewhere round ends overlap.
  const isGentle =
    !isWhole && bendAt(ring, arc.from) > GENTLE * ring.half && bendAt(ring, arc.to) > GENTLE * ring.half;
  const overlap = (part: number): number => (isWhole ? 0 : part * step);
  const cap = isGentle ? FLAT : '';
  const end = overlap(isGentle ? 0.25 : 0);
  // A little longer than the wire itself, or its end would show as a hair through the smoothing of edges.
  const inner = overlap(isGentle ? 0.9 : 1.5);
  const [from, to] = [arc.from * step, arc.to * step];
  // The light on a whole ring is begun where there is least of it.
  const start = isWhole ? dimmest(ring) : from - inner;
  return [
    stroked(curvePath(middleCurve(ring), from - end, to + end), tones.shade, wire, cap),
    stroked(curvePath(lightLine(ring, 0.22), from - inner, to + inner), tones.body, wire * 0.66, cap),
    ...glints(ring, start, start + to - from + 2 * inner, 0.72).map(([a, b]) => {
      const line = curvePath(lightLine(ring, 0.5), a, b);
      const bright = stroked(line, tones.glint, wire * 0.13, '');
      // Where the light runs on into the next stroke a round end would lie over its bright line.
      const runsOn = !isWhole && (a <= start || b >= start + to - from + 2 * inner);
      return look === 'simple'
        ? bright
        : stroked(line, tones.gleam, wire * 0.36, runsOn ? FLAT : '') + bright;
    }),
  ];
}

function outlines(
  rings: readonly PictureRing[],
  seen: readonly SeenRing[],
  tones: ReadonlyMap<string, Tones>,
): readonly string[] {
  const paths = new Map<string, string[]>();
  for (const { ring, side, from, to } of visibleEdges(seen)) {
    const { role = 'plain', colour = '' } = rings[ring] ?? {};
    const edge = EDGES[role];
    const dashes = edge.dashes ? ` stroke-dasharray="${edge.dashes}"` : '';
    const key = `stroke="${edge.colour ?? tones.get(colour)?.edge ?? ''}" stroke-width="${edge.width}"${dashes}`;
    const path = curvePath(edgeCurve(seen[ring] as SeenRing, side), from, to);
    const known = paths.get(key);
    if (known) known.push(path);
    else paths.set(key, [path]);
  }
  return [...paths].map(([attributes, d]) => `<path d="${d.join('')}" ${attributes}/>`);
}
