/**
 * Draws bent wire: tubes round lines in space, as SVG. Each tube is cut into
 * short pieces, the pieces are painted from the farthest to the nearest, and
 * each piece is shaded by how its wire lies to the light. It knows no weave.
 */

export type Point = readonly [x: number, y: number, z: number];

/** Four tones of a metal, from edge to highlight, `#rrggbb`. */
export interface Metal {
  readonly edge: string;
  readonly dark: string;
  readonly light: string;
  readonly shine: string;
}

/** Copper, blue and steel as in app/design.css: warm metal on warm paper. */
export const METALS = {
  copper: { edge: '#4a1f0a', dark: '#8a3f17', light: '#d98850', shine: '#ffe3c6' },
  blue: { edge: '#0d2446', dark: '#1f4f92', light: '#5b93d6', shine: '#e2f0ff' },
  steel: { edge: '#33363a', dark: '#6d7378', light: '#c3c9cd', shine: '#ffffff' },
  paper: { edge: '#5c554a', dark: '#857a68', light: '#ddd3c2', shine: '#fffdf8' },
} as const satisfies Record<string, Metal>;

export interface Tube {
  /** The line through the wire's middle; the first point comes again at the end where it closes. */
  readonly line: readonly Point[];
  readonly radius: number;
  readonly metal: Metal;
  /** 0 unseen to 1 solid. */
  readonly opacity?: number;
  /** Drawn with a pale rim, so that the eye finds what is new. */
  readonly marked?: boolean;
}

/** How space is looked at: turned about x, then about y, then scaled and moved on the sheet. */
export interface View {
  readonly turnX: number;
  readonly turnY: number;
  readonly scale: number;
  readonly x: number;
  readonly y: number;
}

interface Piece {
  readonly depth: number;
  readonly from: Point;
  readonly to: Point;
  readonly tube: Tube;
}

/** A circle in space, or the part of one that is left when it is opened by `gap` radians. */
export function circle(
  centre: Point,
  normal: Point,
  radius: number,
  gap = 0,
  pieces = 56,
  gapAt = 0,
): Point[] {
  const n = unit(normal);
  const u = unit(Math.abs(n[0]) < 0.9 ? cross(n, [1, 0, 0]) : cross(n, [0, 1, 0]));
  const v = cross(n, u);
  return Array.from({ length: pieces + 1 }, (_, k) => {
    const angle = gapAt + gap / 2 + ((2 * Math.PI - gap) * k) / pieces;
    const [c, s] = [Math.cos(angle) * radius, Math.sin(angle) * radius];
    return [
      centre[0] + c * u[0] + s * v[0],
      centre[1] + c * u[1] + s * v[1],
      centre[2] + c * u[2] + s * v[2],
    ] as const;
  });
}

/** The tubes as SVG elements, the nearest last. */
export function drawTubes(tubes: readonly Tube[], view: View): string {
  const pieces = tubes.flatMap((tube) => piecesOf(tube, view));
  pieces.sort((a, b) => a.depth - b.depth);
  return pieces.map((piece) => drawPiece(piece, view.scale)).join('');
}

function piecesOf(tube: Tube, view: View): Piece[] {
  const seen = tube.line.map((point) => look(point, view));
  return seen.slice(1).map((to, k) => {
    const from = seen[k] ?? to;
    return { depth: (from[2] + to[2]) / 2, from, to, tube };
  });
}

function look([x, y, z]: Point, view: View): Point {
  const [cx, sx] = [Math.cos(view.turnX), Math.sin(view.turnX)];
  const [cy, sy] = [Math.cos(view.turnY), Math.sin(view.turnY)];
  const [y1, z1] = [y * cx - z * sx, y * sx + z * cx];
  const [x2, z2] = [x * cy + z1 * sy, -x * sy + z1 * cy];
  return [view.x + x2 * view.scale, view.y - y1 * view.scale, z2 * view.scale];
}

/** Where the light comes from on the sheet: upper left, a little towards the viewer. */
const LIGHT: Point = unit([-0.45, -0.75, 0.6]);

function drawPiece({ from, to, tube }: Piece, scale: number): string {
  const along: Point = [to[0] - from[0], to[1] - from[1], to[2] - from[2]];
  const flat = Math.hypot(along[0], along[1]) || 1;
  const [ux, uy] = [along[0] / flat, along[1] / flat];
  const width = 2 * tube.radius * scale;
  // The side of the wire that the light falls on, and how squarely.
  const towards = LIGHT[0] * -uy + LIGHT[1] * ux;
  // In tenths: a drawing with few tones is a small file.
  const lit = Math.round(10 * Math.sqrt(Math.max(0, 1 - dot(unit(along), LIGHT) ** 2))) / 10;
  const [ox, oy] = [-uy * towards, ux * towards];
  // Pieces reach into their neighbours: a bend would leave gaps on its outer side.
  const at = (shift: number, more = 0.8) => {
    const grow = width * 0.07 + more;
    const [dx, dy] = [ox * shift * width, oy * shift * width];
    return (
      `M${fixed(from[0] + dx - ux * grow)} ${fixed(from[1] + dy - uy * grow)}` +
      `L${fixed(to[0] + dx + ux * grow)} ${fixed(to[1] + dy + uy * grow)}`
    );
  };
  const { metal } = tube;
  const rim = Math.max(1.4, width * 0.07);
  const strokes = [
    tube.marked ? stroke(at(0, 0), '#fffdf8', width + 2 * rim + 5) : '',
    stroke(at(0, 0), metal.edge, width + 2 * rim),
    stroke(at(0), mix(metal.edge, metal.dark, 0.35 + 0.65 * lit), width),
    stroke(at(0.13), mix(metal.dark, metal.light, lit * lit), width * 0.6),
    stroke(at(0.2), mix(metal.light, metal.shine, lit ** 5), width * 0.24),
  ];
  const body = strokes.join('');
  const opacity = tube.opacity ?? 1;
  return opacity >= 1 ? body : `<g opacity="${opacity.toFixed(2)}">${body}</g>`;
}

const stroke = (d: string, colour: string, width: number): string =>
  `<path d="${d}" stroke="${colour}" stroke-width="${fixed(width)}"/>`;

const fixed = (value: number): string => String(Math.round(value * 10) / 10);

/** A colour between two, `share` of the way to the second. */
export function mix(from: string, to: string, share: number): string {
  const part = (text: string, k: number) => Number.parseInt(text.slice(1 + 2 * k, 3 + 2 * k), 16);
  const between = [0, 1, 2].map((k) => Math.round(part(from, k) + (part(to, k) - part(from, k)) * share));
  return `#${between.map((value) => value.toString(16).padStart(2, '0')).join('')}`;
}

const dot = (a: Point, b: Point): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Point, b: Point): Point => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
function unit(a: Point): Point {
  const length = Math.hypot(...a) || 1;
  return [a[0] / length, a[1] / length, a[2] / length];
}
