/**
 * Rings that are wound and cut by hand, against worked figures: plastic
 * bending of round wire (textbook beam theory: plastic moment d^3 Y/6, second
 * moment of area pi d^4/64), the close-wound helix, and a saw's kerf.
 */
import { describe, expect, test } from 'vitest';
import {
  estimateHomeMade,
  findTemper,
  type HomeMade,
  kerfInnerMm,
  springbackInnerMm,
  TEMPERS,
  type Temper,
  wireToBuyMm,
} from '#lib/rings/home-made.ts';

const temperOf = (id: string): Temper => {
  const found = findTemper(id);
  if (!found) throw new Error(`no temper ${id}`);
  return found;
};
const snips: HomeMade = { temper: 'copper-half-hard', kerfMm: 0, tailMm: 0, ringsPerCoil: 100 };

// Growth of the inner diameter in per cent: wire 1.0 on 4.0, 1.2 on 4.2, 1.6 on 6.0; worked out by hand to 0.1.
test.each([
  ['copper-soft', 0.6, 0.6, 0.6],
  ['copper-half-hard', 2.0, 1.9, 2.0],
  ['sterling-soft', 2.1, 2.0, 2.0],
  ['sterling-half-hard', 4.7, 4.3, 4.5],
  ['brass-half-hard', 3.5, 3.2, 3.3],
  ['aluminium-1100', 1.8, 1.7, 1.7],
  ['aluminium-5356', 3.9, 3.6, 3.7],
  ['stainless-soft', 1.3, 1.2, 1.3],
  ['stainless-spring', 7.6, 7.0, 7.3],
  ['titanium', 3.1, 2.9, 3.0],
  ['niobium-soft', 1.2, 1.1, 1.2],
  ['niobium-worked', 3.6, 3.4, 3.5],
  ['steel', 1.6, 1.5, 1.5],
])('%s springs back as worked out', (id, ...percents) => {
  const cases = [
    [4, 1],
    [4.2, 1.2],
    [6, 1.6],
  ] as const;
  cases.forEach(([mandrel, wire], index) => {
    const sprung = springbackInnerMm(mandrel, wire, temperOf(id)) ?? 0;
    expect(Math.abs((sprung / mandrel - 1) * 100 - (percents[index] ?? 0))).toBeLessThanOrEqual(0.06);
  });
});

test('the worked case: sterling half hard, 1.0 mm on a mandrel of 4.0 comes to 4.186', () => {
  expect(springbackInnerMm(4, 1, temperOf('sterling-half-hard'))).toBeCloseTo(4.186, 2);
});

// The same by summing the moment over the section in thin strips, instead of the closed forms.
test('springback agrees with a section summed strip by strip', () => {
  for (const of of TEMPERS) {
    const [mandrel, wire] = [5, 1.2];
    const r = wire / 2;
    const strips = 20_000;
    let plastic = 0;
    let second = 0;
    for (let i = 0; i < strips; i++) {
      const y = -r + (2 * r * (i + 0.5)) / strips;
      const area = 2 * Math.sqrt(r * r - y * y) * ((2 * r) / strips);
      plastic += of.yieldMPa * Math.abs(y) * area;
      second += y * y * area;
    }
    const curvature = 2 / (mandrel + wire) - plastic / (of.stiffnessGPa * 1000 * second);
    expect(springbackInnerMm(mandrel, wire, of)).toBeCloseTo(2 / curvature - wire, 4);
  }
});

test('wire that is springier than its mandrel is wide gives no ring', () => {
  expect(springbackInnerMm(200, 0.3, temperOf('stainless-spring'))).toBeNull();
  expect(estimateHomeMade(200, 0.3, { ...snips, temper: 'stainless-spring' })).toBeNull();
  expect(estimateHomeMade(4, 1, { ...snips, temper: 'unobtainium' })).toBeNull();
});

// kerf/pi: 0.20, 0.25, 0.30 and 0.50 mm take 0.064, 0.080, 0.095 and 0.159 mm off the inner diameter.
test.each([
  [0.2, 0.064],
  [0.25, 0.08],
  [0.3, 0.095],
  [0.5, 0.159],
])('a kerf of %d mm makes the ring %d mm narrower', (kerf, narrower) => {
  expect(4 - kerfInnerMm(4, kerf)).toBeCloseTo(narrower, 3);
});

// For a mean diameter of 5.2 mm: 1.2, 1.5, 1.8 and 3.1 % of the wire become swarf.
test('mandrel 4.00, 3 % of springback and a kerf of 0.30 give 4.025', () => {
  expect(kerfInnerMm(4 * 1.03, 0.3)).toBeCloseTo(4.025, 3);
  const estimate = estimateHomeMade(4, 1, { ...snips, kerfMm: 0.3 });
  expect(estimate?.lost).toBeCloseTo(0.3 / (Math.PI * ((estimate?.sprungMm ?? 0) + 1)), 12);
  expect(estimate && estimate.closedMm < estimate.sprungMm).toBe(true);
});

describe('wire to buy', () => {
  // 100 turns of 1.20 on 4.20: 1696.5 mm as circles, 1700.7 mm as a helix.
  test('counts the helix', () => {
    expect(wireToBuyMm(100, 4.2, 1.2, snips)).toBe(Math.ceil(1700.7));
    expect(100 * Math.PI * 5.4).toBeCloseTo(1696.5, 1);
  });

  test('adds the ends of every coil, a begun one too', () => {
    const made = { ...snips, tailMm: 80, ringsPerCoil: 30 };
    expect(wireToBuyMm(91, 4.2, 1.2, made) - wireToBuyMm(91, 4.2, 1.2, snips)).toBe(4 * 80);
  });
});
