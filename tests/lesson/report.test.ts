import { expect, test } from 'vitest';
import { correction } from '#lib/lesson/content.ts';
import { CONCERNS, correctionOf, cueAt, pupilReport, reportedMs } from '#lib/lesson/report.ts';
import { aTranscript } from '#tests/support/a-content.ts';

const report = (over: Record<string, unknown> = {}) =>
  pupilReport.parse({
    revision: '2',
    concerns: 'spoken',
    at: '0:33',
    wrong: 'It is not.',
    right: '',
    ...over,
  });

test('texts are kept as they were written, without what no database holds', () => {
  expect(report({ wrong: ' one\r\ntwo\u0000\uD800 ' }).wrong).toBe('one\ntwo�');
  expect(pupilReport.safeParse({ ...report(), wrong: ' \r\n ' }).success).toBe(false);
  // As many signs as the form takes, each of its line ends sent as two.
  expect(report({ wrong: 'a\r\n'.repeat(1_000) }).wrong).toHaveLength(1_999);
  expect(pupilReport.safeParse({ ...report(), revision: '1.5' }).success).toBe(false);
});

test.each([
  ['2:15', 135_000],
  ['1:02:03', 3_723_000],
  ['42', 42_000],
  ['', null],
  ['near the clasp', null],
])('the moment %j', (at, ms) => expect(reportedMs({ at })).toBe(ms));

test('a moment belongs to the cue that is said then, or was said just before', () => {
  expect(cueAt(aTranscript, 33_000)?.id).toBe('c2');
  expect(cueAt(aTranscript, 40_000)?.id).toBe('c2');
  expect(cueAt(aTranscript, 41_000)).toBeNull();
  expect(cueAt(aTranscript, 30_999)).toBeNull();
  expect(cueAt([], 0)).toBeNull();
});

test('what was said stands in the correction as it was said, everything else as the pupil put it', () => {
  const cue = cueAt(aTranscript, 33_000);
  expect(correctionOf('co', report({ right: '18 SWG' }), cue)).toMatchObject({
    kind: 'said wrongly',
    startMs: 31_000,
    endMs: 36_000,
    wrong: 'Take an eighteen gauge ring.',
    right: '18 SWG',
    affects: 'everyone who works by revision 2 or an earlier one',
    kitsChange: false,
    revision: null,
  });
  expect(correctionOf('co', report({ concerns: 'kit' }), cue)).toMatchObject({
    kind: 'kit wrong',
    startMs: 31_000,
    wrong: 'It is not.',
    kitsChange: true,
  });
  expect(correctionOf('co', report(), null)).toMatchObject({
    startMs: null,
    endMs: null,
    wrong: 'It is not.',
  });
  for (const concerns of CONCERNS)
    expect(correction.safeParse(correctionOf('co', report({ concerns }), cue)).success).toBe(true);
});
