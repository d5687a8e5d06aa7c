/**
 * Half Persian 3-in-1 of 1/4 in and 3/16 in rings, wires from 0.8 to 1.6 mm:
 * what is possible in each alternation. No outside table exists; shapes that
 * are found are examined by other means, and what is refused must be refused
 * for every thicker wire too.
 */
import { expect, test } from 'vitest';
import { MM_PER_INCH } from '#lib/rings/gauges.ts';
import { alternationsOf } from '#lib/weave/space/alternations.ts';
import { examineChain } from '#tests/support/check-in-space.ts';

const WIRES = process.env['WEAVE_ALL'] ? [0.8, 0.9, 1, 1.1, 1.2, 1.3, 1.4, 1.5, 1.6] : [0.8, 1, 1.2, 1.4];

test('thicker wire never makes possible what thinner wire could not', () => {
  const refused = new Map<string, number>();
  for (const wire of WIRES)
    for (const { alternation, shape } of alternationsOf(
      'half-persian-3-in-1',
      { inner: MM_PER_INCH / 4, wire },
      { inner: (3 * MM_PER_INCH) / 16, wire },
    )) {
      if (shape.ok) {
        expect(refused.has(alternation), `${alternation} at ${wire}`).toBe(false);
        const examined = examineChain(shape.value.cell, 36);
        expect(examined.least).toBeGreaterThanOrEqual(0.9999);
        expect(examined.links).toHaveLength(6);
      } else {
        if (shape.fault.code !== 'wires-too-thick') throw new Error(shape.fault.code);
        expect(shape.fault.wiresBy).toBeLessThan(1);
        // The thicker the wire, the more of it must go.
        expect(shape.fault.wiresBy).toBeLessThan(refused.get(alternation) ?? 1);
        refused.set(alternation, shape.fault.wiresBy);
      }
    }
  expect([...refused.keys()]).toContain('along the rows, against each other');
});
