/**
 * That thicker wire is impossible in two sizes of half Persian 3-in-1 (1/4 in
 * and 3/16 in rings) rests on the solver; here a plain penalty method, which
 * shares nothing with it, seeks thicker wire from many shapes of the same
 * chain: thin wires that wandered about without passing through each other.
 * `WEAVE_TRIES=200` seeks longer. Chains with the same links and sides that no
 * hand makes of this one are another matter: see DEVELOPERS.md.
 */
import { expect, test } from 'vitest';
import { MM_PER_INCH } from '#lib/rings/gauges.ts';
import { ALTERNATION_NAMES, alternationOf, thickestWire } from '#lib/weave/space/alternations.ts';
import { randomRow } from '#lib/weave/space/random-row.ts';
import { examineChain } from '#tests/support/check-in-space.ts';
import { grown, wandered } from '#tests/support/thickest-by-penalty.ts';

const TRIES = Number(process.env['WEAVE_TRIES'] ?? 1);
const [LARGE, SMALL] = [MM_PER_INCH / 4, (3 * MM_PER_INCH) / 16];

const MIXED = {
  'row by row': { inner: [LARGE, SMALL, LARGE, SMALL], between: [1.137, 1.139] },
  'along the rows, alike': { inner: [LARGE, LARGE, SMALL, SMALL], between: [1.338, 1.344] },
  'along the rows, against each other': { inner: [LARGE, SMALL, SMALL, LARGE], between: [0.95, 0.956] },
} as const;

test.each(ALTERNATION_NAMES)('%s: no thicker wire is found by other means, and as thick a one is', (name) => {
  const { inner, between } = MIXED[name];
  const told = thickestWire('half-persian-3-in-1', name, { large: LARGE, small: SMALL }, between);
  expect(told).toBeGreaterThan(between[0]);
  const thin = alternationOf('half-persian-3-in-1', name, {
    large: { inner: LARGE, wire: 0.8 },
    small: { inner: SMALL, wire: 0.8 },
  });
  if (!thin.ok) throw new Error(thin.fault.code);
  const { cell } = thin.value;
  const links = thin.value.links.map(({ a, b, cells, sign }) => `${a} ${b} ${cells} ${sign}`);
  const random = randomRow(11);
  const found = Array.from({ length: TRIES }, (_, n) => {
    const start = wandered(cell, inner, { wire: 0.4, steps: 25 * (n + 1), random, links });
    const { wire = 0, chain = start } = grown(start, inner, { thin: 0.4, rounds: 150, links }) ?? {};
    // What it found is a piece, but for the overlap that it calls none.
    const rings = chain.rings.map((ring, at) => ({ ...ring, wire, radius: ((inner[at] ?? 0) + wire) / 2 }));
    const examined = examineChain({ rings, pitch: chain.pitch, twist: 0 }, 36);
    expect(examined.least).toBeGreaterThan(0.9998);
    expect(examined.links).toEqual(links.toSorted());
    return wire;
  });
  const thickest = Math.max(...found);
  if (process.env['WEAVE_TRIES']) console.log(name, told.toFixed(4), thickest.toFixed(4), found.length);
  expect(thickest / told).toBeLessThan(1.005);
  expect(thickest / told).toBeGreaterThan(0.995);
});
