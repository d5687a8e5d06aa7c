import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { SHORTEST_CHAPTER_MS } from '#lib/chapters/chapter-rules.ts';
import { NO_HABITS } from '#lib/chapters/openers.ts';
import { type MarkedTranscript, proposeChapters } from '#lib/chapters/propose-chapters.ts';
import { sentencesOf } from '#lib/chapters/sentences.ts';
import type { Cue } from '#lib/transcript/cue.ts';
import { readToldLesson, toldLessonNames } from '#tests/support/told-lessons.ts';

const told = readToldLesson('half-persian-earrings');
const marked = (over: Partial<MarkedTranscript> = {}): MarkedTranscript => ({
  cues: told.cues,
  pauses: told.pauses,
  chapters: [],
  refused: [],
  habits: NO_HABITS,
  ...over,
});

describe('proposed chapters', () => {
  test('have titles that end in a thing, or say their kind alone', () => {
    const titles = toldLessonNames().flatMap((name) => {
      const lesson = readToldLesson(name);
      const proposals = proposeChapters(marked({ cues: lesson.cues, pauses: lesson.pauses }));
      return proposals.forCount(proposals.suggested).map(({ title }) => title);
    });
    // What is said often and is no thing of the trade: `the busy time bracelet`, `not a long one`, `the third passes`.
    for (const title of titles) expect(title).not.toMatch(/busy|long|thirds|fourths|music|fun|passes|'s/);
    expect(titles).toContain('Opening: earrings');
    expect(titles).toContain('Clasp: toggle and loop');
    expect(titles.filter((title) => title.startsWith('Materials')).length).toBeGreaterThan(6);
    expect(titles).toContain('Materials');
  });

  test('lie at pauses where there are some, and the first at the beginning', () => {
    const proposed = proposeChapters(marked()).forCount(9);
    expect(proposed[0]).toMatchObject({ startMs: 0, kind: 'opening', place: 'first' });
    const atPause = proposed.filter(({ startMs }) =>
      told.pauses.some((pause) => startMs > pause.startMs && startMs < pause.endMs),
    );
    expect(atPause.length).toBeGreaterThanOrEqual(6);
    for (const { silenceMs } of atPause) expect(silenceMs).toBeGreaterThanOrEqual(2_000);
  });

  test('never begin inside a sentence', () => {
    const sentences = sentencesOf(told.cues);
    for (const { startMs } of proposeChapters(marked()).forCount(20))
      expect(sentences.some((one) => startMs > one.startMs && startMs < one.endMs)).toBe(false);
  });

  test('their number follows what is asked for, and none is shorter than hosts take', () => {
    const proposals = proposeChapters(marked());
    for (const count of [1, 4, 9, 15]) {
      const proposed = proposals.forCount(count);
      expect(proposed).toHaveLength(count);
      proposed.slice(1).forEach((one, index) => {
        // Beginnings move into silence, by two seconds at most.
        expect(one.startMs - (proposed[index]?.startMs ?? 0)).toBeGreaterThan(SHORTEST_CHAPTER_MS - 2_000);
      });
    }
  });

  test('chapters that are set stay out of the proposals and part the rest', () => {
    const set = told.chapters.slice(2, 4);
    const proposals = proposeChapters(marked({ chapters: set }));
    expect(proposals.fewest).toBe(3);
    expect(proposals.forCount(9)).toHaveLength(7);
    for (const { startMs } of proposals.forCount(9))
      for (const chapter of set) expect(Math.abs(startMs - chapter.startMs)).toBeGreaterThan(3_000);
  });

  test('what was refused is not proposed again at any number, nor its neighbours', () => {
    const gone = proposeChapters(marked()).forCount(9).slice(3, 5);
    const proposals = proposeChapters(marked({ refused: gone.map(({ cueId }) => cueId) }));
    for (const count of [2, 9, 30])
      for (const { startMs } of proposals.forCount(count))
        for (const one of gone) expect(Math.abs(startMs - one.startMs)).toBeGreaterThan(12_000);
  });

  test('the same transcript gives the same proposals', () => {
    expect(proposeChapters(marked()).forCount(7)).toEqual(proposeChapters(marked()).forCount(7));
  });

  test('whatever the cues hold: in order, each titled, each with a cue that is there', () => {
    const text = fc.string({ maxLength: 40, unit: 'grapheme' });
    const cues = fc.array(fc.record({ text, gapMs: fc.nat(9_000), ms: fc.integer({ min: 1, max: 9_000 }) }), {
      maxLength: 30,
    });
    fc.assert(
      fc.property(cues, fc.nat(30), (pieces, count) => {
        let atMs = 0;
        const made = pieces.map(({ text: said, gapMs, ms }, index): Cue => {
          const startMs = atMs + gapMs;
          atMs = startMs + ms;
          return { id: `c${index}`, startMs, endMs: atMs, text: said, settings: '' };
        });
        const proposed = proposeChapters(marked({ cues: made, pauses: [] })).forCount(count);
        proposed.forEach((one, index) => {
          expect(one.title).not.toBe('');
          expect(made.some(({ id }) => id === one.cueId)).toBe(true);
          if (index > 0) expect(one.startMs).toBeGreaterThan(proposed[index - 1]?.startMs ?? 0);
        });
      }),
      { numRuns: 80 },
    );
  });
});

describe('sentences', () => {
  const cue = (id: string, startMs: number, endMs: number, text: string): Cue => ({
    id,
    startMs,
    endMs,
    text,
    settings: '',
  });

  test('run over cues, and are parted inside them', () => {
    const found = sentencesOf([
      cue('a', 0, 2_000, 'Take the first'),
      cue('b', 2_000, 4_000, 'ring. Now close'),
      cue('c', 4_000, 6_000, 'it well.'),
    ]);
    expect(found.map(({ text, cueId }) => [text, cueId])).toEqual([
      ['Take the first ring.', 'a'],
      ['Now close it well.', 'b'],
    ]);
    expect(found[1]?.startMs).toBeGreaterThan(2_000);
    expect(found[1]?.startMs).toBeLessThan(3_000);
  });

  test('end with a pause where no full stops are written', () => {
    const found = sentencesOf([
      cue('a', 0, 2_000, 'take the first ring'),
      cue('b', 2_100, 4_000, 'and close it'),
      cue('c', 4_600, 6_000, 'now the next one'),
    ]);
    expect(found.map(({ text }) => text)).toEqual(['take the first ring and close it', 'now the next one']);
  });
});
