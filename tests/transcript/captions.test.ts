/** Captions against profiles, and broken and timed anew: no word changed, nothing worse than before. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { breakLines } from '#lib/transcript/break-lines.ts';
import { captionFaults } from '#lib/transcript/caption-faults.ts';
import {
  CAPTION_PROFILE_IDS,
  CAPTION_PROFILES,
  type CaptionProfile,
} from '#lib/transcript/caption-profile.ts';
import { type Cue, compareCues, cue } from '#lib/transcript/cue.ts';
import { fitCaptions } from '#lib/transcript/fit-captions.ts';
import { gluedPlaces, wordsOf } from '#lib/transcript/word-breaks.ts';

const aCue = (startMs: number, endMs: number, text: string, id = `at-${startMs}`): Cue => ({
  id,
  startMs,
  endMs,
  text,
  settings: '',
});
let made = 0;
const newId = () => `new-${made++}`;
const fitted = (cues: readonly Cue[], profile: CaptionProfile): readonly Cue[] => {
  const { put, remove } = fitCaptions(cues, profile, newId);
  const gone = new Set([...remove, ...put.map(({ id }) => id)]);
  return [...cues.filter(({ id }) => !gone.has(id)), ...put].sort(compareCues);
};
const saidIn = (cues: readonly Cue[]) => cues.flatMap(({ text }) => wordsOf(text));
const { lesson, school } = CAPTION_PROFILES;

describe('a number stays with its unit', () => {
  test.each([
    ['take 0.8 mm wire', ['0.8 mm']],
    ['eighteen gauge wire', ['eighteen gauge']],
    ['rings of four point five millimetres inside', ['four point five millimetres']],
    ['one and a half times around', ['one and a half times']],
    ['three eighths of an inch long', ['three eighths of an inch']],
    ['a four in one weave', ['four in one']],
    ['open 2 x 3 rings', ['2 x 3 rings']],
    ['5 to 6 mm, 20 rings', ['5 to 6 mm,', '20 rings']],
    ['go to step 3 and on', ['step 3']],
    ['an aspect ratio of 4.5 and wire', []],
    ['we have two, three are left', []],
  ])('%s', (text, together) => {
    const words = wordsOf(text);
    const glued = gluedPlaces(words);
    const runs: string[] = [];
    words.forEach((word, at) => {
      if (glued[at - 1]) runs.push(`${runs.pop() ?? ''} ${word}`);
      else runs.push(word);
    });
    expect(runs.filter((run) => run.includes(' '))).toEqual(together);
  });
});

describe('lines', () => {
  test.each([
    [
      'Pass the two small rings through the pair behind them.',
      37,
      'Pass the two small rings\nthrough the pair behind them.',
    ],
    ['Close them.', 37, 'Close them.'],
    ['Here we need twenty four rings, eighteen gauge', 32, 'Here we need twenty four rings,\neighteen gauge'],
  ])('%s', (text, longest, lines) => {
    expect(breakLines(text, longest)).toBe(lines);
  });
});

describe('faults', () => {
  const codes = (cues: readonly Cue[]) => captionFaults(cues, lesson).map(({ code, level }) => [code, level]);
  test.each([
    ['nothing', [aCue(0, 3_000, 'Open two rings.')], []],
    ['a line of 43', [aCue(0, 6_000, 'x'.repeat(43))], [['line-long', 'error']]],
    ['a line of 38', [aCue(0, 6_000, 'x'.repeat(38))], [['line-long', 'warning']]],
    ['three lines', [aCue(0, 6_000, 'a\nb\nc')], [['lines-many', 'error']]],
    ['26 characters a second', [aCue(0, 1_000, 'x'.repeat(26))], [['fast', 'error']]],
    ['four words in a second', [aCue(0, 1_000, 'a b c d')], [['words-fast', 'warning']]],
    ['0.6 s', [aCue(0, 600, 'a')], [['short', 'error']]],
    ['9 s', [aCue(0, 9_000, 'a')], [['long', 'error']]],
    ['50 ms between', [aCue(0, 2_000, 'a'), aCue(2_050, 4_000, 'b')], [['gap-small', 'warning']]],
    ['none between', [aCue(0, 2_000, 'a'), aCue(2_000, 4_000, 'b')], []],
    ['over each other', [aCue(0, 2_000, 'a'), aCue(1_500, 4_000, 'b')], [['overlap', 'error']]],
  ])('%s', (_, cues, faults) => {
    expect(codes(cues)).toEqual(faults);
  });
});

/** Speech at 12 letters a second, in cues as a recogniser or a hurried hand leaves them. */
const vocabulary = (
  'open close the ring rings pair pass through now then, and turn it over so that 18 gauge 0.8 mm four point five ' +
  'millimetres small large copper wire. hold chain with pliers look here, again slowly'
).split(' ');
const speech = fc
  .array(
    fc.record({
      words: fc.array(fc.constantFrom(...vocabulary), { minLength: 1, maxLength: 30 }),
      gapMs: fc.oneof(fc.constant(0), fc.integer({ min: -400, max: 3_000 })),
      pace: fc.integer({ min: 8, max: 22 }),
      wide: fc.boolean(),
    }),
    { minLength: 1, maxLength: 15 },
  )
  .map((cues) => {
    let atMs = 0;
    return cues.map(({ words, gapMs, pace, wide }, index) => {
      const text = words.join(wide ? ' ' : index % 2 === 0 ? '\n' : ' ');
      const startMs = Math.max(0, atMs + gapMs);
      const endMs = startMs + Math.ceil((text.length * 1000) / pace);
      atMs = endMs;
      return aCue(startMs, endMs, text, `c${index}`);
    });
  })
  .map((cues) => cues.sort(compareCues));

describe('broken and timed anew', () => {
  test.each(CAPTION_PROFILE_IDS)('%s: no word is changed, and what comes out are cues in order', (id) => {
    fc.assert(
      fc.property(speech, (cues) => {
        const after = fitted(cues, CAPTION_PROFILES[id]);
        expect(saidIn(after)).toEqual(saidIn(cues));
        expect(new Set(after.map((one) => one.id)).size).toBe(after.length);
        for (const one of after) expect(cue.safeParse(one).error).toBeUndefined();
      }),
      { numRuns: Number(process.env['FUZZ_CASES'] ?? 40) },
    );
  });

  test('neither lines nor captions part a number from its unit', () => {
    fc.assert(
      fc.property(speech, (cues) => {
        const words = saidIn(cues);
        const glued = gluedPlaces(words);
        // What stood in two cues with a break between was parted before.
        const stood = new Set<number>();
        let count = 0;
        for (const one of cues) {
          count += wordsOf(one.text).length;
          stood.add(count);
        }
        count = 0;
        const before = new Set(cues);
        for (const one of fitted(cues, school)) {
          for (const line of one.text.split('\n')) {
            count += wordsOf(line).length;
            // A cue that is well enough keeps the lines that it was given.
            if (before.has(one) || stood.has(count) || count === words.length) continue;
            expect(glued[count - 1]).toBe(false);
          }
        }
      }),
      { numRuns: Number(process.env['FUZZ_CASES'] ?? 40) },
    );
  });

  test('of a thousand passages, nearly all come out with lines and times as they should be', () => {
    const passages = fc.sample(speech, { numRuns: 1_000, seed: 4 });
    const bad = /line|overlap|gap/;
    const count = (list: readonly (readonly Cue[])[]) =>
      list.filter((cues) => captionFaults(cues, lesson).some(({ code }) => bad.test(code))).length;
    const after = count(passages.map((cues) => fitted(cues, lesson)));
    console.log(
      `captions: ${count(passages)} of 1,000 passages with bad lines, breaks or overlaps; ${after} afterwards`,
    );
    expect(after).toBeLessThanOrEqual(5);
  });

  test('captions that are well stay as they are', () => {
    const cues = [
      aCue(0, 2_500, 'Open two small rings.'),
      aCue(2_500, 5_500, 'Pass them through the pair\nand close both.'),
    ];
    expect(fitCaptions(cues, lesson, newId)).toEqual({ put: [], remove: [] });
  });

  test('one long cue becomes captions that are read at ease, the first with its id', () => {
    const text =
      'Take the eighteen gauge wire and wind it around the mandrel, about twenty turns, then cut each ring with the saw and look at the ends. They should meet without a gap.';
    const after = fitted([aCue(10_000, 24_000, text, 'a')], lesson);
    expect(after.map((one) => one.text)).toEqual([
      'Take the eighteen gauge wire\nand wind it around the mandrel,',
      'about twenty turns,\nthen cut each ring with the saw',
      'and look at the ends.\nThey should meet without a gap.',
    ]);
    expect(after[0]).toMatchObject({ id: 'a', startMs: 10_000 });
    expect(captionFaults(after, lesson)).toEqual([]);
  });

  test('nothing reads worse than before, however often it is done', () => {
    fc.assert(
      fc.property(speech, fc.constantFrom(...CAPTION_PROFILE_IDS), (cues, id) => {
        const profile = CAPTION_PROFILES[id];
        const errors = (list: readonly Cue[]) =>
          captionFaults(list, profile).filter(({ code, level }) => level === 'error' && !/fast/.test(code))
            .length;
        const once = fitted(cues, profile);
        const twice = fitted(once, profile);
        expect(saidIn(twice)).toEqual(saidIn(once));
        expect(errors(once)).toBeLessThanOrEqual(errors(cues));
        expect(errors(twice)).toBeLessThanOrEqual(errors(once));
      }),
      { numRuns: Number(process.env['FUZZ_CASES'] ?? 40) },
    );
  });
});
