/**
 * Half Persian 3-in-1 of 1/4 in and 3/16 in rings, wires from 0.8 to 1.6 mm:
 * what is possible in each alternation. No outside table exists; shapes that
 * are found are examined by other means, and what is refused must be refused
 * for every thicker wire too.
 */
import { expect, test } from 'vitest';
import { MM_PER_INCH } from '#lib/rings/gauges.ts';
import {
  ALTERNATION_NAMES,
  alternationOf,
  alternationsOf,
  atWire,
  thickestWire,
} from '#lib/weave/space/alternations.ts';
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

const INNER = { large: MM_PER_INCH / 4, small: (3 * MM_PER_INCH) / 16 };
/** A wire of the trade that goes and a thicker one that does not, as found above. */
const BETWEEN = {
  'row by row': [1.1, 1.2],
  'along the rows, alike': [1.3, 1.4],
  'along the rows, against each other': [0.9, 1],
} as const;

test.each(ALTERNATION_NAMES)(
  '%s: the thickest wire makes a sound piece, and what is said of thicker wire holds',
  (alternation) => {
    const [goes, not] = BETWEEN[alternation];
    const wire = thickestWire('half-persian-3-in-1', alternation, INNER, [goes, not]);
    const of = (thick: number) =>
      alternationOf('half-persian-3-in-1', alternation, {
        large: { inner: INNER.large, wire: thick },
        small: { inner: INNER.small, wire: thick },
      });
    const shape = of(wire);
    if (!shape.ok) throw new Error(shape.fault.code);
    expect(wire).toBeGreaterThanOrEqual(goes);
    const examined = examineChain(shape.value.cell, 36);
    expect(examined.least).toBeGreaterThanOrEqual(0.9999);
    expect(examined.links).toHaveLength(6);
    // Nearly taut at its thickest: a wire that is a little thicker has nowhere to go.
    expect(atWire('half-persian-3-in-1', alternation, INNER, wire * 1.01).state).toBe('too-thick');
    // "At least so much thinner": the number never promises more than is found.
    const thick = of(1.6);
    if (thick.ok || thick.fault.code !== 'wires-too-thick') throw new Error('1.6 mm goes');
    expect(1.6 * thick.fault.wiresBy).toBeGreaterThan(wire * 0.995);
    expect(1.6 * thick.fault.wiresBy).toBeLessThan(wire * 1.06);
  },
);
