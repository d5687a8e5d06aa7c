/** Paints a scene of rings on a canvas, seen from a view. */
import { type Scene, sideEntered } from '#lib/weave/picture/draw-scene.ts';
import { lineTone, type Tones, tonesOf } from '#lib/weave/picture/look.ts';
import { nearestPoint, type WirePiece, wirePieces } from '#lib/weave/picture/turned-scene.ts';
import type { View } from '#lib/weave/picture/view.ts';
import { dot } from '#lib/weave/space/vector.ts';

const INK = '#16130e';
const PAPER = '#fffdf8';
/** Outline by role, in wires; and after how many pieces it takes turns with none. */
const EDGES = {
  plain: { width: 0.09, dash: 0 },
  new: { width: 0.2, dash: 0 },
  carried: { width: 0.19, dash: 3 },
  entered: { width: 0.15, dash: 1 },
} as const;

export interface PaintWishes {
  readonly view: View;
  /** Picture units to one unit of the scene. */
  readonly scale: number;
  /** Middle of the picture. */
  readonly middle: readonly [number, number];
  readonly piecesARing: number;
}

/** Fills a canvas that is `width` by `height` in its own units. */
export function paintScene(
  canvas: CanvasRenderingContext2D,
  scene: Scene,
  { view, scale, middle, piecesARing }: PaintWishes,
): void {
  canvas.save();
  canvas.setTransform(scale, 0, 0, scale, middle[0], middle[1]);
  const tones = new Map<string, Tones>();
  for (const { colour } of scene.rings) if (!tones.has(colour)) tones.set(colour, tonesOf(colour));
  for (const piece of wirePieces(scene, view, piecesARing)) paintPiece(canvas, scene, piece, tones);
  for (const arrow of scene.arrows) {
    const { at, way } = arrow;
    paintArrow(canvas, scene, {
      at: [dot(view.right, at), -dot(view.up, at)],
      way: [dot(view.right, way), -dot(view.up, way)],
      isFromBack: sideEntered(scene.rings, arrow, view) === 'back',
    });
  }
  for (const ring of scene.rings)
    if (ring.label !== '')
      paintLabel(canvas, ring.label, ring.role, nearestPoint(ring, view), ring.ring.wire);
  canvas.restore();
}

function paintPiece(
  canvas: CanvasRenderingContext2D,
  scene: Scene,
  { ring: index, index: at, from, to, light, isAtEye }: WirePiece,
  tones: ReadonlyMap<string, Tones>,
): void {
  const ring = scene.rings[index];
  const tone = ring && tones.get(ring.colour);
  if (!ring || !tone) return;
  const { role } = ring;
  const { wire } = ring.ring;
  const edge = EDGES[role];
  // A little longer than it is, so that no gap shows between pieces.
  const long = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1;
  const over = (0.05 * wire) / long;
  const [dx, dy] = [(to[0] - from[0]) * over, (to[1] - from[1]) * over];
  const line = (x: number, y: number): void => {
    canvas.beginPath();
    canvas.moveTo(from[0] - dx + x, from[1] - dy + y);
    canvas.lineTo(to[0] + dx + x, to[1] + dy + y);
    canvas.stroke();
  };
  const isGap = edge.dash > 0 && Math.floor(at / edge.dash) % 2 === 1;
  canvas.lineCap = 'butt';
  canvas.strokeStyle = role === 'plain' || isGap ? tone.edge : INK;
  canvas.lineWidth = wire + 2 * (isGap ? EDGES.plain.width : edge.width) * wire - 0.09 * wire;
  line(0, 0);
  // Where the wire runs at the eye short flat pieces would show; round ends of one tone do not.
  if (isAtEye) canvas.lineCap = 'round';
  canvas.strokeStyle = tone.shade;
  canvas.lineWidth = 0.91 * wire;
  line(0, 0);
  if (isAtEye) return;
  canvas.strokeStyle = tone.body;
  canvas.lineWidth = 0.66 * wire;
  line(-0.06 * wire * light, -0.09 * wire * light);
  if (ring.line && (ring.line === 'whole' || at % 3 > 0)) {
    canvas.strokeStyle = lineTone(tone);
    canvas.lineWidth = 0.13 * wire;
    line(0, 0);
  }
  if (light < 0.72) return;
  canvas.strokeStyle = tone.glint;
  canvas.lineWidth = 0.15 * wire;
  line(-0.13 * wire, -0.2 * wire);
}

/** As in the still pictures: a dot at the foot where it comes towards the eye, a cross where it goes away. */
function paintArrow(
  canvas: CanvasRenderingContext2D,
  { rings }: Scene,
  {
    at: [x, y],
    way,
    isFromBack,
  }: {
    readonly at: readonly [number, number];
    readonly way: readonly [number, number];
    readonly isFromBack: boolean;
  },
): void {
  const wire = rings.reduce((sum, { ring }) => sum + ring.wire, 0) / Math.max(1, rings.length);
  const long = Math.hypot(...way);
  const [dx, dy] = long < 1e-6 ? [0, -1] : [way[0] / long, way[1] / long];
  const reach = 1.05 * wire;
  const [x0, y0, x1, y1] = [x - dx * reach, y - dy * reach, x + dx * reach, y + dy * reach];
  const head = 0.5 * wire;
  const draw = (ink: string, more: number): void => {
    canvas.strokeStyle = ink;
    canvas.fillStyle = ink;
    canvas.lineCap = 'round';
    canvas.lineJoin = 'round';
    canvas.lineWidth = 0.18 * wire + more;
    canvas.beginPath();
    canvas.moveTo(x0, y0);
    canvas.lineTo(x1 - dx * head, y1 - dy * head);
    canvas.stroke();
    canvas.beginPath();
    canvas.moveTo(x1, y1);
    canvas.lineTo(x1 - dx * head - dy * 0.33 * wire, y1 - dy * head + dx * 0.33 * wire);
    canvas.lineTo(x1 - dx * head + dy * 0.33 * wire, y1 - dy * head - dx * 0.33 * wire);
    canvas.closePath();
    canvas.fill();
    if (more > 0) canvas.stroke();
  };
  draw(PAPER, 0.22 * wire);
  draw(INK, 0);
  canvas.lineWidth = 0.1 * wire;
  canvas.fillStyle = PAPER;
  canvas.beginPath();
  canvas.arc(x0, y0, 0.28 * wire, 0, 2 * Math.PI);
  canvas.fill();
  canvas.stroke();
  canvas.beginPath();
  if (isFromBack) {
    canvas.fillStyle = INK;
    canvas.arc(x0, y0, 0.1 * wire, 0, 2 * Math.PI);
    canvas.fill();
    return;
  }
  const r = 0.18 * wire;
  canvas.moveTo(x0 - r, y0 - r);
  canvas.lineTo(x0 + r, y0 + r);
  canvas.moveTo(x0 - r, y0 + r);
  canvas.lineTo(x0 + r, y0 - r);
  canvas.stroke();
}

function paintLabel(
  canvas: CanvasRenderingContext2D,
  text: string,
  role: Scene['rings'][number]['role'],
  [x, y]: readonly [number, number],
  wire: number,
): void {
  const half = (0.43 + 0.2 * (text.length - 1)) * wire;
  const high = 0.47 * wire;
  canvas.beginPath();
  if (role === 'carried') canvas.rect(x - half, y - high, 2 * half, 2 * high);
  else canvas.roundRect(x - half, y - high, 2 * half, 2 * high, high);
  canvas.fillStyle = role === 'new' ? INK : PAPER;
  canvas.fill();
  canvas.strokeStyle = INK;
  canvas.lineWidth = 0.08 * wire;
  if (role === 'entered') canvas.setLineDash([0.13 * wire, 0.13 * wire]);
  canvas.stroke();
  canvas.setLineDash([]);
  canvas.fillStyle = role === 'new' ? PAPER : INK;
  canvas.font = `700 ${0.75 * wire}px sans-serif`;
  canvas.textAlign = 'center';
  canvas.textBaseline = 'middle';
  canvas.fillText(text, x, y + 0.04 * wire);
}
