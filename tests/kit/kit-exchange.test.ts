/** What differs between a kit that was packed and the kit as it is now: exact, in data and in the sentences alone. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { exchangeRows } from '#app/words/exchange-rows.ts';
import { kitDifferenceWords } from '#app/words/kit-difference-words.ts';
import { exchangeCsv } from '#lib/kit/exchange-csv.ts';
import { BATCH_RULES, batchOf } from '#lib/kit/kit-batch.ts';
import { differenceOf } from '#lib/kit/kit-difference.ts';
import { exchangeOf, packedOf } from '#lib/kit/kit-exchange.ts';
import { type KitList, kitFor } from '#lib/kit/kit-list.ts';
import type { Making } from '#lib/kit/making.ts';
import { aPlacement, aRingKind, aSample, byzantineMaking, someRules } from '#tests/support/a-making.ts';

const kitOf = (making: Making, bodyMm: number): KitList => {
  const kit = kitFor(making, bodyMm);
  if (!kit.ok) throw new Error(kit.fault.code);
  return kit.value;
};

const placements = fc.array(
  fc.record({
    opened: fc.constantFrom('a', 'b', 'c', null),
    carries: fc.array(
      fc.record({ ringKind: fc.constantFrom('a', 'b', 'c'), count: fc.integer({ min: 1, max: 4 }) }),
      {
        maxLength: 2,
      },
    ),
  }),
  { minLength: 1, maxLength: 4 },
);
const ringKinds = fc.tuple(fc.constantFrom(1, 1.2), fc.constantFrom('copper', 'blue')).map(([mm, colour]) =>
  ['a', 'b', 'c'].map((id) =>
    aRingKind({
      id,
      name: `${id} ring`,
      ...(id === 'c' ? { wire: { stated: `${mm} mm`, mm }, colour } : {}),
    }),
  ),
);
const material = fc.record({
  id: fc.constantFrom('m', 'n'),
  name: fc.constantFrom('clasp', 'toggle', 'cord'),
  quantityMilli: fc.constantFrom(500, 1000, 2000),
  unit: fc.constantFrom('piece', 'm'),
  per: fc.constantFrom('lesson' as const, 'repeat' as const, 'length' as const),
});
/** Makings whose ring kinds, sequence, materials and rules all vary under the same ids. */
const makings = fc
  .record({
    start: placements,
    repeat: placements,
    finishing: placements,
    ringKinds,
    spare: fc.integer({ min: 0, max: 30 }),
    materials: fc.uniqueArray(material, { selector: ({ id }) => id, maxLength: 2 }),
  })
  .map(
    ({ start, repeat, finishing, spare, materials, ...rest }): Making => ({
      ...byzantineMaking(),
      ...rest,
      start: start.map(aPlacement),
      repeat: repeat.map(aPlacement),
      finishing: finishing.map(aPlacement),
      materials: materials.map((one) => ({ ...one, kind: 'finding', massG: null, offer: null, note: '' })),
      sample: aSample({ perRepeatMm: 10 }),
      kitRules: someRules({ easeMm: 0, sparePercent: spare }),
    }),
  );
const measure = fc.integer({ min: 3, max: 20 }).map((n) => n * 10);

test('kits that were packed, and what is put in and taken out, make kits of now: each and all, to the ring', () => {
  fc.assert(
    fc.property(
      makings,
      makings,
      fc.array(fc.tuple(measure, fc.integer({ min: 1, max: 9 })), { minLength: 1, maxLength: 3 }),
      fc.constantFrom(...BATCH_RULES),
      (before, after, sizes, rule) => {
        const parts = sizes.map(([mm, times]) => ({
          name: String(mm),
          times,
          held: kitOf(before, mm),
          now: kitOf(after, mm),
        }));
        const lines = exchangeOf(parts, rule);
        parts.forEach((part, index) => {
          const bag = new Map([...packedOf(part.held, rule)].map(([key, { quantity }]) => [key, quantity]));
          for (const { key, each } of lines) bag.set(key, (bag.get(key) ?? 0) + (each[index] ?? 0));
          for (const [key, quantity] of bag) if (quantity === 0) bag.delete(key);
          expect(bag).toEqual(
            new Map([...packedOf(part.now, rule)].map(([key, { quantity }]) => [key, quantity])),
          );
        });
        // In all: as many rings and as much of everything as two picking sheets differ by.
        const sum = (side: 'held' | 'now') => {
          const batch = batchOf(
            parts.map((part) => ({ kit: part[side], times: part.times })),
            rule,
          );
          return batch.issued + batch.materials.reduce((all, line) => all + line.needMilli, 0);
        };
        expect(lines.reduce((all, { inAll }) => all + inAll, 0)).toBe(sum('now') - sum('held'));
        expect(exchangeCsv(parts, lines).split('\r\n')).toHaveLength(lines.length + 2);
      },
    ),
  );
});

test('a kit against itself needs nothing', () => {
  fc.assert(
    fc.property(makings, measure, (making, mm) => {
      const kit = kitOf(making, mm);
      expect(exchangeOf([{ name: 'm', times: 3, held: kit, now: kit }], 'per kit')).toEqual([]);
      expect(kitDifferenceWords(differenceOf(kit, kit))).toEqual([]);
    }),
  );
});

test('a difference holds all of the new kit: what is held and it alone give every line', () => {
  fc.assert(
    fc.property(makings, makings, measure, (before, after, mm) => {
      const [held, now] = [kitOf(before, mm), kitOf(after, mm)];
      const difference = differenceOf(held, now);
      const rings = difference.rings.flatMap((d) => {
        const old = held.rings.find((line) => line.ringKind.id === d.ringKind.id);
        const counts = (['opened', 'closed', 'spare', 'issued'] as const).map(
          (of) => (old?.[of] ?? 0) + d[of],
        );
        return d.how === 'gone' ? [] : [[d.ringKind, ...counts]];
      });
      expect(rings).toEqual(
        now.rings.map((line) => [line.ringKind, line.opened, line.closed, line.spare, line.issued]),
      );
      const materials = difference.materials.flatMap((d) => {
        const old = held.materials.find((line) => line.material.id === d.material.id);
        const same = old && old.material.unit === d.material.unit;
        return d.how === 'gone' ? [] : [[d.material.id, (same ? old.needMilli : 0) + d.needMilli]];
      });
      expect(materials).toEqual(now.materials.map((line) => [line.material.id, line.needMilli]));
    }),
  );
});

/** A bag as its holder sees it: rings by name, with how many are opened, closed and spare, and everything else by name. */
type Bag = Map<string, string>;
const bagOf = (kit: KitList): Bag =>
  new Map([
    ...kit.rings.map((line): [string, string] => [
      line.ringKind.name,
      [line.opened, line.closed, line.spare].join(' '),
    ]),
    ...kit.materials.map((line): [string, string] => [
      line.material.name,
      words(line.needMilli, line.material.unit),
    ]),
  ]);
const words = (milli: number, unit: string): string =>
  `${milli / 1000} ${milli === 1000 || unit === 'm' ? unit : `${unit}s`}`;

/** Does what the sentences say, knowing nothing but them. */
function follow(bag: Bag, sentences: readonly string[]): Bag {
  const after: Bag = new Map(bag);
  const prepared = (count: number, told: string): number[] =>
    told === ', opened'
      ? [count, 0, 0]
      : told === ', closed'
        ? [0, count, 0]
        : told === ', as spare'
          ? [0, 0, count]
          : ['opened', 'closed', 'spare'].map((word) =>
              Number(new RegExp(`(\\d+) ${word}`).exec(told)?.[1] ?? 0),
            );
  const counted = (name: string): number[] => (after.get(name) ?? '0 0 0').split(' ').map(Number);
  const put = (name: string, counts: readonly number[]) => after.set(name, counts.join(' '));
  const thousandths = (text: string | undefined): [number, string] => {
    const [, much = '0', unit = ''] = /^([\d.]+) (.+)$/.exec(text ?? '') ?? [];
    return [Math.round(Number(much) * 1000), unit.replace(/^pieces$/, 'piece')];
  };
  const understood: readonly (readonly [RegExp, (...said: string[]) => void])[] = [
    [
      /^New: add (\d+) × (.+?) \(.*\)([:,] .+)\.$/,
      (count = '', name = '', told = '') => put(name, prepared(Number(count), told)),
    ],
    [/^Take out all \d+ × (.+): no longer used\.$/, (name = '') => after.delete(name)],
    [
      /^Exchange all \d+ × .+? for (\d+) × (.+? ring)([:,] .+?)\. The /,
      (count = '', name = '', told = '') => put(name, prepared(Number(count), told)),
    ],
    [
      /^(?:Add|Lay aside) \d+ × (.+ ring), but prepare all of them anew: (.+)\.$/,
      (name = '', told = '') => put(name, prepared(0, told)),
    ],
    [
      /^(.+): as many as before, but prepare all of them anew: (.+)\.$/,
      (name = '', told = '') => put(name, prepared(0, told)),
    ],
    [
      /^(Add|Lay aside) (\d+) × (.+? ring)([:,] .+)\.$/,
      (verb = '', count = '', name = '', told = '') => {
        const by = prepared(Number(count), told);
        put(
          name,
          counted(name).map((n, i) => n + (verb === 'Add' ? 1 : -1) * (by[i] ?? 0)),
        );
      },
    ],
    [/^New: add (.+), (.+)\.$/, (name = '', much = '') => after.set(name, much)],
    [/^Take out (.+): no longer used\.$/, (name = '') => after.delete(name)],
    [
      /^Exchange (.+), .+, for (.+), (.+)\.$/,
      (was = '', name = '', much = '') => {
        after.delete(was);
        after.set(name, much);
      },
    ],
    [
      /^(Add|Lay aside) (.+), (.+)\.$/,
      (verb = '', name = '', much = '') => {
        const [was, unit] = thousandths(after.get(name));
        after.set(name, words(was + (verb === 'Add' ? 1 : -1) * thousandths(much)[0], unit));
      },
    ],
  ];
  for (const sentence of sentences) {
    const way = understood.find(([pattern]) => pattern.test(sentence));
    if (!way) throw new Error(`not understood: ${sentence}`);
    way[1](...(way[0].exec(sentence)?.slice(1) ?? []));
  }
  return after;
}

test('the sentences alone turn the bag that is held into the bag of now', () => {
  fc.assert(
    fc.property(makings, makings, measure, (before, after, mm) => {
      const names = (making: Making) => new Set(making.materials.map(({ name }) => name)).size;
      // A holder tells things apart by their names.
      fc.pre(names(before) === before.materials.length && names(after) === after.materials.length);
      const crossed = after.materials.some(({ id, name }) =>
        before.materials.some((old) => old.id !== id && old.name === name),
      );
      fc.pre(!crossed);
      const [held, now] = [kitOf(before, mm), kitOf(after, mm)];
      expect(follow(bagOf(held), kitDifferenceWords(differenceOf(held, now)))).toEqual(bagOf(now));
    }),
    { numRuns: 300 },
  );
});

test('four more rings are told as four more rings, with how to prepare them', () => {
  const making = byzantineMaking();
  const [copper, aluminium, small] = making.ringKinds;
  if (!copper || !aluminium || !small) throw new Error('there are three ring kinds');
  const named = { ...making, ringKinds: [copper, aluminium, { ...small, name: 'small copper ring' }] };
  const more = {
    ...named,
    finishing: [...making.finishing, ...[1, 2, 3, 4].map(() => aPlacement({ opened: 'small' }))],
  };
  const rules = { ...making.kitRules, sparePercent: 0 };
  const [held, now] = [kitOf({ ...named, kitRules: rules }, 165), kitOf({ ...more, kitRules: rules }, 165)];
  expect(kitDifferenceWords(differenceOf(held, now))).toEqual(['Add 4 × small copper ring, opened.']);
  const lines = exchangeOf([{ name: 'medium', times: 3, held, now }], 'per kit');
  expect(exchangeRows(lines)).toMatchObject([
    { name: 'small copper ring', each: ['put in 4'], tray: '–', inAll: 'put in 12' },
  ]);
});

test('a ring of another wire is exchanged: the old ones come out, the new ones go in', () => {
  const making = byzantineMaking();
  const [copper, aluminium, small] = making.ringKinds;
  if (!copper || !aluminium || !small) throw new Error('there are three ring kinds');
  const thicker = {
    ...making,
    ringKinds: [copper, aluminium, { ...small, wire: { stated: '18 SWG', mm: 1.2192 } }],
  };
  const [held, now] = [kitOf(making, 165), kitOf(thicker, 165)];
  expect(kitDifferenceWords(differenceOf(held, now))).toEqual([
    'Exchange all 3 × small for 3 × small: 2 opened, 1 spare. The wire is now 18 SWG; it was 1 mm.',
  ]);
  const lines = exchangeOf([{ name: 'medium', times: 2, held, now }], 'pooled');
  expect(exchangeRows(lines).map(({ each, tray, inAll }) => [each, tray, inAll])).toEqual([
    [['put in 2'], 'put in 1', 'put in 5'],
    [['take out 2'], 'take out 1', 'take out 5'],
  ]);
});
