/** Down to the smallest aspect ratio that is told, shapes are found, and examined by other means. */
import { expect, test } from 'vitest';
import { SETTLED_SHAPES } from '#lib/weave/space/settled-shapes.ts';
import { shapeOfWeave } from '#lib/weave/space/shape-of-weave.ts';
import { findWeaveInSpace } from '#lib/weave/space/weave-in-space.ts';
import { examineChain } from '#tests/support/check-in-space.ts';

const CHAINS = SETTLED_SHAPES.filter(({ id }) => findWeaveInSpace(id)?.kind === 'chain');
const ABOVE = process.env['WEAVE_ALL'] ? [0, 0.0002, 0.001, 0.002, 0.005, 0.02] : [0, 0.002];

test.each(CHAINS.map((weave) => [weave.id, weave] as const))('%s', (id, { leastAspectRatio, shapes }) => {
  let pitch = 0;
  for (const above of ABOVE) {
    const shape = shapeOfWeave(id, [{ inner: leastAspectRatio + above, wire: 1 }]);
    if (!shape.ok) throw new Error(`${above}: ${shape.fault.code}`);
    const { cell } = shape.value;
    const { least, links } = examineChain(cell, 30);
    // A hair: the ratio is told to five places.
    expect(least).toBeGreaterThan(0.9999);
    expect(links).toHaveLength(shape.value.links.length);
    // Wider rings of a taut chain make it longer.
    expect(cell.pitch).toBeGreaterThanOrEqual(pitch - 1e-4);
    pitch = cell.pitch;
  }
  expect(pitch).toBeLessThan(
    1.001 * (shapes.find(({ aspectRatio }) => aspectRatio > leastAspectRatio + 0.02)?.pitch ?? 0),
  );
});
