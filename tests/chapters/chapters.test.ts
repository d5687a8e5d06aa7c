import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Chapter } from '#lib/chapters/chapter.ts';
import { chapterFaults, chapterSpans } from '#lib/chapters/chapter-rules.ts';
import { readChapters } from '#lib/chapters/chapters-read.ts';
import { writeChaptersWebVtt } from '#lib/chapters/chapters-webvtt.ts';
import { readWithW3cParser } from '#tests/support/webvtt-readers.ts';

const aChapter = (startMs: number, title = 'Closing the rings', id = `at-${startMs}`): Chapter => ({
  id,
  kind: 'setup',
  title,
  startMs,
});
let made = 0;
const newId = () => `id-${made++}`;

describe('spans', () => {
  test('a chapter ends where the next starts, the last with the recording', () => {
    expect(chapterSpans([aChapter(30_000), aChapter(0)], 90_000)).toMatchObject([
      { startMs: 0, endMs: 30_000 },
      { startMs: 30_000, endMs: 90_000 },
    ]);
    expect(chapterSpans([aChapter(0)], null)).toMatchObject([{ endMs: null }]);
  });

  test('they never overlap and leave no gap', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(1_000_000), { minLength: 1 }), fc.nat(2_000_000), (starts, durationMs) => {
        const spans = chapterSpans(
          starts.map((startMs, index) => aChapter(startMs, 'x', `${index}`)),
          durationMs,
        );
        spans.forEach((span, index) => {
          expect(span.endMs).toBeGreaterThanOrEqual(span.startMs);
          if (index > 0) expect(spans[index - 1]?.endMs).toBe(span.startMs);
        });
      }),
    );
  });
});

describe('rules', () => {
  const codes = (chapters: readonly Chapter[], durationMs: number | null = 100_000) =>
    chapterFaults(chapters, durationMs).map(({ code, chapter }) => [code, chapter.startMs]);

  test('a sound list has no fault', () => {
    expect(codes([aChapter(0), aChapter(10_000), aChapter(60_000)])).toEqual([]);
  });

  test.each([
    ['late start', [aChapter(5_000)], [['chapter-late-start', 5_000]]],
    ['no title', [aChapter(0, ' ')], [['chapter-nameless', 0]]],
    ['too short by a millisecond', [aChapter(0), aChapter(9_999)], [['chapter-short', 0]]],
    ['after the end', [aChapter(0), aChapter(100_000)], [['chapter-after-end', 100_000]]],
    ['two at once', [aChapter(0, 'a', 'a'), aChapter(0, 'b', 'b')], [['chapter-short', 0]]],
  ])('%s', (_, chapters, faults) => {
    expect(codes(chapters)).toEqual(faults);
  });
});

describe('as WebVTT', () => {
  test('plain titles, in order, whatever stands in them', () => {
    const file = writeChaptersWebVtt(
      [aChapter(20_000, 'Rings & <clasps> -->\nend'), aChapter(0, '')],
      65_000,
    );
    expect(file).toBe(
      'WEBVTT\n\n00:00:00.000 --> 00:00:20.000\nsetup\n\n00:00:20.000 --> 00:01:05.000\nRings &amp; &lt;clasps&gt; --&gt; end\n',
    );
  });

  test('the W3C’s parser takes it as chapters without an error, and we read it back', () => {
    const title = fc.string({ maxLength: 40, unit: 'grapheme' });
    const list = fc.uniqueArray(fc.record({ startMs: fc.nat(5_000_000), title }), {
      minLength: 1,
      maxLength: 8,
      selector: (one) => one.startMs,
    });
    fc.assert(
      fc.property(list, (chapters) => {
        const file = writeChaptersWebVtt(
          chapters.map(({ startMs, title: said }) => aChapter(startMs, said)),
          6_000_000,
        );
        expect(readWithW3cParser(file, 'chapters').errors).toEqual([]);
        const back = readChapters(file, newId);
        expect(back.chapters.map((one) => one.startMs)).toEqual(
          chapters.map((one) => one.startMs).sort((a, b) => a - b),
        );
      }),
    );
  });
});

describe('read from elsewhere', () => {
  const read = (text: string) => {
    const { chapters, losses } = readChapters(text, newId);
    return {
      chapters: chapters.map(({ startMs, title, kind }) => [startMs, title, kind]),
      losses: losses.map(({ code, line }) => [code, line]),
    };
  };

  test('a list as it stands under a recording', () => {
    expect(read('Chapters:\n0:00 Hello\n1:30 Materials and tools\n(12:05) The repeat unit')).toEqual({
      chapters: [
        [0, 'Hello', 'opening'],
        [90_000, 'Materials and tools', 'materials'],
        [725_000, 'The repeat unit', 'repeat unit'],
      ],
      losses: [['text-without-time', 1]],
    });
  });

  test.each([
    ['- 0:00 Hello', 0, 'Hello'],
    ['[0:00] Hello', 0, 'Hello'],
    ['• [1:02:03] Ends', 3_723_000, 'Ends'],
    ['3. 12:05 – Repeat', 725_000, 'Repeat'],
    ['0:30 - 1:45 Opening rings', 30_000, 'Opening rings'],
    ['00:30: Opening rings', 30_000, 'Opening rings'],
    ['Opening rings — 0:30', 30_000, 'Opening rings'],
    ['Opening rings ........ (0:30)', 30_000, 'Opening rings'],
    ['0:30\nOpening rings', 30_000, 'Opening rings'],
    ['0:30 4:3 is a ratio', 30_000, '4:3 is a ratio'],
  ])('%j', (text, startMs, title) => {
    expect(read(text).chapters).toEqual([[startMs, title, 'opening']]);
  });

  test('a time in the middle of words is no chapter', () => {
    expect(read('Live at 18:00 in the workshop, bring pliers')).toEqual({
      chapters: [],
      losses: [['text-without-time', 1]],
    });
  });

  test('chapters out of order are put in order, and told', () => {
    expect(read('1:00 B\n0:30 A')).toEqual({
      chapters: [
        [30_000, 'A', 'opening'],
        [60_000, 'B', 'setup'],
      ],
      losses: [['out-of-order', 2]],
    });
  });

  test('JSON tells what it cannot take', () => {
    const file = JSON.stringify(
      {
        title: 'All of it',
        chapters: [
          { startTime: 0, title: 'A', img: 'https://example.org/a.png' },
          { startTime: -1, title: 'B' },
          { startTime: 'soon' },
          { startTime: 9, endTime: 11, title: 'x'.repeat(301) },
          { startTime: 20, toc: false },
          { startTime: 30.5 },
        ],
      },
      null,
      1,
    );
    const { chapters, losses } = read(file);
    expect(chapters).toEqual([
      [0, 'A', 'opening'],
      [9_000, 'x'.repeat(300), 'setup'],
      [30_500, '', 'setup'],
    ]);
    expect(losses.map(([code]) => code).sort()).toEqual([
      'chapter-end',
      'chapter-extra',
      'chapter-hidden',
      'header-text',
      'time-negative',
      'time-unreadable',
      'title-cut',
    ]);
    expect(read('{"chapters": 3')).toEqual({ chapters: [], losses: [['json-unreadable', 1]] });
  });

  test('ffmetadata in any time base', () => {
    const file = ';FFMETADATA1\n[CHAPTER]\nTIMEBASE=1/48000\nSTART=72000\nEND=96000\ntitle=a\\=b\\\nc\n';
    expect(read(file).chapters).toEqual([[1_500, 'a=b c', 'opening']]);
  });
});
