/** What is turned by hand: views stay square, and wherever two wires cross, the nearer one is painted later. */
import { expect, test } from 'vitest';
import type { SceneRing } from '#lib/weave/picture/draw-scene.ts';
import { nearestPoint, turnedBy, type WirePiece, wirePieces } from '#lib/weave/picture/turned-scene.ts';
import { type View, viewAt } from '#lib/weave/picture/view.ts';
import { inCell } from '#lib/weave/space/round-ring.ts';
import { shapeOfWeave } from '#lib/weave/space/shape-of-weave.ts';
import { cross, dot, type Vector } from '#lib/weave/space/vector.ts';

const TURNS = [
  [0, 0],
  [35, 0],
  [180, 0],
  [-70, 40],
  [15, -85],
] as const;

function sceneOf(id: string, aspectRatio: number): readonly SceneRing[] {
  const shape = shapeOfWeave(id, [{ inner: aspectRatio, wire: 1 }]);
  if (!shape.ok) throw new Error(shape.fault.code);
  const { cell } = shape.value;
  return [0, 1, 2]
    .flatMap((k) => cell.rings.map((ring) => inCell(ring, cell, k)))
    .map((ring) => ({ ring, colour: '#b8703f', role: 'plain' as const, label: '' }));
}

const close = (a: Vector, b: Vector): void => {
  a.forEach((part, axis) => {
    expect(part).toBeCloseTo(b[axis] ?? Number.NaN, 9);
  });
};

test('a turned view stays square and right-handed; half a roll shows the back', () => {
  const first = viewAt(20);
  close(turnedBy(first, 0, 0).toward, first.toward);
  close(turnedBy(first, 180, 0).toward, first.toward.map((part) => -part) as unknown as Vector);
  close(turnedBy(first, 0, 90).toward, first.right);
  for (const [roll, swing] of TURNS) {
    const { right, up, toward } = turnedBy(first, roll, swing);
    close(cross(right, up), toward);
    expect(dot(right, right)).toBeCloseTo(1, 12);
    expect(dot(right, up)).toBeCloseTo(0, 12);
  }
});

/** How far along each of two pieces they cross in the picture; null where they do not. */
function crossing(a: WirePiece, b: WirePiece): readonly [number, number] | null {
  const [dx, dy] = [a.to[0] - a.from[0], a.to[1] - a.from[1]];
  const [ex, ey] = [b.to[0] - b.from[0], b.to[1] - b.from[1]];
  const det = dx * ey - dy * ex;
  if (Math.abs(det) < 1e-12) return null;
  const [fx, fy] = [b.from[0] - a.from[0], b.from[1] - a.from[1]];
  const [t, s] = [(fx * ey - fy * ex) / det, (fx * dy - fy * dx) / det];
  return t >= 0 && t < 1 && s >= 0 && s < 1 ? [t, s] : null;
}

test.each([
  ['byzantine', 3.6],
  ['half-persian-3-in-1', 4.3],
  ['jens-pind-3', 3],
] as const)('%s: the nearer wire is painted over the further one at every crossing', (id, ratio) => {
  const rings = sceneOf(id, ratio);
  /** Depth of a ring at the point of the picture where one of its pieces is crossed, from the ring itself. */
  const depthAt = (piece: WirePiece, view: View, part: number): number => {
    const ring = rings[piece.ring]?.ring;
    if (!ring) throw new Error('no ring');
    const x = piece.from[0] + part * (piece.to[0] - piece.from[0]);
    const y = -(piece.from[1] + part * (piece.to[1] - piece.from[1]));
    const [nx, ny, nz] = [
      dot(ring.normal, view.right),
      dot(ring.normal, view.up),
      dot(ring.normal, view.toward),
    ];
    // Of the ring's plane there; where it is seen from its edge, the piece's own depth must do.
    if (Math.abs(nz) < 0.2) return piece.near;
    const [ox, oy] = [x - dot(ring.centre, view.right), y - dot(ring.centre, view.up)];
    return dot(ring.centre, view.toward) - (nx * ox + ny * oy) / nz;
  };
  let seen = 0;
  for (const [roll, swing] of TURNS) {
    const view = turnedBy(viewAt(15), roll, swing);
    const pieces = wirePieces({ rings }, view, 40);
    expect(pieces).toHaveLength(40 * rings.length);
    pieces.forEach((under, at) => {
      for (const over of pieces.slice(at + 1)) {
        if (over.ring === under.ring) continue;
        const parts = crossing(under, over);
        if (!parts) continue;
        seen += 1;
        expect(depthAt(over, view, parts[1])).toBeGreaterThan(depthAt(under, view, parts[0]));
      }
    });
  }
  expect(seen).toBeGreaterThan(30);
});

test('a label stands on its ring, at the point nearest to the eye', () => {
  const ring: SceneRing = {
    ring: { centre: [1, 2, 3], normal: [1, 0, 0], radius: 2, wire: 1 },
    colour: '#b8703f',
    role: 'new',
    label: '1',
  };
  // Looked at along z: the ring's nearest point is its centre moved by the radius along z, so seen at its centre.
  const [x, y] = nearestPoint(ring, viewAt(0));
  expect(x).toBeCloseTo(1, 9);
  expect(y).toBeCloseTo(-2, 9);
});
