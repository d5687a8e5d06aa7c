/** What is said aloud otherwise than it is written becomes a correction, and a told placement a step: by keyboard. */
import { beforeAll, expect, test } from 'vitest';
import { findDraft } from '#lib/data/lessons.ts';
import { BRACELET } from '#tests/facts/a-told-bracelet.ts';
import { sharedApp, type TestApp } from '#tests/support/app.ts';
import { axeOn } from '#tests/support/axe.ts';
import { openBrowser, type TestBrowser } from '#tests/support/chromium.ts';
import { aMarkedLesson, openTranscript, waitUntilSaved } from '#tests/support/transcript-page.ts';

let app: TestApp;
let browser: TestBrowser;

beforeAll(async () => {
  app = await sharedApp();
  browser = await openBrowser(app.address);
});

const said = (id: string, startMs: number, text: string) => ({
  id,
  startMs,
  endMs: startMs + 5_000,
  text,
  settings: '',
});
const cues = [
  said('wire', 4_000, 'The large red rings are sixteen gauge SWG.'),
  said(
    'step',
    204_000,
    'Take an open large red ring, pick up two closed green rings, go through the last pair from the back, and close it.',
  ),
];

test('a fact becomes a correction of its moment, and what was told becomes a step of the repeat', async () => {
  const lesson = await aMarkedLesson(app, cues);
  const content = { ...BRACELET, schema: 1 as const };
  await app.db.lesson.update({ where: { id: lesson.lessonId }, data: { content } });
  const page = await browser.open();
  await openTranscript(page, app, lesson);
  await page.goto(lesson.address.replace('/transcript', '/check'));
  const place = page.getByRole('region', { name: 'Said aloud, beside what is written' });
  await place.getByText('The lesson has: 18 SWG (1.2192 mm).').waitFor();

  await place.getByRole('button', { name: /^Make it a correction/ }).press('Enter');
  await place.getByText('There is a correction for this moment.').waitFor();
  await place.getByRole('button', { name: /^Add the step/ }).press('Enter');
  const look = place.getByRole('link', { name: 'Look at it' });
  await look.waitFor();
  await waitUntilSaved(page);
  const draft = await findDraft(app.db, lesson);
  expect(draft?.content.corrections).toMatchObject([
    { kind: 'said wrongly', startMs: 4_000, right: expect.stringContaining('18 SWG'), revision: null },
  ]);
  const [, step] = draft?.content.repeat ?? [];
  expect(step).toMatchObject({
    opened: 'large',
    carries: [{ ringKind: 'small', count: 2 }],
    passes: [{ from: 'back' }, { from: 'back' }],
  });
  const { violations } = await axeOn(page).include('section[aria-labelledby="said-title"]').analyze();
  expect(violations.map(({ id }) => id)).toEqual([]);

  await look.press('Enter');
  await page.waitForURL(/\/making#/);
  await expect
    .poll(() =>
      page.evaluate((id) => document.getElementById(id)?.contains(document.activeElement), step?.id ?? ''),
    )
    .toBe(true);
  await page.goto(lesson.address.replace('/transcript', '/check'));
  await page.getByRole('button', { name: /^Undo/ }).waitFor({ state: 'attached' });
  await page.goto(lesson.address.replace('/transcript', '/corrections'));
  // Plain values, so that the program can look for them elsewhere in the lesson.
  await page.getByText('16 gauge SWG', { exact: true }).first().waitFor();
});
