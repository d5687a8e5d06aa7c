/** One arc of a wire as shapes and strokes: its shade, its lit part, and the light on it. */
import type { Arc } from './arcs.ts';
import type { BallsByPlace } from './balls-by-place.ts';
import { type Curve, curvePath, short } from './curve.ts';
import { isHidden } from './hidden-wire.ts';
import { lineTone, type Tones } from './look.ts';
import type { RingLine } from './ring-line.ts';
import { angleOf, type Layer, RUN_ON, ridgeEnds, skinEnds } from './run-on.ts';
import { beside, middleCurve, type SeenRing } from './seen-ring.ts';
import { dimmest, glints, lightLine } from './shine.ts';
import { gleamPath, partsByDepth, type Strip, stripMiddle, stripPath } from './skin.ts';

/** `simple` leaves out what is not seen from far away: a broad gleam with a bright line in it tells polished metal from enamel. */
export type Look = 'polished' | 'simple';

/** How far paths may leave what they draw, in picture units: wires and their outlines, and what is light alone. */
export const OFF: Readonly<Record<Look, { readonly wire: number; readonly light: number }>> = {
  polished: { wire: 0.12, light: 0.25 },
  simple: { wire: 0.4, light: 0.5 },
};

const stroked = (d: string, colour: string, width: number, cap: string): string =>
  `<path d="${d}" stroke="${colour}" stroke-width="${short(width)}"${cap}/>`;

const filled = (d: string, colour: string): string => `<path d="${d}" fill="${colour}"/>`;

const FLAT = ' stroke-linecap="butt"';

/** Radius of its tightest bend, in half wires, from which on a wire is drawn in strokes: their flat ends then do not reach beyond the bend's middle. */
const GENTLE = 1.1;

/** The lit part of a wire, and the lines of light on it: how far they are drawn towards the lamp, and half their width. */
const BODY: Strip = { out: 0.22, wide: 0.66 };
const SHADE: Strip = { out: 0, wide: 1 };
const LIGHT = { out: 0.5, wide: 0.36, glint: 0.13 } as const;

export interface Paint {
  readonly tones: Tones;
  readonly look: Look;
  readonly balls: BallsByPlace;
  /** Whether it is drawn as skin; else in strokes. */
  readonly isSkin: boolean;
  readonly line: RingLine | undefined;
}

/** Angle between a wire and the light along it from which on strokes would end too much askew to each other, and hairs of shade show beside their ends. */
const ASKEW = 0.12;

const ALONG = new Float64Array(4);
const LIT = new Float64Array(4);

/** The angle in the picture between two curves that were looked at. */
const between = (): number => {
  const [ax, ay, bx, by] = [ALONG[2], ALONG[3], LIT[2], LIT[3]] as [number, number, number, number];
  return Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by));
};

/** Whether strokes along a ring would show their ends where an arc of it begins: it is then drawn as skin all round, as the two do not meet. */
export function showsEnds(ring: SeenRing, { from, to }: Arc): boolean {
  if (ring.wide * ring.wide <= GENTLE * ring.half * ring.long) return true;
  if (to - from >= ring.count) return false;
  const angle = (from * 2 * Math.PI) / ring.count;
  middleCurve(ring)(angle, ALONG);
  lightLine(ring, BODY.out)(angle, LIT);
  return between() > ASKEW;
}

/** How far the lit part of a wire falls short at one of its edges, as its stroke ends askew to the wire's; picture units. */
function shortfall(ring: SeenRing, angle: number): number {
  middleCurve(ring)(angle, ALONG);
  const lit = stripMiddle(ring, BODY);
  lit(beside(ring, lit, angle), LIT);
  return Math.min(ring.half * BODY.wide * Math.tan(Math.min(1, between())), MOST_SHORT);
}

/** Picture units. */
const MOST_SHORT = 1.5;

/** From the bottom up. */
export const paintArc = (ring: SeenRing, arc: Arc, paint: Paint): readonly string[] =>
  paint.isSkin ? skinOf(ring, arc, paint) : strokesOf(ring, arc, paint);

const isWhole = (ring: SeenRing, { from, to }: Arc): boolean => to - from >= ring.count;

function skinOf(ring: SeenRing, arc: Arc, paint: Paint): readonly string[] {
  const { tones, balls } = paint;
  const off = OFF[paint.look];
  const step = (2 * Math.PI) / ring.count;
  const whole = isWhole(ring, arc);
  const [from, to] = whole ? [0, 2 * Math.PI] : [arc.from * step, arc.to * step];
  return partsByDepth(ring, from, to).flatMap(([a, b]) => {
    if (isHidden(ring, a, b, balls)) return [];
    const ends = (layer: Layer): readonly [number, number] => skinEnds(ring, [a, b], layer);
    const [first, last] = ends('gleam');
    return [
      filled(stripPath(ring, SHADE, ends('wire'), off.wire), tones.shade),
      filled(stripPath(ring, BODY, ends('light'), off.light), tones.body),
      ...light(ring, paint, { from: first, to: last, own: [a, b], bulges: true }),
      ...lineAlong(ring, paint, ridgeEnds(ring, [a, b])),
    ];
  });
}

function strokesOf(ring: SeenRing, arc: Arc, paint: Paint): readonly string[] {
  const { tones, balls } = paint;
  const off = OFF[paint.look];
  const step = (2 * Math.PI) / ring.count;
  const whole = isWhole(ring, arc);
  // The light on a whole ring is begun where there is least of it.
  const start = whole ? dimmest(ring) : arc.from * step;
  const stop = whole ? start + 2 * Math.PI : arc.to * step;
  if (!whole && isHidden(ring, start, stop, balls)) return [];
  const [before, after] = whole ? [0, 0] : [angleOf(ring, start, 2), angleOf(ring, stop, 2)];
  const [shortBefore, shortAfter] = whole ? [0, 0] : [shortfall(ring, start), shortfall(ring, stop)];
  const ends = (layer: Layer): readonly [number, number] => [
    start - (RUN_ON[layer] + (layer === 'wire' ? 0 : shortBefore)) * before,
    stop + (RUN_ON[layer] + (layer === 'wire' ? 0 : shortAfter)) * after,
  ];
  const lit = besidePath(ring, stripMiddle(ring, BODY), ends('light'), off.light);
  const wire = 2 * ring.half;
  const cap = whole ? '' : FLAT;
  const [first, last] = ends('gleam');
  return [
    stroked(curvePath(middleCurve(ring), ...ends('wire'), off.wire), tones.shade, wire, cap),
    stroked(lit, tones.body, wire * BODY.wide, cap),
    ...light(ring, paint, { from: first, to: last, own: [start, stop], bulges: false }),
    ...lineAlong(ring, paint, [first, last]),
  ];
}

/** A line along a ring, as path text, from beside one point of its wire to beside another. */
const besidePath = (
  ring: SeenRing,
  line: Curve,
  [from, to]: readonly [number, number],
  off: number,
): string => curvePath(line, beside(ring, line, from), beside(ring, line, to), off);

/** Where the wire is nearest to the eye. */
const RIDGE: Strip = { out: 0, wide: 0 };
/** Picture units. */
const LINE_WIDTH = 1.5;
const DASHES = ' stroke-dasharray="4 3"';

/** The line that tells a ring from others of like colour. */
function lineAlong(
  ring: SeenRing,
  { tones, look, line }: Paint,
  ends: readonly [number, number] | null,
): readonly string[] {
  if (!line || !ends) return [];
  const path = besidePath(ring, stripMiddle(ring, RIDGE), ends, OFF[look].light);
  return [stroked(path, lineTone(tones), LINE_WIDTH, line === 'dashed' ? FLAT + DASHES : FLAT)];
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
    stroked(
      besidePath(ring, lightLine(ring, strip.out), [from, to], off),
      tone,
      2 * ring.half * strip.wide,
      FLAT,
    ),
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
      const line = lightLine(ring, LIGHT.out);
      // Only where the arc itself ends its neighbour's line is met.
      const path = curvePath(
        line,
        a === first ? beside(ring, line, a) : a,
        b === last ? beside(ring, line, b) : b,
        OFF[look].light,
      );
      return stroked(path, tones.glint, 2 * ring.half * LIGHT.glint, '');
    });
}
