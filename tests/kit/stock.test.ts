import { expect, test } from 'vitest';
import { stockRows } from '#app/words/stock-rows.ts';
import { batchOf } from '#lib/kit/kit-batch.ts';
import { kitFor } from '#lib/kit/kit-list.ts';
import { materialKey, ringKey, type StockItem, stockLines } from '#lib/kit/stock.ts';
import { anOffer, aRingKind, byzantineMaking } from '#tests/support/a-making.ts';

const making = byzantineMaking();
const batch = (() => {
  const kit = kitFor(making, 165);
  if (!kit.ok) throw new Error(kit.fault.code);
  return batchOf([{ kit: kit.value, times: 8 }]);
})();
const item = (key: string, onHand: number, over: Partial<StockItem> = {}): StockItem => ({
  key,
  name: '',
  unit: 'ring',
  onHandMilli: onHand * 1000,
  offer: null,
  ...over,
});
const stockOf = (...items: readonly StockItem[]) => new Map(items.map((one) => [one.key, one]));

test('a ring is the same by what it is, whatever a lesson calls it and however its size is stated', () => {
  const inches = aRingKind({ id: 'a', innerDiameter: { stated: '1/4 in', mm: 6.35 }, colour: 'Deep  blue' });
  const millimetres = aRingKind({
    id: 'b',
    innerDiameter: { stated: '6.35 mm', mm: 6.35 },
    colour: 'deep blue',
  });
  expect(ringKey(inches)).toBe(ringKey(millimetres));
  for (const other of [{ metal: 'epdm' }, { colour: 'red' }, { measuredInnerMm: 6.4 }])
    expect(ringKey({ ...inches, ...other })).not.toBe(ringKey(inches));
});

// By hand: 8 kits of 86 copper are 688; 500 at hand leave 188 to buy, two packs of 100, 12 over, 9.60.
test('what is at hand is taken off, and packs are chosen for the rest', () => {
  const [copper] = making.ringKinds;
  const lines = stockLines(batch, stockOf(item(copper ? ringKey(copper) : '', 500)));
  expect(lines[0]).toMatchObject({ neededMilli: 688_000, onHandMilli: 500_000, lackingMilli: 188_000 });
  expect(lines[0]?.buy.packs).toMatchObject({ packs: 2, over: 12_000, priceMinor: 960 });
  expect(lines[1]).toMatchObject({ onHandMilli: null, lackingMilli: 336_000 });
  const { rows } = stockRows(lines, 'EUR');
  expect(rows[0]).toMatchObject({ packs: { text: '2 × 100, 12 over' }, price: { text: '9.60 EUR' } });
  expect(rows[1]?.onHand.text).toBe('not counted');
});

test('enough at hand lacks nothing and costs nothing', () => {
  const all = [
    ...making.ringKinds.map((kind) => item(ringKey(kind), 10_000)),
    ...making.materials.map((material) => item(materialKey(material), 10_000)),
  ];
  const lines = stockLines(batch, stockOf(...all));
  expect(lines.map((line) => line.lackingMilli)).toEqual([0, 0, 0, 0]);
  expect(stockRows(lines, 'EUR').together.text).toBe('nothing to buy');
});

test('the stock knows a price where the lesson states none', () => {
  const bare = { ...making, ringKinds: making.ringKinds.map((kind) => ({ ...kind, offer: null })) };
  const kit = kitFor(bare, 165);
  const [copper] = bare.ringKinds;
  if (!kit.ok || !copper) throw new Error('no kit');
  const stock = stockOf(item(ringKey(copper), 0, { offer: anOffer(50, 300) }));
  const [line] = stockLines(batchOf([{ kit: kit.value, times: 1 }]), stock);
  expect(line?.buy.price?.packsMinor).toBe(600);
});
