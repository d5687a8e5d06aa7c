import type { Page } from 'playwright-core';
import { beforeAll, expect, test } from 'vitest';
import { findDraft } from '#lib/data/lessons.ts';
import { someCues } from '#tests/support/a-lesson.ts';
import { sharedApp, type TestApp } from '#tests/support/app.ts';
import { openBrowser, type TestBrowser } from '#tests/support/chromium.ts';
import {
  aMarkedLesson,
  type OpenedLesson,
  openTranscript,
  textOf,
  waitUntilSaved,
} from '#tests/support/transcript-page.ts';

let app: TestApp;
let browser: TestBrowser;

beforeAll(async () => {
  app = await sharedApp();
  browser = await openBrowser(app.address);
});

const words = (at: number) =>
  `Number ${at + 1}: ${'pass the ring through the pair from the front and close it. '.repeat(1 + (at % 3))}`.trim();
const lessonOf = (count: number): Promise<OpenedLesson> => aMarkedLesson(app, someCues(count, words));

/** Seconds that the page's main thread works while something is done. */
async function workOf(page: Page, act: () => Promise<void>): Promise<number> {
  const session = await page.context().newCDPSession(page);
  await session.send('Performance.enable');
  const busy = async () => {
    const { metrics } = await session.send('Performance.getMetrics');
    return metrics.find((metric) => metric.name === 'TaskDuration')?.value ?? 0;
  };
  const before = await busy();
  await act();
  const after = await busy();
  await session.detach();
  return after - before;
}

async function typeIn(page: Page, cueId: string): Promise<void> {
  await page.locator(`[data-text="${cueId}"]`).dblclick({ position: { x: 5, y: 10 } });
  await page.keyboard.press('Control+End');
  await page.keyboard.type(' Slowly, and then once more.', { delay: 20 });
  await page.keyboard.press('Escape');
}

test('5,000 cues: typing, scrolling and jumping, with few rows in the page at any time', async () => {
  const short = await browser.open();
  const brief = await lessonOf(50);
  await openTranscript(short, app, brief);
  const shortWork = await workOf(short, () => typeIn(short, 'cue-00002'));

  const page = await browser.open();
  const lesson = await lessonOf(5_000);
  await openTranscript(page, app, lesson);
  const work = await workOf(page, () => typeIn(page, 'cue-00002'));
  console.log(`Main-thread work of typing, 5,000 cues against 50: ${(work / shortWork).toFixed(2)} times`);

  const rows = () => page.locator('[data-cue]').count();
  for (let step = 1; step <= 10; step += 1) {
    await page.evaluate((share) => window.scrollTo({ top: document.body.scrollHeight * share }), step / 10);
    await page.waitForTimeout(100);
    expect(await rows()).toBeLessThan(120);
  }
  await expect.poll(() => page.locator('[data-cue="cue-04999"]').count()).toBe(1);
  expect(await page.locator('li[aria-posinset="5000"]').getAttribute('aria-setsize')).toBe('5000');

  // The cue that has the keyboard's place is still there, though far outside the window.
  expect(await page.evaluate(() => document.activeElement?.getAttribute('data-text'))).toBe('cue-00002');
  await page.keyboard.press('ArrowDown');
  await expect
    .poll(() => page.evaluate(() => document.activeElement?.getAttribute('data-text')))
    .toBe('cue-00003');
  await page.locator('[data-text="cue-00003"]').waitFor({ state: 'visible' });

  await waitUntilSaved(page);
  const draft = await findDraft(app.db, lesson);
  expect(draft?.cues[2]?.text).toBe(`${words(2)} Slowly, and then once more.`);
  expect(draft?.cues).toHaveLength(5_000);
});

test('all 5,000 cues are shifted at once, saved, and taken back', async () => {
  const page = await browser.open();
  const lesson = await lessonOf(5_000);
  await openTranscript(page, app, lesson);
  const start = (await findDraft(app.db, lesson))?.cues;
  await page.locator('[data-text="cue-00000"]').click({ position: { x: 5, y: 10 } });
  await page.getByRole('button', { name: 'Shift…' }).click();
  await page.getByLabel('Which').selectOption('this and all that follow');
  await page.getByRole('button', { name: 'Later', exact: true }).click();
  await page.getByRole('button', { name: 'Undo: shift 5000 cues' }).waitFor();
  await waitUntilSaved(page);
  expect((await findDraft(app.db, lesson))?.cues.at(-1)?.startMs).toBe(4_999 * 2_100 + 500);
  await page.getByRole('button', { name: 'Undo: shift 5000 cues' }).click();
  await waitUntilSaved(page);
  expect((await findDraft(app.db, lesson))?.cues).toEqual(start);
  expect(await textOf(page, 'cue-00000')).toBe(words(0));
});
