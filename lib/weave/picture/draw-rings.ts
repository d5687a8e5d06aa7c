/**
 * Rings in space as a picture: wire by wire from the furthest to the nearest,
 * then the outlines. The same rings give the same bytes.
 */
import type { RoundRing } from '../space/round-ring.ts';
import { BallsByPlace, MOST_ROUND } from './balls-by-place.ts';
import { curvePath } from './curve.ts';
import { type Tones, tonesOf } from './look.ts';
import { visibleEdges } from './outline.ts';
import { overlapsOf } from './overlaps.ts';
import { paintOrder } from './paint-order.ts';
import { type Look, OFF, paintArc, showsEnds } from './paint-wire.ts';
import type { RingLine } from './ring-line.ts';
import { type Box, edgeCurve, type SeenRing, seeRing } from './seen-ring.ts';
import type { View } from './view.ts';

/** What a ring is in the step that a picture shows. */
export type RingRole = 'plain' | 'new' | 'carried' | 'entered';

export interface PictureRing {
  readonly ring: RoundRing;
  /** `#rrggbb`. */
  readonly colour: string;
  readonly role: RingRole;
  readonly line?: RingLine;
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
  carried: { width: 2.4, dashes: '7 5', colour: '#16130e' },
  entered: { width: 1.8, dashes: '1.5 3', colour: '#16130e' },
};

/** Picture units to the unit of the rings: their mean wire sets the scale. */
export const scaleOf = (rings: readonly PictureRing[]): number =>
  UNITS_A_WIRE / (rings.reduce((sum, { ring }) => sum + ring.wire, 0) / Math.max(1, rings.length));

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
  const balls = new BallsByPlace(seen);
  const asSkin = new Set(
    arcs.filter((arc) => showsEnds(seen[arc.ring] as SeenRing, arc)).map(({ ring }) => ring),
  );
  const painted = arcs.flatMap((arc) => {
    const tone = tones.get(rings[arc.ring]?.colour ?? '');
    const isSkin = asSkin.has(arc.ring);
    return tone
      ? paintArc(seen[arc.ring] as SeenRing, arc, {
          tones: tone,
          look,
          balls,
          isSkin,
          line: rings[arc.ring]?.line,
        })
      : [];
  });
  const lines = outlines(rings, seen, { tones, look, balls });
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

/** So far before a nearer wire an outline ends, in picture units; one that runs along that wire's own does not show beside it. */
const SHY = 0.12;

function outlines(
  rings: readonly PictureRing[],
  seen: readonly SeenRing[],
  {
    tones,
    look,
    balls,
  }: { readonly tones: ReadonlyMap<string, Tones>; readonly look: Look; readonly balls: BallsByPlace },
): readonly string[] {
  const paths = new Map<string, string[]>();
  // The round end of an outline then lies within the outline of the wire that it goes under.
  const round = (ring: number): number =>
    Math.min(MOST_ROUND, SHY + (EDGES[rings[ring]?.role ?? 'plain'].width - EDGES.plain.width) / 2);
  for (const { ring, side, from, to } of visibleEdges(seen, balls, round)) {
    const { role = 'plain', colour = '' } = rings[ring] ?? {};
    const edge = EDGES[role];
    const dashes = edge.dashes ? ` stroke-dasharray="${edge.dashes}"` : '';
    const key = `stroke="${edge.colour ?? tones.get(colour)?.edge ?? ''}" stroke-width="${edge.width}"${dashes}`;
    const path = curvePath(edgeCurve(seen[ring] as SeenRing, side), from, to, OFF[look].wire);
    const known = paths.get(key);
    if (known) known.push(path);
    else paths.set(key, [path]);
  }
  return [...paths].map(([attributes, d]) => `<path d="${d.join('')}" ${attributes}/>`);
}
