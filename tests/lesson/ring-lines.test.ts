/** Rings of two kinds in one picture are told apart by every eye, and on paper without colour: by what they look like or by a line. */
import { expect, test } from 'vitest';
import { emptyContent } from '#lib/lesson/content.ts';
import { drawLesson, pictureTexts, shapeOfLesson } from '#lib/lesson/lesson-pictures.ts';
import { ringLines } from '#lib/lesson/ring-lines.ts';
import { ALIKE_BELOW, unlikeness, unlikenessInGrey } from '#lib/rings/colour-likeness.ts';
import { colourCodeOf } from '#lib/rings/colour-words.ts';
import { drawRings } from '#lib/weave/picture/draw-rings.ts';
import { lineTone, tonesOf } from '#lib/weave/picture/look.ts';
import { viewAt } from '#lib/weave/picture/view.ts';
import { aPlacement, aRingKind } from '#tests/support/a-making.ts';

/** Metals as they are, and colours as aluminium, niobium and titanium are anodised in: common practice. */
const METALS = ['copper', 'bronze', 'brass', 'silver', 'rose gold', 'gunmetal', 'steel'];
const ANODISED = ['blue', 'turquoise', 'green', 'purple', 'pink', 'red', 'orange', 'yellow', 'black', 'lime'];
const COLOURS = [...METALS, ...ANODISED];

const codeOf = (colour: string): string => {
  const code = colourCodeOf(colour);
  if (!code) throw new Error(colour);
  return code;
};

function lessonIn(colours: readonly string[], wires: readonly number[] = []) {
  const ringKinds = colours.map((colour, n) => {
    const mm = wires[n] ?? 1.2;
    return aRingKind({
      id: `kind-${n}`,
      name: `${colour} ring`,
      colour,
      colourCode: codeOf(colour),
      wire: { stated: `${mm} mm`, mm },
    });
  });
  const [first, ...rest] = ringKinds;
  const start = first
    ? [
        aPlacement({ id: 'lay', carries: [{ ringKind: first.id, count: 1 }] }),
        ...rest.map(({ id }, n) => aPlacement({ id: `open-${n}`, opened: id })),
      ]
    : [];
  return { ...emptyContent('A lesson', 'en', 'EUR'), start, ringKinds };
}

test('of two kinds that some eyes or a grey print take for each other one bears a line, of others none', () => {
  let [lined, bare] = [0, 0];
  for (const [n, one] of COLOURS.entries())
    for (const other of COLOURS.slice(n + 1)) {
      const [a, b] = [codeOf(one), codeOf(other)];
      const least = Math.min(unlikeness(a, b), unlikenessInGrey(a, b));
      const lines = ringLines(lessonIn([one, other]).ringKinds);
      expect([one, other, [...lines]]).toEqual([
        one,
        other,
        least < ALIKE_BELOW ? [['kind-1', 'whole']] : [],
      ]);
      if (least < ALIKE_BELOW) lined += 1;
      else bare += 1;
    }
  expect(lined).toBeGreaterThan(10);
  expect(bare).toBeGreaterThan(10);
});

test('three that are alike differ from each other; size, or being the same in the hand, needs no line', () => {
  expect([...ringLines(lessonIn(['copper', 'green', 'bronze']).ringKinds)]).toEqual([
    ['kind-1', 'whole'],
    ['kind-2', 'dashed'],
  ]);
  expect(ringLines(lessonIn(['copper', 'bronze'], [1.2, 1.6]).ringKinds).size).toBe(0);
  expect(ringLines(lessonIn(['copper', 'copper']).ringKinds).size).toBe(0);
  expect(ringLines(lessonIn(['steel', 'silver']).ringKinds).size).toBe(1);
});

test('a line is drawn along the wire, shows on every metal and colour, and is in the words', () => {
  const ring = { centre: [0, 0, 0], normal: [0, 0.6, 0.8], radius: 2.6, wire: 1 } as const;
  for (const colour of COLOURS) {
    const code = codeOf(colour);
    const tones = tonesOf(code);
    expect([colour, unlikenessInGrey(lineTone(tones), tones.body) > 0.15]).toEqual([colour, true]);
    const drawn = (line?: 'whole' | 'dashed'): string =>
      drawRings([{ ring, colour: code, role: 'plain', ...(line && { line }) }], viewAt(0)).elements.join('');
    const line = `stroke="${lineTone(tones)}" stroke-width="1.5"`;
    expect(drawn()).not.toContain(line);
    expect(drawn('whole')).toContain(line);
    expect(drawn('dashed')).toContain('stroke-dasharray');
  }
  const lesson = lessonIn(['copper', 'green']);
  const text = pictureTexts(lesson).get('open-0');
  expect(text).toContain('Green rings bear a line.');
  expect(pictureTexts(lessonIn(['copper', 'blue'])).get('open-0')).not.toContain('line');
  expect(drawLesson(lesson, shapeOfLesson, { of: 'open-0', roll: 0, side: 'front' })?.text).toBe(text);
});
