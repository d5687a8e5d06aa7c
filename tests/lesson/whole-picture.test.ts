/** The whole length of a piece that is several weaves, part after part. */
import { gzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { keptShape } from '#app/pictures/kept-shapes.ts';
import { emptyContent } from '#lib/lesson/content.ts';
import { countsForetold } from '#lib/lesson/foretold-counts.ts';
import { drawLesson, pictureTexts, shapeOfLesson } from '#lib/lesson/lesson-pictures.ts';
import { proveUnits } from '#lib/lesson/prove-lesson.ts';
import { planWords, unitBegun } from '#lib/lesson/repeat-words.ts';
import { sectionsOf } from '#lib/lesson/sections.ts';
import { drawWhole, partsNotDrawn, wholeText } from '#lib/lesson/whole-picture.ts';
import { tonesOf } from '#lib/weave/picture/look.ts';
import type { Run } from '#lib/weave/placement.ts';
import { countPiece } from '#lib/weave/sequence.ts';
import { findWeave } from '#lib/weave/weave-library.ts';
import { aPlacement, aRingKind, someRules } from '#tests/support/a-making.ts';

const BLUE = '#2b4fb0';

const aRing = (id: string, innerMm: number, colourCode = '#b9bcc2') =>
  aRingKind({
    id,
    name: id,
    colourCode,
    innerDiameter: { stated: `${innerMm} mm`, mm: innerMm },
    wire: { stated: '1.6 mm', mm: 1.6 },
  });

const aRun = (id: string, unit: string, repeats: number | null, swaps: Run['swaps'] = []): Run => ({
  id,
  unit,
  repeats,
  swaps,
});

/** Byzantine, and in it blue pairs that go on from its locking pair: two weaves of one piece. */
function mixed(runs: readonly Run[] = RUNS, innerMm = 6.4) {
  const byzantine = findWeave('byzantine');
  if (!byzantine) throw new Error('byzantine');
  const pair = (id: string, ...nths: readonly number[]) =>
    aPlacement({
      id,
      opened: 'blue',
      row: 'lock',
      unit: 'plain pairs',
      passes: nths.map((nth) => ({ from: 'back', ring: { row: 'lock', nth, from: 'newest' } })),
    });
  return {
    ...emptyContent('A lesson', 'en', 'EUR'),
    start: byzantine.piece.start,
    repeat: [...byzantine.piece.repeat, pair('pair-1', 2, 1), pair('pair-2', 3, 2)],
    ringKinds: [...byzantine.roles.map(({ id }) => aRing(id, innerMm)), aRing('blue', 6.4, BLUE)],
    runs,
  };
}

const RUNS = [aRun('before', '', null), aRun('middle', 'plain pairs', 3), aRun('after', '', null)];

const whole = (lesson: ReturnType<typeof mixed>, repeats: number, isMirrored = false) =>
  drawWhole(lesson, keptShape, { repeats, isMirrored });

/** What stands in a picture, in order: names, rings, joints, empty places. */
const seen = (svg: string): readonly string[] =>
  [
    ...svg
      .slice(svg.indexOf('</defs>'))
      .matchAll(/>([^<>]+)<\/text>|<use href="#(p\d+)|stroke-dasharray="(7 5|2 4)"|<circle/g),
  ]
    .map(([all, label, part, dashes]) => label ?? part ?? (dashes === '7 5' ? 'joint' : all.slice(0, 7)))
    .filter((each, at, list) => each !== list[at - 1]);

describe('the whole length of several weaves', () => {
  test('parts stand in the order of the piece, each under its name and count, with a joint between', () => {
    const picture = whole(mixed(), 13);
    expect(seen(picture?.svg ?? '')).toEqual([
      '1 main unit (byzantine) × 5',
      'p0',
      'joint',
      '2 plain pairs × 3',
      'p1',
      'joint',
      '3 main unit (byzantine) × 5',
      'p2',
    ]);
    expect(picture).toMatchObject({ isInParts: true, notDrawn: [] });
    // Each colour in its own part, and only there.
    const { shade } = tonesOf(BLUE);
    const parts = [...(picture?.svg ?? '').matchAll(/<g id="(p\d+)s\d+".*?<\/g><\/g>/gs)];
    expect(new Set(parts.filter(([svg]) => svg.includes(shade)).map(([, part]) => part))).toEqual(
      new Set(['p1']),
    );
  });

  test('its words are made from the same runs, count every ring and say what is not worked out', () => {
    const lesson = mixed();
    const counted = [...countPiece(lesson, 13).values()].reduce(
      (sum, { opened, closed }) => sum + opened + closed,
      0,
    );
    const text = wholeText(lesson, 13);
    expect(text).toContain(`A piece of ${counted} rings`);
    expect(text).toContain(
      'Its 3 parts follow one another, each drawn by itself: part 1, 5 repeats of the main unit (byzantine); part 2, 3 repeats of plain pairs; part 3, 5 repeats of the main unit (byzantine).',
    );
    expect(text).toContain('how the rings lie there is not worked out');
    const picture = whole(lesson, 13);
    expect(picture?.text).toBe(text);
    expect(picture?.svg).toContain(`<desc>${text}</desc>`);
  });

  test('all parts have one scale: pairs are as wide apart as in a piece of pairs alone', () => {
    // Pitch of a pair at aspect ratio 4: 3.8315 wires of 12 units (an independent calculation in one dimension).
    const svg = whole(mixed(), 13)?.svg ?? '';
    const long = whole(mixed([aRun('pairs', 'plain pairs', null), aRun('end', '', 1)]), 41)?.svg ?? '';
    const widths = [...long.matchAll(/<use href="#p0s\d+" x="([\d.]+)" y="([\d.]+)"/g)];
    const [first, second] = widths.filter(([, , y]) => y === widths[0]?.[2]).map(([, x]) => Number(x));
    const step = (second ?? 0) - (first ?? 0);
    expect(step / (12 * 3.8315)).toBeCloseTo(Math.round(step / (12 * 3.8315)), 1);
    expect(svg).not.toMatch(/NaN|Infinity/);
  });

  test('for the other hand lines run from the right, and the parts keep their order', () => {
    const joints = (svg = ''): readonly number[] =>
      [...svg.matchAll(/<path d="M([\d.]+) [^"]*" stroke="#16130e" stroke-width="2.4"/g)].map(([, x]) =>
        Number(x),
      );
    const [plain, mirrored] = [whole(mixed(), 13)?.svg, whole(mixed(), 13, true)?.svg];
    const wide = Number(/ width="([\d.]+)"/.exec(mirrored ?? '')?.[1]) - 28;
    expect(joints(mirrored).map((x) => Math.round(wide - x))).toEqual(joints(plain).map(Math.round));
    const labels = (svg = '') => seen(svg).filter((each) => each.includes('×'));
    expect(labels(mirrored)).toEqual(labels(plain));
    expect(mirrored).not.toMatch(/NaN|Infinity/);
  });

  test('a unit without a known shape is told by name with its reason, and the others are drawn', () => {
    const lesson = mixed();
    const odd = lesson.repeat.map((each) => (each.id === 'pair-2' ? { ...each, passes: [] } : each));
    const picture = whole({ ...lesson, repeat: odd }, 13);
    expect(picture?.notDrawn).toMatchObject([
      { label: '2 plain pairs × 3', fault: { code: 'no-known-shape' } },
    ]);
    expect(partsNotDrawn({ ...lesson, repeat: odd }, 13, keptShape)).toEqual(picture?.notDrawn);
    expect(seen(picture?.svg ?? '').slice(2, 5)).toEqual(['joint', '2 plain pairs × 3', 'stroke-']);
    expect(picture?.text).toContain('part 2, 3 repeats of plain pairs, which cannot be drawn');
    // Too tight for byzantine, yet not for pairs.
    const tight = whole(mixed(RUNS, 5), 13);
    expect(tight?.notDrawn.map(({ label, fault }) => `${label}: ${fault.code}`)).toEqual([
      '1 main unit (byzantine) × 5: too-tight',
      '3 main unit (byzantine) × 5: too-tight',
    ]);
  });

  test('rings of another size in a run are drawn from the shape that they have', () => {
    const larger = ['lock', 'knot', 'folded'].map((ringKind) => ({ ringKind, by: 'large' }));
    const runs = [aRun('before', '', 4), aRun('middle', '', 2, larger), aRun('after', '', 4)];
    const lesson = { ...mixed(runs), ringKinds: [...mixed().ringKinds, aRing('large', 8)] };
    const picture = whole(lesson, 10);
    expect(picture?.notDrawn).toEqual([]);
    expect(picture?.text).toContain('part 2, 2 repeats of the main unit (byzantine) with large rings');
    expect(
      sectionsOf({ ...lesson, ringKinds: mixed().ringKinds.concat(aRing('large', 6.4)) }, 10),
    ).toHaveLength(1);
  });

  test('runs that go round are drawn once at either end; a long piece stays under 60 kB', () => {
    const turns = mixed([aRun('one', '', 1), aRun('other', 'plain pairs', 2)]);
    const picture = whole(turns, 60);
    expect(seen(picture?.svg ?? '').filter((each) => / × |again/.test(each))).toEqual([
      '1 main unit (byzantine) × 1',
      '2 plain pairs × 2',
      '3 to 38: the same again',
      '39 main unit (byzantine) × 1',
      '40 plain pairs × 2',
    ]);
    expect(picture?.text).toContain(
      'part 1, 1 repeat of the main unit (byzantine); part 2, 2 repeats of plain pairs; and so on',
    );
    expect(gzipSync(whole(mixed(), 400)?.svg ?? '').length).toBeLessThan(60_000);
  });
});

test('each unit has pictures of its steps, in which no other unit takes part', () => {
  const lesson = mixed();
  const texts = pictureTexts(lesson);
  expect([...texts.keys()]).toEqual([...lesson.start, ...lesson.repeat].map(({ id }) => id));
  for (const [of, text] of texts) {
    const picture = drawLesson(lesson, keptShape, { of, roll: 0, side: 'front' });
    expect(picture?.text).toBe(text);
    expect(picture?.svg).toContain('<title>This step</title>');
    expect(picture?.svg.includes(tonesOf(BLUE).shade)).toBe(of.startsWith('pair'));
  }
  const piece = drawLesson(lesson, keptShape, { of: 'piece', roll: 0, side: 'front' });
  expect(piece?.svg).not.toContain(tonesOf(BLUE).shade);
});

test('a pupil reads the runs of each length in order, and where another unit begins among the steps', () => {
  const lesson = mixed();
  expect(planWords(lesson, 13)).toBe(
    '5 repeats of the main unit, then 3 of plain pairs, then 5 of the main unit.',
  );
  expect(planWords({ ...lesson, runs: [] }, 13)).toBe('');
  expect(lesson.repeat.map((each) => unitBegun(lesson, each))).toEqual([
    'The main unit',
    '',
    '',
    '',
    'The unit plain pairs',
    '',
  ]);
  expect(unitBegun({ repeat: lesson.repeat.slice(0, 4) }, lesson.repeat[0] ?? null)).toBe('');
});

test('each unit is held against its own shape, and none against the name of another', () => {
  const lesson = { ...mixed(), weave: 'byzantine' };
  const proofs = proveUnits(lesson, keptShape);
  expect(proofs.map(({ unit, proof }) => [unit, proof.state])).toEqual([
    ['', 'agrees'],
    ['plain pairs', 'agrees'],
  ]);
  expect(proofs.map(({ proof }) => (proof.state === 'agrees' ? proof.weave : ''))).toEqual([
    'byzantine',
    'chain-2-2',
  ]);
});

/** Five rows after three: the strip is widened once, by a unit of its own. */
function widening() {
  const strip = findWeave('european-4-in-1-three-rows');
  const wide = findWeave('european-4-in-1-five-rows');
  if (!strip || !wide) throw new Error('strips');
  const five = wide.piece.repeat.map((each) => ({ ...each, id: `five-${each.id}`, unit: 'five rows' }));
  const [first, second] = five;
  if (!first || !second) throw new Error('rows');
  const widen = [
    { ...first, id: 'widen-1', unit: 'widening' },
    {
      ...second,
      id: 'widen-2',
      unit: 'widening',
      passes: second.passes.slice(0, 2),
      carries: second.carries.map((carry) => ({ ...carry, count: 2 })),
    },
  ];
  return {
    ...emptyContent('A lesson', 'en', 'EUR'),
    weave: 'European 4-in-1',
    start: strip.piece.start,
    repeat: [...strip.piece.repeat, ...widen, ...five],
    ringKinds: ['edge', 'middle'].map((id) => aRing(id, 6.4)),
    runs: [aRun('narrow', '', 4), aRun('widen', 'widening', 1), aRun('wide', 'five rows', null)],
  };
}

test('a strip that widens: what it widens by has no shape and is not drawn, its rings are counted', () => {
  const lesson = widening();
  const picture = drawWhole(lesson, keptShape, { repeats: 10, isMirrored: false });
  expect(picture?.notDrawn).toMatchObject([{ label: '2 widening × 1', fault: { code: 'no-known-shape' } }]);
  expect(seen(picture?.svg ?? '').filter((each) => each.includes('×'))).toEqual([
    '1 main unit (European 4-in-1) × 4',
    '2 widening × 1',
    '3 five rows × 5',
  ]);
  // Its steps are flat schemes, those of the strips are seen in space.
  const titleOf = (of: string) =>
    /<title>(.*?)<\/title>/.exec(
      drawLesson(lesson, keptShape, { of, roll: 0, side: 'front' })?.svg ?? '',
    )?.[1];
  expect(titleOf('widen-2')).toBe('Scheme of this step');
  expect(titleOf('repeat-1')).toBe('This step');
  // By hand: 2 laid; 4 x (1 opened, 2 carried); widening 2 opened, 4 carried; 5 x (2 opened, 3 carried).
  const counted = [...countPiece(lesson, 10).values()];
  expect(counted.reduce((sum, { opened }) => sum + opened, 0)).toBe(4 + 2 + 10);
  expect(counted.reduce((sum, { closed }) => sum + closed, 0)).toBe(2 + 8 + 4 + 15);
});

test('a repeat that always enters one and the same ring is told so', () => {
  const lesson = mixed([]);
  const far = aPlacement({
    id: 'far',
    opened: 'blue',
    row: 'lock',
    passes: [
      { from: 'back', ring: { row: 'lock', nth: 1, from: 'newest' } },
      { from: 'back', ring: { row: 'lock', nth: 1, from: 'first' } },
    ],
  });
  expect(shapeOfLesson({ ...lesson, repeat: [far] })).toMatchObject({ fault: { code: 'repeats-not-alike' } });
  const unnamed = { ...far, passes: [{ from: 'back' as const }] };
  expect(shapeOfLesson({ ...lesson, repeat: [unnamed] })).toMatchObject({
    fault: { code: 'rings-not-named' },
  });
});

test('no count is foretold from one repeat where runs are other units or in rings of another size', () => {
  const oneRepeat = { tautMm: 10, pushedMm: 8 };
  const sized = (runs: readonly Run[]) => ({
    ...mixed(runs),
    sizes: [{ id: 's', name: 'small', bodyMm: 150 }],
    ringKinds: [...mixed().ringKinds, aRing('large', 8)],
  });
  // Six rings a repeat, those of the other unit not among them: 150 mm and 20 of ease make 17 to 22 repeats.
  const [plain] = countsForetold({ ...sized([]), kitRules: someRules({}) }, oneRepeat);
  expect(plain).toMatchObject({ repeats: [17, 22], rings: [102, 132] });
  const blue = [aRun('a', '', null, [{ ringKind: 'knot', by: 'blue' }])];
  expect(countsForetold({ ...sized(blue), kitRules: someRules({}) }, oneRepeat)).toHaveLength(1);
  const large = [aRun('a', '', null, [{ ringKind: 'knot', by: 'large' }])];
  for (const runs of [RUNS, large])
    expect(countsForetold({ ...sized(runs), kitRules: someRules({}) }, oneRepeat)).toEqual([]);
});
