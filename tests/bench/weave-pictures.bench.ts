/**
 * What a picture costs: reading the pitch of a stored weave, finding its taut
 * shape, and a picture of 12 repeats with its size; the picture beside a plain
 * loop over every pair of points of all rings, in the same run.
 * `node tests/bench/weave-pictures.bench.ts`.
 */
import { gzipSync } from 'node:zlib';
import { drawRings } from '#lib/weave/picture/draw-rings.ts';
import { viewAt } from '#lib/weave/picture/view.ts';
import { pitchAt } from '#lib/weave/space/known-shape.ts';
import { inCell, type RoundRing } from '#lib/weave/space/round-ring.ts';
import { SETTLED_SHAPES } from '#lib/weave/space/settled-shapes.ts';
import { shapeOfWeave } from '#lib/weave/space/shape-of-weave.ts';

const medianMs = (run: () => unknown, times = 9): number => {
  run();
  const spent = Array.from({ length: times }, () => {
    const before = performance.now();
    run();
    return performance.now() - before;
  });
  return spent.sort((a, b) => a - b)[Math.floor(times / 2)] ?? Number.NaN;
};

/** 72 points a ring, each compared with each: the least that a drawing without thought would do. */
function loopOverPoints(rings: readonly RoundRing[]): number {
  const points = rings.flatMap(({ centre, radius }) =>
    Array.from({ length: 72 }, (_, i) => [
      centre[0] + radius * Math.cos((i * Math.PI) / 36),
      centre[1] + radius * Math.sin((i * Math.PI) / 36),
    ]),
  );
  const x = Float64Array.from(points, ([px = 0]) => px);
  const y = Float64Array.from(points, ([, py = 0]) => py);
  let near = 0;
  for (let i = 0; i < x.length; i++)
    for (let j = 0; j < i; j++) {
      const dx = (x[i] as number) - (x[j] as number);
      const dy = (y[i] as number) - (y[j] as number);
      if (dx * dx + dy * dy < 1) near += 1;
    }
  return near;
}

console.log(
  'weave, aspect ratio, rings: pitch read, taut shape, picture of 12 repeats (ms), kB, kB compressed, times the plain loop',
);
for (const { id, shapes } of SETTLED_SHAPES) {
  const aspectRatio = Math.round((shapes[5]?.aspectRatio ?? 4) * 10 + 1) / 10;
  const shape = shapeOfWeave(id, [{ inner: aspectRatio, wire: 1 }]);
  if (!shape.ok) throw new Error(`${id}: ${shape.fault.code}`);
  const { cell } = shape.value;
  const cells = cell.pitch > 1000 ? 1 : 12;
  const rings = Array.from({ length: cells }, (_, k) =>
    cell.rings.map((ring) => ({ ring: inCell(ring, cell, k), colour: '#b8703f', role: 'plain' as const })),
  ).flat();
  const picture = (): string => drawRings(rings, viewAt(30)).elements.join('');
  const plain = medianMs(() => loopOverPoints(rings.map(({ ring }) => ring)), 3);
  const drawn = medianMs(picture, 5);
  const svg = picture();
  const numbers = [
    medianMs(() => pitchAt(id, aspectRatio)).toFixed(3),
    medianMs(() => shapeOfWeave(id, [{ inner: aspectRatio, wire: 1 }]), 3).toFixed(1),
    drawn.toFixed(1),
    (svg.length / 1000).toFixed(1),
    (gzipSync(svg).length / 1000).toFixed(1),
    (drawn / plain).toFixed(2),
  ];
  console.log(`${id}, ${aspectRatio}, ${rings.length}: ${numbers.join(', ')}`);
}
