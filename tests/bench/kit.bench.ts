/**
 * Kits of ten sizes with 10,000 repeats and 50 ring kinds, each sold in three
 * packs: ours beside a plain loop that only adds the rings up, turn by turn,
 * in one run. Prints the very first answer, when nothing is compiled and no
 * packs were looked at yet, the median once both are warm, and the ratio; run
 * it with `node tests/bench/kit.bench.ts`.
 */
import { kitFor } from '#lib/kit/kit-list.ts';
import type { Making } from '#lib/kit/making.ts';
import { aPlacement, aRingKind, aSample, byzantineMaking, someRules } from '#tests/support/a-making.ts';

const REPEATS = 10_000;
const KINDS = 50;
const SIZES = 10;

const ringKinds = Array.from({ length: KINDS }, (_, index) =>
  aRingKind({
    id: `kind-${index}`,
    offer: {
      packs: [
        { by: 'count', count: 1000, priceMinor: 3100 + index },
        { by: 'count', count: 250, priceMinor: 900 },
        { by: 'count', count: 25, priceMinor: 120 },
      ],
      link: '',
    },
  }),
);
const making: Making = {
  ...byzantineMaking(),
  ringKinds,
  start: [],
  repeat: ringKinds.map(({ id }) => aPlacement({ opened: id, carries: [{ ringKind: id, count: 1 }] })),
  finishing: ringKinds.map(({ id }) => aPlacement({ opened: id })),
  sample: aSample({ perRepeatMm: 0.5 }),
  kitRules: someRules({ easeMm: 0, rounding: 'down' }),
};
const wrists = Array.from({ length: SIZES }, (_, index) => REPEATS / 2 + index * 0.5);

function ours(): number {
  let rings = 0;
  for (const wrist of wrists) {
    const kit = kitFor(making, wrist);
    if (!kit.ok) throw new Error(kit.fault.code);
    rings += kit.value.totals.net;
  }
  return rings;
}

/** Every ring of every size met one by one, and nothing else: no spare, no packs, no working. */
function plainLoop(): number {
  let rings = 0;
  for (let size = 0; size < SIZES; size++) {
    const counts = new Map<string, number>();
    const meet = (placements: Making['repeat']): void => {
      for (const { opened, carries } of placements) {
        if (opened !== null) counts.set(opened, (counts.get(opened) ?? 0) + 1);
        for (const { ringKind, count } of carries) counts.set(ringKind, (counts.get(ringKind) ?? 0) + count);
      }
    };
    for (let repeat = 0; repeat < REPEATS + size; repeat++) meet(making.repeat);
    meet(making.finishing);
    for (const count of counts.values()) rings += count;
  }
  return rings;
}

const timedMs = (run: () => number, expected: number): number => {
  const before = performance.now();
  if (run() !== expected) throw new Error('the counts differ');
  return performance.now() - before;
};

const median = (times: readonly number[]): number =>
  times.toSorted((a, b) => a - b)[Math.floor(times.length / 2)] ?? Number.NaN;

const expected = plainLoop();
const [coldMs = Number.NaN, ...kitTimes] = Array.from({ length: 100 }, () => timedMs(ours, expected));
const loopMs = median(Array.from({ length: 5 }, () => timedMs(plainLoop, expected)));
const kitMs = median(kitTimes.slice(-50));
console.log(`${SIZES} sizes, ${REPEATS} repeats, ${KINDS} ring kinds, ${expected} rings`);
console.log(`plain loop            ${loopMs.toFixed(2)} ms`);
console.log(`kits, the first time  ${coldMs.toFixed(2)} ms`);
console.log(
  `kits, complete        ${kitMs.toFixed(2)} ms, ${(kitMs / loopMs).toFixed(4)} of the loop (aim: under 5 ms)`,
);
