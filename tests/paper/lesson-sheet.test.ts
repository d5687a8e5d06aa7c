import { expect, test } from 'vitest';
import { lessonSheet, SHEET_PAGES, SHEET_SIZES } from '#app/paper/lesson-sheet.ts';
import { makePdfWithin } from '#app/paper/make-pdf.ts';
import { kitFor } from '#lib/kit/kit-list.ts';
import type { Content } from '#lib/lesson/content.ts';
import { freezeRevision } from '#lib/lesson/revision.ts';
import { aContent, aTranscript } from '#tests/support/a-content.ts';
import { pdfCodes, pdfPages, pdfText } from '#tests/support/read-pdf.ts';

const PLAYER = 'https://lessons.example/workshop/lower-withy/lesson/byzantine-bracelet/revision/3';

const sheetOf = (content: Content, bodyMm: number | null) => {
  const revision = freezeRevision({
    number: 3,
    publishedAt: new Date('2026-05-04T10:00:00Z'),
    workshop: { name: 'Lower Withy', slug: 'lower-withy' },
    content,
    cues: aTranscript,
    recording: {
      id: 'r',
      durationMs: 90_000,
      hasVideo: true,
      hasAudio: true,
      width: 640,
      height: 360,
      mediaType: 'video/mp4',
      mediaKey: 'recordings/r/playable.mp4',
      posterKey: null,
    },
    stillKeys: new Map(),
    terms: [],
    published: [],
  });
  const kit = bodyMm === null ? null : kitFor(content, bodyMm);
  if (kit && !kit.ok) throw new Error(kit.fault.code);
  const from = {
    lesson: {
      title: content.title,
      weave: content.weave,
      workshop: 'Lower Withy',
      language: 'en',
      address: 'https://lessons.example/workshop/lower-withy/lesson/byzantine-bracelet',
      revision: 3,
      at: new Date('2026-05-04T10:00:00Z'),
    },
    revision,
    kit: kit?.value ?? null,
    playsAt: (atMs: number) => `${PLAYER}?t=${atMs / 1000}#player`,
  };
  return makePdfWithin(SHEET_PAGES, SHEET_SIZES, (size) => lessonSheet(from, size));
};

test('a pupil’s own sheet: every step, her kit, a box for each round, and a code that plays each chapter', async () => {
  const content = aContent();
  const sheet = await sheetOf(content, 165);
  const text = await pdfText(sheet);
  // The worked kit of the standards tests: 165 mm takes 19 repeats and comes out 190 mm long.
  for (const told of [
    'For 165 mm (6.5 in) on the body: finished 190 mm (7.48 in) with the clasp closed.',
    'Work these steps 19 times.',
    'Small parts.',
    ...[...content.start, ...content.repeat, ...content.finishing].map(({ sentence }) => sentence),
    ...content.chapters.map(({ title }) => title),
  ])
    expect(text).toContain(told);
  expect(text).toMatch(/40 ?38 ?8 ?86/);
  expect(await pdfPages(sheet)).toBeLessThanOrEqual(SHEET_PAGES);
  expect(await pdfCodes(sheet)).toEqual(
    new Set([
      'https://lessons.example/workshop/lower-withy/lesson/byzantine-bracelet',
      ...content.chapters.map(({ startMs }) => `${PLAYER}?t=${startMs / 1000}#player`),
    ]),
  );
});

test('a sheet for everybody has all sizes beside each other', async () => {
  const text = await pdfText(await sheetOf(aContent(), null));
  expect(text).toContain('Work these steps 17 times for small, 19 times for medium, 21 times for large.');
  expect(text).toMatch(/small ?medium ?large/);
  expect(text).toMatch(/77 ?86 ?95/);
});

test('a longer lesson is set smaller, and what fits no leaf runs on', async () => {
  const step = (index: number) => ({
    id: `step-${index}`,
    sentence: `Step ${index}: ${'lay one ring over the other and look at it from the side; '.repeat(2)}`,
    atMs: 1_000 + index * 100,
    pictureText: '',
  });
  const of = (count: number) => aContent({ steps: Array.from({ length: count }, (_, index) => step(index)) });
  expect(await pdfPages(await sheetOf(of(14), 165))).toBe(SHEET_PAGES);
  const long = await sheetOf(of(80), 165);
  expect(await pdfPages(long)).toBeGreaterThan(SHEET_PAGES);
  expect(await pdfText(long)).toContain('Step 79: lay one ring');
});

test('the same revision gives the same sheet', async () => {
  const [one, other] = [await sheetOf(aContent(), null), await sheetOf(aContent(), null)];
  expect(Buffer.from(one).equals(Buffer.from(other))).toBe(true);
});
