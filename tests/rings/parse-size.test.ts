import fc from 'fast-check';
import { expect, test } from 'vitest';
import { GAUGE_SYSTEMS } from '#lib/rings/gauges.ts';
import { formatSize, namesSystem, parseSize, type SizeOf } from '#lib/rings/parse-size.ts';

test.each<[string, SizeOf, string, number]>([
  ['18 SWG', 'wire', '18 SWG', 1.2192],
  ['18swg', 'wire', '18 SWG', 1.2192],
  ['SWG 18', 'wire', '18 SWG', 1.2192],
  ['18 s.w.g.', 'wire', '18 SWG', 1.2192],
  ['18 gauge AWG', 'wire', '18 AWG', 1.0237],
  ['18g awg', 'wire', '18 AWG', 1.0237],
  ['No. 18 AWG', 'wire', '18 AWG', 1.0237],
  ['18 B&S', 'wire', '18 AWG', 1.0237],
  ['2/0 AWG', 'wire', '2/0 AWG', 9.2658],
  ['00 awg', 'wire', '2/0 AWG', 9.2658],
  ['1/4"', 'inner diameter', '1/4 in', 6.35],
  ['1/4 in', 'inner diameter', '1/4 in', 6.35],
  ['¼ inch', 'inner diameter', '1/4 in', 6.35],
  ['1 1/4 in', 'inner diameter', '1 1/4 in', 31.75],
  ['1-1/4″', 'inner diameter', '1 1/4 in', 31.75],
  ['6.35mm', 'inner diameter', '6.35 mm', 6.35],
  ['6,35 mm', 'inner diameter', '6.35 mm', 6.35],
  ['0.047 in', 'wire', '0.047 in', 1.1938],
  ['.047"', 'wire', '0.047 in', 1.1938],
  ['47 thou', 'wire', '0.047 in', 1.1938],
  ['15.7 cm', 'length', '157 mm', 157],
  ['6 1/2 in', 'length', '6 1/2 in', 165.1],
])('%s as %s is %s, %f mm', (typed, of, stated, mm) => {
  expect(parseSize(typed, of)).toEqual({ ok: true, value: { stated, mm } });
});

test.each<[string, SizeOf, readonly string[]]>([
  ['18', 'wire', ['18 SWG', '18 AWG']],
  ['18 gauge', 'wire', ['18 SWG', '18 AWG']],
  ['18ga', 'wire', ['18 SWG', '18 AWG']],
  ['#18', 'wire', ['18 SWG', '18 AWG']],
  ['1.2', 'wire', ['1.2 mm']],
  ['0.047', 'wire', ['0.047 in']],
  ['47 mil', 'wire', ['0.047 in', '47 mm']],
  ['4.2', 'inner diameter', ['4.2 mm']],
  ['1/4', 'inner diameter', ['1/4 in']],
  ['157', 'length', ['157 mm']],
  ['6.5', 'length', ['6.5 mm', '6.5 in']],
])('%s as %s asks which is meant', (typed, of, choices) => {
  const answer = parseSize(typed, of);
  expect(answer).toMatchObject({ ok: false, fault: { code: 'size-needs-system', text: typed } });
  if (!answer.ok && answer.fault.code === 'size-needs-system')
    expect(answer.fault.choices.map((c) => c.stated)).toEqual(choices);
});

test.each<[string, SizeOf, string]>([
  ['', 'wire', 'size-empty'],
  ['   ', 'wire', 'size-empty'],
  ['big', 'wire', 'size-not-read'],
  ['1/0 in', 'inner diameter', 'size-not-read'],
  ['0/4 in', 'inner diameter', 'size-not-read'],
  ['-3 mm', 'wire', 'size-not-read'],
  ['1.2 mm 18 SWG', 'wire', 'size-not-read'],
  ['90 SWG', 'wire', 'gauge-not-known'],
  ['50 AWG', 'wire', 'gauge-not-known'],
  ['0 mm', 'wire', 'size-out-of-range'],
  ['120 mm', 'wire', 'size-out-of-range'],
  ['9999 mm', 'inner diameter', 'size-out-of-range'],
])('%j as %s is refused with %s', (typed, of, code) => {
  expect(parseSize(typed, of)).toMatchObject({ ok: false, fault: { code } });
});

test('what is kept as text reads back as the same size', () => {
  const stated = fc.oneof(
    fc
      .record({ system: fc.constantFrom(...GAUGE_SYSTEMS), n: fc.integer({ min: 0, max: 36 }) })
      .map(({ system, n }) => `${n} ${system}`),
    fc.integer({ min: 500, max: 190_000 }).map((n) => `${n / 10_000} mm`),
    fc
      .record({ n: fc.integer({ min: 1, max: 63 }), d: fc.constantFrom(64, 128) })
      .map(({ n, d }) => `${n}/${d} in`),
  );
  fc.assert(
    fc.property(stated, (text) => {
      const of = 'wire';
      const first = parseSize(text, of);
      if (!first.ok) return first.fault.code === 'size-out-of-range';
      const second = parseSize(first.value.stated, of);
      expect(second).toEqual(first);
      return namesSystem(first.value.stated) && first.value.mm > 0;
    }),
  );
});

test('any text is answered, never thrown at', () => {
  fc.assert(
    fc.property(fc.string(), fc.constantFrom<SizeOf>('wire', 'inner diameter', 'length'), (text, of) => {
      const answer = parseSize(text, of);
      return answer.ok ? answer.value.mm > 0 : answer.fault.code.length > 0;
    }),
  );
});

test('a size is said with its millimetres, once', () => {
  expect(formatSize({ stated: '18 SWG', mm: 1.2192 })).toBe('18 SWG (1.2192 mm)');
  expect(formatSize({ stated: '1.2 mm', mm: 1.2 })).toBe('1.2 mm');
});
