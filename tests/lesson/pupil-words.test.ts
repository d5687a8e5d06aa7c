import { describe, expect, test } from 'vitest';
import { concernsWords } from '#app/words/correction-words.ts';
import { CAUTIONS, offeredCautions } from '#lib/lesson/cautions.ts';
import { correctionsAt, correctionsDuring, emptyCorrection } from '#lib/lesson/corrections.ts';
import { handSegments } from '#lib/lesson/hand-words.ts';
import { stopCrossed } from '#lib/lesson/holding.ts';
import { pageSteps } from '#lib/lesson/page-steps.ts';
import { aContent } from '#tests/support/a-content.ts';

const ids = (offered: readonly { id: string }[]) => offered.map(({ id }) => id);

test('whom a correction concerns is a sentence, however it was typed', () => {
  expect(['everyone', 'everyone. ', '“all of you.”', 'Who?', '(some)', ' '].map(concernsWords)).toEqual([
    'Concerns: everyone.',
    'Concerns: everyone.',
    'Concerns: “all of you.”',
    'Concerns: Who?',
    'Concerns: (some).',
    '',
  ]);
});

describe('cautions offered by what is used', () => {
  test('rings are small parts and strain; aluminium rubs off; nickel silver is no precious metal', () => {
    const content = aContent({ cautions: [] });
    expect(ids(offeredCautions(content))).toEqual([
      'small-parts',
      'strain',
      'aluminium-rub-off',
      'green-skin',
    ]);
    const [kind] = content.ringKinds;
    if (!kind) throw new Error('the fixture has ring kinds');
    const nickel = aContent({ cautions: [], ringKinds: [{ ...kind, metal: 'nickel-silver-c75200' }] });
    expect(ids(offeredCautions(nickel))).toContain('nickel');
    expect(ids(offeredCautions(nickel))).not.toContain('metal-words');
  });

  test('what is carried is not offered again', () => {
    expect(ids(offeredCautions(aContent()))).not.toContain('small-parts');
  });

  test('every caution of ours has an id of its own', () => {
    expect(new Set(ids(CAUTIONS)).size).toBe(CAUTIONS.length);
  });
});

describe('words of hand', () => {
  test.each([
    ['Hold it in your left hand.', ['right']],
    ['Turn it to the right and lay the left-leaning ring.', ['left', 'right']],
    ['That is right; right away, the right gauge.', []],
    ['Nothing about hands.', []],
  ])('%s', (sentence, mirrored) => {
    const segments = handSegments(sentence);
    expect(segments.map(({ text }) => text).join('')).toBe(sentence);
    expect(segments.flatMap((segment) => segment.mirrored ?? [])).toEqual(mirrored);
  });
});

describe('corrections at their moment', () => {
  const correction = { ...emptyCorrection('c'), startMs: 1_000, endMs: 2_000 };
  test('the end does not belong to the span', () => {
    expect([999, 1_000, 1_999, 2_000].map((at) => correctionsAt([correction], at).length)).toEqual([
      0, 1, 1, 0,
    ]);
    expect(correctionsDuring([correction], { startMs: 2_000, endMs: 3_000 })).toEqual([]);
    expect(correctionsDuring([correction], { startMs: 1_999, endMs: 3_000 })).toEqual([correction]);
  });
});

describe('holding at a step', () => {
  const stops = [
    { id: 'b', atMs: 2_000 },
    { id: 'a', atMs: 1_000 },
  ];
  test.each([
    ['before it', 0, 999, null],
    ['on it', 990, 1_000, 'a'],
    ['just behind it', 1_000, 1_016, null],
    ['over two at once: the earlier', 900, 2_100, 'a'],
    ['a jump', 0, 60_000, null],
    ['backwards', 1_500, 500, null],
  ] as const)('%s', (_, from, to, id) => {
    expect(stopCrossed(stops, from, to)?.id ?? null).toBe(id);
  });
});

describe('steps in a pupil’s order', () => {
  test('a step without rings stands where its moment lies', () => {
    const steps = pageSteps(
      aContent({
        steps: [
          { id: 'lay', sentence: 'Lay out the mat.', atMs: 2_000, pictureText: '' },
          { id: 'check', sentence: 'Count the unit.', atMs: 39_000, pictureText: 'A finished unit.' },
          { id: 'loose', sentence: 'Good light.', atMs: null, pictureText: '' },
        ],
      }),
    );
    expect(steps.filter(({ part }) => part === 'setup').map(({ id }) => id)).toEqual(['lay', 'loose']);
    const repeat = steps.filter(({ part }) => part === 'repeat');
    expect(repeat.map(({ placement }) => placement !== null)).toEqual([true, true, true, false, true]);
    expect(repeat.map(({ number }) => number)).toEqual([1, 2, 3, 4, 5]);
    expect(repeat[3]?.stillText).toBe('A finished unit.');
  });
});
