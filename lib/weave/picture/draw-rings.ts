/**
 * Rings in space as a picture: wire by wire from the furthest to the nearest,
 * then the outlines. The same rings give the same bytes.
 */
import type { RoundRing } from '../space/round-ring.ts';
import type { Arc } from './arcs.ts';
import { BallsByPlace, MOST_ROUND } from './balls-by-place.ts';
import { curvePath, short } from './curve.ts';
import { isHidden } from './hidden-wire.ts';
import { type Tones, tonesOf } from './look.ts';
import { visibleEdges } from './outline.ts';
import { overlapsOf } from './overlaps.ts';
import { paintOrder } from './paint-order.ts';
import { type Box, edgeCurve, middleCurve, type SeenRing, seeRing } from './seen-ring.ts';
import { dimmest, glints, lightLine } from './shine.ts';
import { gleamPath, partsByDepth, type Strip, stripPath } from './skin.ts';
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
  carried: { width: 2.4, dashes: '7 5', colour: '#16130e' },
  entered: { width: 1.8, dashes: '1.5 3', colour: '#16130e' },
};

/** Picture units to the unit of the rings: their mean wire sets the scale. */
export const scaleOf = (rings: readonly PictureRing[]): number =>
  UNITS_A_WIRE / (rings.reduce((sum, { ring }) => sum + ring.wire, 0) / Math.max(1, rings.length));

/** `simple` leaves out what is not seen from far away: a broad gleam with a bright line in it tells polished metal from enamel. */
export type Look = 'polished' | 'simple';

/** How far paths may leave what they draw, in picture units: wires and their outlines, and what is light alone. */
const OFF: Readonly<Record<Look, { readonly wire: number; readonly light: number }>> = {
  polished: { wire: 0.12, light: 0.25 },
  simple: { wire: 0.4, light: 0.5 },
};

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
  const painted = arcs.flatMap((arc) => {
    const tone = tones.get(rings[arc.ring]?.colour ?? '');
    return tone ? paintArc(seen[arc.ring] as SeenRing, arc, { tones: tone, look, balls }) : [];
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

const stroked = (d: string, colour: string, width: number, cap: string): string =>
  `<path d="${d}" stroke="${colour}" stroke-width="${short(width)}"${cap}/>`;

const filled = (d: string, colour: string): string => `<path d="${d}" fill="${colour}"/>`;

const FLAT = ' stroke-linecap="butt"';

/** Radius of its tightest bend, in half wires, from which on a wire is drawn in strokes: their flat ends then do not reach beyond the bend's middle. */
const GENTLE = 1.1;

/** How far a wire and the light on it are drawn beyond its arc, in picture units, so that no hair shows where smoothed ends meet. */
const RUN_ON = { wire: 0.5, light: 1.2, gleam: 1.7 } as const;
/** Where a wire turns away under itself its further part runs on more, as it does not go far in the picture there. */
const RUN_UNDER = { wire: 1, light: 1.4, gleam: 1.8 } as const;
/** The nearer part hardly runs on there, or its light would lie over its own edge. */
const RUN_OVER = { wire: 0.6, light: 0.9, gleam: 1.3 } as const;

/** The lit part of a wire, and the lines of light on it: how far they are drawn towards the lamp, and half their width. */
const BODY: Strip = { out: 0.22, wide: 0.66 };
const SHADE: Strip = { out: 0, wide: 1 };
const LIGHT = { out: 0.5, wide: 0.36, glint: 0.13 } as const;

interface Paint {
  readonly tones: Tones;
  readonly look: Look;
  readonly balls: BallsByPlace;
}

function paintArc(ring: SeenRing, arc: Arc, paint: Paint): readonly string[] {
  const { tones, balls } = paint;
  const off = OFF[paint.look];
  const step = (2 * Math.PI) / ring.count;
  const isWhole = arc.to - arc.from >= ring.count;
  if (ring.wide * ring.wide <= GENTLE * ring.half * ring.long) {
    const from = isWhole ? ring.end : arc.from * step;
    const to = isWhole ? ring.end + 2 * Math.PI : arc.to * step;
    return partsByDepth(ring, from, to).flatMap(([a, b], n) => {
      if (isHidden(ring, a, b, balls)) return [];
      const ends = (which: keyof typeof RUN_ON): readonly [number, number] => {
        const atTurn = n === 0 ? RUN_UNDER[which] : RUN_OVER[which];
        const onward = (angle: number, way: 1 | -1, isCut: boolean): number => {
          const least = (isCut ? RUN_OVER[which] : atTurn) * angleOf(ring, angle, 2);
          // Light that ran on round a turn would lie over the wire's own edge.
          const most = isCut
            ? Math.min(toTurn(ring, angle, way), RUN_ON[which] * angleOf(ring, angle, 6))
            : 0;
          return angle + way * Math.max(least, most);
        };
        return [onward(a, -1, a === from && !isWhole), onward(b, 1, b === to && !isWhole)];
      };
      return [
        filled(stripPath(ring, SHADE, ends('wire'), off.wire), tones.shade),
        filled(stripPath(ring, BODY, ends('light'), off.light), tones.body),
        ...light(ring, paint, {
          from: ends('gleam')[0],
          to: ends('gleam')[1],
          own: [a, b],
          bulges: true,
        }),
      ];
    });
  }
  // The light on a whole ring is begun where there is least of it.
  const start = isWhole ? dimmest(ring) : arc.from * step;
  const stop = isWhole ? start + 2 * Math.PI : arc.to * step;
  if (!isWhole && isHidden(ring, start, stop, balls)) return [];
  const [before, after] = isWhole ? [0, 0] : [angleOf(ring, start, 2), angleOf(ring, stop, 2)];
  const [first, last] = [start - RUN_ON.light * before, stop + RUN_ON.light * after];
  const wire = 2 * ring.half;
  const cap = isWhole ? '' : FLAT;
  return [
    stroked(
      curvePath(middleCurve(ring), start - RUN_ON.wire * before, stop + RUN_ON.wire * after, off.wire),
      tones.shade,
      wire,
      cap,
    ),
    stroked(curvePath(lightLine(ring, BODY.out), first, last, off.light), tones.body, wire * BODY.wide, cap),
    ...light(ring, paint, {
      from: start - RUN_ON.gleam * before,
      to: stop + RUN_ON.gleam * after,
      own: [start, stop],
      bulges: false,
    }),
  ];
}

/** The angle by which a ring goes on for one picture unit; at most so many times that of where it is seen at its full length. */
function angleOf({ cosine, sine }: SeenRing, angle: number, most: number): number {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const speed = Math.hypot(sine[0] * c - cosine[0] * s, sine[1] * c - cosine[1] * s);
  return 1 / Math.max(Math.hypot(...cosine) / most, speed);
}

/** The angle from a point of a ring to where it next turns towards the eye or away from it. */
function toTurn({ end }: SeenRing, angle: number, way: 1 | -1): number {
  const off = (way * (end - angle)) % Math.PI;
  return off < 0 ? off + Math.PI : off;
}

/** Squareness to the light from which on wire gleams, and from which on it has a bright line too. */
const GLEAMS = 0.72;
const GLINTS = 0.8;

interface LightWishes {
  /** Between which angles it is drawn, and between which of them the arc itself lies. */
  readonly from: number;
  readonly to: number;
  readonly own: readonly [number, number];
  readonly bulges: boolean;
}

/** Light on a wire: broad, and in it a bright line. */
function light(ring: SeenRing, paint: Paint, wishes: LightWishes): readonly string[] {
  const { tones, look } = paint;
  const bright = wishes.bulges
    ? tapered(ring, paint, wishes, {
        strip: { out: LIGHT.out, wide: LIGHT.glint },
        least: GLINTS,
        tone: tones.glint,
      })
    : brightLines(ring, paint, wishes);
  if (look === 'simple') return bright;
  return [...tapered(ring, paint, wishes, { strip: LIGHT, least: GLEAMS, tone: tones.gleam }), ...bright];
}

/** Light that grows narrower towards its ends; as broad everywhere on a ring that is lit all round. */
function tapered(
  ring: SeenRing,
  { look, balls }: Paint,
  { from, to, bulges }: LightWishes,
  { strip, least, tone }: { readonly strip: Strip; readonly least: number; readonly tone: string },
): readonly string[] {
  const off = OFF[look].light;
  const gleams = glints(ring, from, to, least)?.filter(
    ({ middle, reach }) =>
      !isHidden(ring, Math.max(from, middle - reach), Math.min(to, middle + reach), balls),
  );
  if (gleams)
    return gleams.map((gleam) => filled(gleamPath(ring, gleam, strip, { from, to, bulges, off }), tone));
  if (bulges) return [filled(stripPath(ring, strip, [from, to], off), tone)];
  return [
    stroked(curvePath(lightLine(ring, strip.out), from, to, off), tone, 2 * ring.half * strip.wide, FLAT),
  ];
}

/** The bright lines of a wire that is drawn in strokes, where they reach in between the arc's own angles. */
function brightLines(
  ring: SeenRing,
  { tones, look, balls }: Paint,
  { from, to, own }: LightWishes,
): readonly string[] {
  // Its round ends reach just beyond the broad light, which lies over the neighbour's line.
  const end = to - from < 2 * Math.PI ? ring.half * LIGHT.glint - 1.2 : 0;
  const [first, last] = [from + end * angleOf(ring, from, 2), to - end * angleOf(ring, to, 2)];
  const lines = glints(ring, ...own, GLINTS)?.map(
    ({ middle, reach }) => [Math.max(first, middle - reach), Math.min(last, middle + reach)] as const,
  );
  return (lines ?? [[first, last] as const])
    .filter(([a, b]) => !isHidden(ring, a, b, balls))
    .map(([a, b]) => {
      const path = curvePath(lightLine(ring, LIGHT.out), a, b, OFF[look].light);
      return stroked(path, tones.glint, 2 * ring.half * LIGHT.glint, '');
    });
}

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
  // The round end of a broad outline then lies within the outline of the wire that it goes under.
  const round = (ring: number): number =>
    Math.min(MOST_ROUND, (EDGES[rings[ring]?.role ?? 'plain'].width - EDGES.plain.width) / 2);
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
