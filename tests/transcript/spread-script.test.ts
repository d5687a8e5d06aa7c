/** A script without times: nothing of it lost, spread over speech, brought right by a few starts that were heard. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Span } from '#lib/time/time.ts';
import { type Cue, compareCues, cue } from '#lib/transcript/cue.ts';
import { cuesOfScript } from '#lib/transcript/cues-of-script.ts';
import type { CueEdit } from '#lib/transcript/edit-cues.ts';
import {
  hearStart,
  speechBetween,
  spreadAgain,
  spreadOver,
  takeTimes,
} from '#lib/transcript/spread-script.ts';

const changedBy = (cues: readonly Cue[], { put }: CueEdit): readonly Cue[] => {
  const changed = new Map(put.map((one) => [one.id, one]));
  return cues.map((one) => changed.get(one.id) ?? one);
};
const words = (text: string) => text.split(/\s+/).filter(Boolean);

describe('a script', () => {
  test('becomes sentences; lines are only how wide it was typed', () => {
    const text =
      'Open two small\nrings. Pass them\nthrough the pair.\n\nNow close both. Yes. Turn the chain over and look at it.';
    expect(cuesOfScript(text, []).map(({ text: said, line }) => [said, line])).toEqual([
      ['Open two small rings. Pass them through the pair.', 1],
      ['Now close both. Yes. Turn the chain over and look at it.', 5],
    ]);
  });

  test('loses no word, whatever it holds, and is spread in order', () => {
    const script = fc.array(fc.lorem({ maxCount: 40, mode: 'words' }), { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(script, fc.integer({ min: 1_000, max: 3_600_000 }), (paragraphs, durationMs) => {
        const text = paragraphs.join('\n\n');
        const found = cuesOfScript(text, [{ startMs: 0, endMs: durationMs }]);
        expect(found.flatMap((one) => words(one.text))).toEqual(words(text));
        found.forEach((one, at) => {
          expect(one.endMs).toBeGreaterThan(one.startMs);
          expect(one.startMs).toBeGreaterThanOrEqual(found[at - 1]?.startMs ?? 0);
        });
      }),
    );
  });

  test('a long sentence is parted, and never between a number and its unit', () => {
    const text = `We take ${'a very long way around and '.repeat(3)}then eighteen gauge wire with rings of four point five millimetres ${'and go on '.repeat(12)}`;
    const parts = cuesOfScript(text, []).map((one) => one.text);
    expect(parts.length).toBeGreaterThan(2);
    expect(parts.some((part) => part.includes('eighteen gauge'))).toBe(true);
    expect(parts.some((part) => part.includes('four point five millimetres'))).toBe(true);
  });
});

describe('spreading', () => {
  const pauses: readonly Span[] = [
    { startMs: 0, endMs: 5_000 },
    { startMs: 10_000, endMs: 20_000 },
  ];

  test('leaves the pauses out', () => {
    const speech = speechBetween(pauses, 25_000);
    expect(speech).toEqual([
      { startMs: 5_000, endMs: 10_000 },
      { startMs: 20_000, endMs: 25_000 },
    ]);
    expect(spreadOver(['open it now', 'open it now'], speech, 0)).toEqual(speech);
  });

  const approximate = (starts: readonly number[]): readonly Cue[] =>
    starts.map((startMs, at) => ({
      id: `c${at}`,
      startMs,
      endMs: startMs + 500,
      text: 'open it now',
      settings: '',
      timing: 'approximate',
    }));

  test('a start that was heard moves what lies around it, and a later word takes an earlier one back', () => {
    const speech = [{ startMs: 0, endMs: 40_000 }];
    const cues = changedBy(
      approximate([0, 1_000, 2_000, 3_000]),
      spreadAgain(approximate([0, 1_000, 2_000, 3_000]), speech),
    );
    expect(cues.map((one) => one.startMs)).toEqual([0, 10_000, 20_000, 30_000]);
    const heard = changedBy(cues, hearStart(cues, 'c2', 30_000, speech));
    expect(heard.map((one) => one.startMs)).toEqual([0, 15_000, 30_000, 35_000]);
    expect(heard[2]?.timing).toBe('start heard');
    const again = changedBy(heard, hearStart(heard, 'c1', 32_000, speech));
    expect(again.map((one) => one.timing)).toEqual([
      'approximate',
      'start heard',
      'approximate',
      'approximate',
    ]);
    expect(takeTimes(again).put.every((one) => one.timing === undefined)).toBe(true);
  });

  test('whatever was heard, cues stay cues and stay in order', () => {
    fc.assert(
      fc.property(
        fc.array(fc.nat(600_000), { minLength: 2, maxLength: 30 }),
        fc.array(fc.tuple(fc.nat(29), fc.nat(700_000)), { maxLength: 8 }),
        (starts, hearings) => {
          const speech = speechBetween(pauses, 600_000);
          let cues = approximate(starts.sort((a, b) => a - b));
          const order = cues.map(({ id }) => id);
          for (const [at, ms] of hearings) {
            cues = changedBy(cues, hearStart(cues, `c${at % cues.length}`, ms, speech)).toSorted(compareCues);
            for (const one of cues) expect(cue.safeParse(one).error).toBeUndefined();
          }
          if (hearings.length === 0) expect(cues.map(({ id }) => id)).toEqual(order);
        },
      ),
    );
  });
});

test('the error falls with every start that is heard', () => {
  // An invented talk: sentences at a pace that wanders between 10 and 20 letters a second, with pauses
  // of which only those of more than half a second are found. ALGORITHMS' figures are of recordings with subtitles.
  let seed = 7;
  const random = () => {
    seed = (seed * 1_103_515_245 + 12_345) % 2 ** 31;
    return seed / 2 ** 31;
  };
  const truth: Cue[] = [];
  const pauses: Span[] = [];
  let atMs = 4_000;
  let pace = 15;
  for (let index = 0; index < 200; index += 1) {
    pace = Math.min(20, Math.max(10, pace + (random() - 0.5) * 3));
    const text = 'ring '.repeat(5 + Math.floor(random() * 20)).trim();
    const endMs = Math.round(atMs + (text.length / pace) * 1000);
    truth.push({ id: `s${index}`, startMs: Math.round(atMs), endMs, text, settings: '' });
    const pause = random() < 0.2 ? 4_000 * random() : 300 * random();
    if (pause > 500) pauses.push({ startMs: endMs, endMs: endMs + pause });
    atMs = endMs + pause;
  }
  const speech = speechBetween([{ startMs: 0, endMs: 4_000 }, ...pauses], Math.round(atMs));
  const untimed = truth.map(
    (one, at): Cue => ({ ...one, startMs: at, endMs: at + 1, timing: 'approximate' }),
  );
  const medianError = (everySentences: number): number => {
    let cues = changedBy(untimed, spreadAgain(untimed, speech));
    truth.forEach((one, at) => {
      if (at % everySentences === 0 && everySentences < truth.length)
        cues = changedBy(cues, hearStart(cues, one.id, one.startMs, speech));
    });
    const errors = truth
      .map((one, at) => Math.abs((cues[at]?.startMs ?? 0) - one.startMs))
      .sort((a, b) => a - b);
    return (errors[truth.length / 2] ?? 0) / 1000;
  };
  const errors = [Number.POSITIVE_INFINITY, 40, 20, 10, 5].map(medianError);
  console.log(
    `untimed script, median error of starts, s: no start heard ${errors[0]}, one in 40 / 20 / 10 / 5 sentences ` +
      `${errors.slice(1).join(' / ')} (handbook figures on others’ recordings: 11.9; 3.2 / 2.0 / 1.1 / 0.64)`,
  );
  expect(errors.toSorted((a, b) => b - a)).toEqual(errors);
  expect(errors[4]).toBeLessThan(0.64);
});
