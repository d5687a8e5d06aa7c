import { describe, expect, test } from 'vitest';
import {
  bodyMmOf,
  formatMeasure,
  fragmentOfQuery,
  heldOfQuery,
  measureOfQuery,
} from '#lib/lesson/asked-measure.ts';

const rules = { easeMm: 20, thicknessMm: null };

describe('the measure that a pupil asks for', () => {
  // Inches: 25.4 mm exactly (international inch, 1959).
  test.each([
    ['165', 'mm', 165],
    ['16,5 cm', 'mm', 165],
    ['6.5', 'in', 165.1],
    ['6 1/2', 'in', 165.1],
    ['6½', 'in', 165.1],
    ['165 mm', 'in', 165],
  ] as const)('%s in %s is %d mm', (text, unit, mm) => {
    expect(bodyMmOf({ text, unit, of: 'wrist' }, rules)).toEqual({ ok: true, value: mm });
  });

  test('a finished length holds the ease', () => {
    expect(bodyMmOf({ text: '185', unit: 'mm', of: 'length' }, rules)).toEqual({ ok: true, value: 165 });
    expect(bodyMmOf({ text: '20', unit: 'mm', of: 'length' }, rules)).toEqual({
      ok: false,
      fault: { code: 'length-within-ease', allowanceMm: 20 },
    });
  });

  test.each(['', 'abc', '-5', '1e9', '<b>', '1/0'])('%j is not read', (text) => {
    expect(bodyMmOf({ text, unit: 'mm', of: 'wrist' }, rules).ok).toBe(false);
  });

  test('comes from the address, else from the first size', () => {
    const sizes = [{ id: 's', name: 'small', bodyMm: 150 }];
    expect(measureOfQuery({ measure: '6', unit: 'in', of: 'length' }, { sizes })).toEqual({
      text: '6',
      unit: 'in',
      of: 'length',
    });
    expect(measureOfQuery({}, { sizes })).toEqual({ text: '150', unit: 'mm', of: 'wrist' });
    expect(measureOfQuery({ measure: ' ' }, { sizes: [] })).toBeNull();
    expect([
      heldOfQuery({ held: '2' }),
      heldOfQuery({ held: '-1' }),
      heldOfQuery({ held: ['3', '4'] }),
    ]).toEqual([2, null, 3]);
    expect([fragmentOfQuery({ t: '62.5' }), fragmentOfQuery({ t: 'x' }), fragmentOfQuery({})]).toEqual([
      { startMs: 62_500, endMs: null },
      null,
      null,
    ]);
    expect(fragmentOfQuery({ t: '01:02.5,80' })).toEqual({ startMs: 62_500, endMs: 80_000 });
  });

  test('is written in mm or inches', () => {
    expect([formatMeasure(172.8, 'mm'), formatMeasure(165.1, 'in')]).toEqual(['172.8 mm', '6.5 in']);
  });
});
