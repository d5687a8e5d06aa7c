/**
 * Reads a picture of rings back from its SVG text alone, as a painter would
 * see it: strokes and filled shapes in order, flattened, each stroke covering
 * what lies within half its width. Knows nothing of how the picture was made.
 */

export interface Stroke {
  readonly colour: string;
  /** 0 for a shape that is filled. */
  readonly width: number;
  readonly isFlat: boolean;
  /** Rows of points, one a subpath. */
  readonly lines: readonly (readonly (readonly [number, number])[])[];
}

const attribute = (tag: string, name: string): string =>
  new RegExp(`\\b${name}="([^"]*)"`).exec(tag)?.[1] ?? '';

export const strokesIn = (svg: string): readonly Stroke[] =>
  [...svg.matchAll(/<path [^>]*>/g)].map(([tag]) => ({
    colour: attribute(tag, 'fill') || attribute(tag, 'stroke'),
    width: Number(attribute(tag, 'stroke-width')),
    isFlat: attribute(tag, 'stroke-linecap') === 'butt',
    lines: flattened(attribute(tag, 'd')),
  }));

function flattened(d: string): Stroke['lines'] {
  const lines: [number, number][][] = [];
  let line: [number, number][] = [];
  let [x, y] = [0, 0];
  let mirrored = [0, 0];
  for (const [, letter, numbers] of d.matchAll(/([Mcs])([^Mcs]*)/g)) {
    const n = [...(numbers ?? '').matchAll(/-?\d*\.?\d+/g)].map(([each]) => Number(each));
    if (letter === 'M') {
      [x = 0, y = 0] = n;
      mirrored = [0, 0];
      line = [[x, y]];
      lines.push(line);
      continue;
    }
    // SVG 1.1, 8.3.6: the first handle of an s mirrors the second one of the piece before it.
    const [a = 0, b = 0, c = 0, e = 0, f = 0, g = 0] = letter === 's' ? [...mirrored, ...n] : n;
    mirrored = [f - c, g - e];
    for (let i = 1; i <= 16; i++) {
      const t = i / 16;
      const s = 1 - t;
      line.push([
        x + 3 * s * s * t * a + 3 * s * t * t * c + t * t * t * f,
        y + 3 * s * s * t * b + 3 * s * t * t * e + t * t * t * g,
      ]);
    }
    x += f;
    y += g;
  }
  return lines;
}

/** Whether a stroke paints a point; flat ends cover nothing beyond them. */
export function covers({ width, isFlat, lines }: Stroke, x: number, y: number): boolean {
  if (width === 0) return windings(lines, x, y) !== 0;
  const reach = (width / 2) ** 2;
  return lines.some((line) =>
    line.some(([bx, by], i) => {
      const before = line[i - 1];
      if (!before) return false;
      const [ax, ay] = before;
      const [dx, dy] = [bx - ax, by - ay];
      const long = dx * dx + dy * dy;
      if (long === 0) return false;
      const t = ((x - ax) * dx + (y - ay) * dy) / long;
      if (isFlat && ((i === 1 && t < 0) || (i === line.length - 1 && t > 1))) return false;
      const k = Math.max(0, Math.min(1, t));
      return (ax + k * dx - x) ** 2 + (ay + k * dy - y) ** 2 <= reach;
    }),
  );
}

/** How often filled shapes go round a point, as SVG's `nonzero` asks. */
function windings(lines: Stroke['lines'], x: number, y: number): number {
  let count = 0;
  for (const line of lines)
    line.forEach(([ax, ay], i) => {
      const [bx, by] = line[(i + 1) % line.length] ?? [ax, ay];
      if (ay <= y === by <= y) return;
      if (ax + ((y - ay) / (by - ay)) * (bx - ax) > x) count += by > ay ? 1 : -1;
    });
  return count;
}
