/** A lesson of knots and beads is whole without a ring, and nothing that a pupil gets speaks of one. */
import { createElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { LessonPage } from '#app/lesson-page/lesson-page.tsx';
import { publicAddresses } from '#app/lesson-page/page-addresses.ts';
import { kitSheet } from '#app/paper/kit-sheet.ts';
import { lessonSheet } from '#app/paper/lesson-sheet.ts';
import { makePdf } from '#app/paper/make-pdf.ts';
import { DEFAULT_SETUP } from '#lib/description/description-setup.ts';
import { composeDescription } from '#lib/description/description-text.ts';
import { kitCsv } from '#lib/kit/kit-csv.ts';
import { kitFor } from '#lib/kit/kit-list.ts';
import { offeredCautions } from '#lib/lesson/cautions.ts';
import { missingFrom } from '#lib/lesson/missing.ts';
import { pageSteps } from '#lib/lesson/page-steps.ts';
import { freezeRevision } from '#lib/lesson/revision.ts';
import { knottedContent } from '#tests/support/a-knotted-lesson.ts';
import { pdfText } from '#tests/support/read-pdf.ts';

// The piece is knotted and tied at its ends: it has no clasp, and nobody weaves it.
const RING = /\b(rings?|clasp|weave)\b/i;
const content = { ...knottedContent(), cautions: [] };
const withCautions = {
  ...content,
  cautions: offeredCautions(content).map(({ id }) => ({ id, of: id, text: '' })),
};
const recording = {
  ...{ id: 'r', durationMs: 90_000, hasVideo: true, hasAudio: true, width: 640, height: 360 },
  ...{ mediaType: 'video/mp4', mediaKey: 'recordings/r/playable.mp4', posterKey: null },
};
const revision = freezeRevision({
  number: 1,
  publishedAt: new Date('2026-03-01T10:00:00Z'),
  workshop: { name: 'Kettle Row Cords', slug: 'kettle-row' },
  content: withCautions,
  cues: [],
  recording,
  stillKeys: new Map(),
  terms: [],
  published: [],
});
const sheetLesson = {
  ...{ title: content.title, weave: content.weave, workshop: 'Kettle Row Cords', language: 'en' },
  ...{ address: null, revision: 1, at: new Date('2026-03-01T10:00:00Z') },
};
const kit = kitFor(withCautions, 165);

// By hand: 165 + 15 ease - 40 ends - 0 clasp = 140; 140 / 10 a repeat = 14; 2 beads each = 28; 3 m of cord for every 100 mm of 180 = 5.4 m.
test('its kit counts beads for each repeat and cord by length', () => {
  if (!kit.ok) throw new Error(kit.fault.code);
  expect([kit.value.repeats, kit.value.length?.finishedMm]).toEqual([14, 180]);
  expect(kit.value.materials.map(({ material, needMilli }) => [material.name, needMilli])).toEqual([
    ['turquoise bead', 28_000],
    ['waxed cord', 5_400],
  ]);
});

test('nothing blocks it, and cautions for small parts and hands are offered', () => {
  expect(
    missingFrom({ content: withCautions, cues: [], recording: { ...recording, hasAudio: false } }).blocks,
  ).toEqual([]);
  expect(offeredCautions(content).map(({ id }) => id)).toEqual(['small-parts', 'strain']);
});

test('its steps stand under the parts that their chapters name', () => {
  expect(pageSteps(content).map(({ id, part }) => [id, part])).toEqual([
    ['fold-cord', 'setup'],
    ['thread', 'repeat'],
    ['knot', 'repeat'],
    ['tie', 'finishing'],
    ['trim', 'finishing'],
  ]);
});

describe('nothing that a pupil gets speaks of rings', () => {
  test('the page', () => {
    const page = renderToStaticMarkup(
      createElement(LessonPage, {
        revision,
        madeFiles: [],
        poster: null,
        addresses: publicAddresses('kettle-row', 'knots', 1, 'latest'),
        latest: 1,
        asked: { text: '165', unit: 'mm', of: 'wrist' },
        held: null,
        earlier: [],
        history: [],
        playAt: null,
      }),
    );
    const words = page.replace(/<[^>]*>/g, ' ');
    expect(words).toContain('Work these steps 14 times for medium.');
    expect(words).toContain('turquoise bead');
    expect(words).not.toMatch(RING);
    // Names of things that only a screen reader says.
    for (const [, name] of page.matchAll(/(?:aria-label|alt|title)="([^"]*)"/g))
      expect(name).not.toMatch(RING);
  });

  test('the kit and the sheets', async () => {
    if (!kit.ok) throw new Error(kit.fault.code);
    expect(kitCsv(kit.value).split('\r\n').slice(1).join('\n')).not.toMatch(RING);
    expect(await pdfText(await makePdf(kitSheet(sheetLesson, kit.value)))).not.toMatch(RING);
    const from = { lesson: sheetLesson, revision, playsAt: null };
    for (const mine of [kit.value, null]) {
      const text = await pdfText(await makePdf(lessonSheet({ ...from, kit: mine }, 12)));
      expect(text).toContain('Slide two beads on and');
      expect(text).not.toMatch(RING);
    }
  });

  test('the description text', () => {
    const { text } = composeDescription({
      ...{ content: withCautions, setup: DEFAULT_SETUP, durationMs: 90_000, format: 'text' },
      lessonAddress: 'https://lessons.example/l',
    });
    expect(text).toContain('Materials\n');
    expect(text).not.toMatch(RING);
  });
});
