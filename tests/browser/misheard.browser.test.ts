/** Misheard words: found by a worker of the built program, decided by keyboard, remembered by lesson and workshop. */
import type { Page } from 'playwright-core';
import { beforeAll, expect, test } from 'vitest';
import { findDecisions } from '#lib/data/glossary.ts';
import { findDraft } from '#lib/data/lessons.ts';
import { sharedApp, type TestApp } from '#tests/support/app.ts';
import { axeOn } from '#tests/support/axe.ts';
import { openBrowser, type TestBrowser } from '#tests/support/chromium.ts';
import { aMarkedLesson, openTranscript, textOf, waitUntilSaved } from '#tests/support/transcript-page.ts';

let app: TestApp;
let browser: TestBrowser;

beforeAll(async () => {
  app = await sharedApp();
  browser = await openBrowser(app.address);
});

const SENTENCES = [
  'Today we make a busy time bracelet of copper rings.',
  'You need a lobster class, and pliers with smooth jaws.',
  'Hang the lobster class on the last ring.',
  'Starling silver rings are dear, so take copper.',
  'The wire is sixty gauge.',
];
const cues = SENTENCES.map((text, at) => ({
  id: `cue-${at}`,
  startMs: at * 4_000,
  endMs: at * 4_000 + 3_500,
  text,
  settings: '',
}));

const place = (page: Page) => page.getByRole('region', { name: 'To decide' });

async function press(page: Page, name: string | RegExp): Promise<void> {
  const button = place(page).getByRole('button', { name, exact: typeof name === 'string' });
  await button.focus();
  await page.keyboard.press('Enter');
}

test('words that may be misheard are taken, left, and never offered again', async () => {
  const lesson = await aMarkedLesson(app, cues);
  const page = await browser.open();
  await openTranscript(page, app, lesson);
  await place(page).getByText('5 places that may be misheard.').waitFor();
  for (const { id, text } of cues) expect(await textOf(page, id)).toBe(text);

  await press(page, 'Look');
  await place(page).getByText('busy time').first().waitFor();
  const axe = await axeOn(page).include('section[aria-labelledby]').analyze();
  expect(axe.violations).toEqual([]);
  await press(page, 'Take');
  await expect.poll(() => textOf(page, 'cue-0')).toBe('Today we make a byzantine bracelet of copper rings.');

  await press(page, 'Take all 2');
  await expect.poll(() => textOf(page, 'cue-2')).toBe('Hang the lobster clasp on the last ring.');
  expect(await textOf(page, 'cue-1')).toBe('You need a lobster clasp, and pliers with smooth jaws.');

  await press(page, 'Never offer this again');
  await place(page).getByText('No wire is sold in that gauge').waitFor();
  await press(page, 'Leave');
  await place(page).getByText('No words that may be misheard.').waitFor();
  expect(await textOf(page, 'cue-3')).toBe(SENTENCES[3]);
  expect(await textOf(page, 'cue-4')).toBe(SENTENCES[4]);
  await waitUntilSaved(page);

  const kept = await findDraft(app.db, lesson);
  expect(kept?.content.dismissed).toHaveLength(1);
  await expect
    .poll(async () =>
      (await findDecisions(app.db, lesson.workshopId))
        .map(({ heard, taken, never }) => `${heard} ${taken} ${never}`)
        .sort(),
    )
    .toEqual(['busy time 1 false', 'lobster class 2 false', 'starling silver 0 true']);

  await page.getByRole('button', { name: /^Undo/ }).click();
  await page.getByRole('button', { name: /^Undo/ }).click();
  await expect.poll(() => textOf(page, 'cue-2')).toBe('Hang the lobster class on the last ring.');
  await page.reload();
  await place(page).getByText('3 places that may be misheard.').waitFor();
  await press(page, 'Look');
  await place(page).getByText('You took this before.').waitFor();

  await page.getByRole('link', { name: 'The workshop’s glossary' }).click();
  await page.getByRole('button', { name: 'Forget starling silver' }).waitFor();
  await page.getByLabel('Term', { exact: true }).fill('Withy knot');
  await page.getByLabel('Sounds like').fill('withy not');
  await page.keyboard.press('Enter');
  await page.getByText('Kept. It is looked for in transcripts from now on.').waitFor();
  await page.getByRole('button', { name: 'Forget starling silver' }).click();
  await page.getByRole('button', { name: 'Forget starling silver' }).waitFor({ state: 'detached' });
  const whole = await axeOn(page).analyze();
  expect(whole.violations).toEqual([]);
});
