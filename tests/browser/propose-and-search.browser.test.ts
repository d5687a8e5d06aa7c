/** Proposed chapters decided by keyboard, and search that leads to the second, with script and without. */
import { randomUUID } from 'node:crypto';
import type { Page } from 'playwright-core';
import { beforeAll, expect, test } from 'vitest';
import { publishLesson } from '#lib/bench/publish-lesson.ts';
import { findDraft } from '#lib/data/lessons.ts';
import { aContent } from '#tests/support/a-content.ts';
import { sharedApp, type TestApp } from '#tests/support/app.ts';
import { axeOn } from '#tests/support/axe.ts';
import { openBrowser, type TestBrowser } from '#tests/support/chromium.ts';
import { readToldLesson } from '#tests/support/told-lessons.ts';
import { aMarkedLesson, openTranscript, waitUntilSaved } from '#tests/support/transcript-page.ts';

let app: TestApp;
let browser: TestBrowser;

beforeAll(async () => {
  app = await sharedApp();
  browser = await openBrowser(app.address);
});

const told = readToldLesson('half-persian-earrings');
const focused = (page: Page) => page.evaluate(() => document.activeElement?.textContent ?? '');

async function chaptersOf(page: Page, lesson: { workshopId: string; lessonId: string }) {
  await waitUntilSaved(page);
  return (await findDraft(app.db, lesson))?.content.chapters ?? [];
}

test('by keyboard: fewer, accept one, refuse one, accept all, undo', async () => {
  const lesson = await aMarkedLesson(app, told.cues);
  const page = await browser.open();
  await openTranscript(page, app, lesson);
  await page.getByRole('button', { name: 'Propose chapters' }).press('Enter');
  await page.getByRole('heading', { name: 'Proposed chapters' }).waitFor();
  expect(await focused(page)).toBe('Proposed chapters');

  const slider = page.getByLabel('Chapters in all');
  await slider.press('Home');
  await slider.press('ArrowRight');
  expect(await page.locator('[data-accept]').count()).toBe(2);
  for (let steps = 0; steps < 6; steps += 1) await slider.press('ArrowRight');
  const rows = page.locator('[data-accept]');
  const before = await rows.count();
  expect(before).toBeGreaterThan(4);
  expect(await page.getByText(/ says “/).count()).toBeGreaterThan(2);

  await rows.nth(1).press('Enter');
  await expect.poll(() => rows.count()).toBe(before - 1);
  expect(await focused(page)).toContain('Accept');
  expect(await chaptersOf(page, lesson)).toHaveLength(1);

  await page.keyboard.press('Tab');
  expect(await focused(page)).toContain('Not here');
  await page.keyboard.press('Enter');
  await page.getByText(/^Refused\./).waitFor();
  await page.getByRole('button', { name: 'Offer the refused one again' }).waitFor();

  const left = await rows.count();
  await page.getByRole('button', { name: `Accept all ${left}` }).press('Enter');
  await expect.poll(async () => (await chaptersOf(page, lesson)).length).toBe(left + 1);
  const chapters = await chaptersOf(page, lesson);
  expect(chapters.every(({ title }) => title !== '')).toBe(true);
  expect(await focused(page)).toBe('Proposed chapters');

  const { violations } = await axeOn(page).include('section').analyze();
  expect(violations.map(({ id }) => id)).toEqual([]);
  await page.getByRole('button', { name: /^Undo/ }).click();
  await expect.poll(async () => (await chaptersOf(page, lesson)).length).toBe(1);
});

test('search leads a member to the cue, and a pupil without script to the second; drafts stay private', async () => {
  const lesson = await aMarkedLesson(app, told.cues);
  const { slug } = await app.db.workshop.findUniqueOrThrow({ where: { id: lesson.workshopId } });
  const page = await browser.open();
  await openTranscript(page, app, lesson);
  await page.goto(`${app.address}/bench/${slug}`);
  await page.getByLabel('Search all transcripts and chapters').fill('wireless');
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: '“wireless”: one place' }).waitFor();
  const place = page.locator('article a').first();
  expect(await place.locator('mark').innerText()).toBe('wireless');
  await place.press('Enter');
  await page.locator('[data-text]').first().waitFor();
  await expect.poll(() => focused(page)).toContain('wireless');

  const pupil = await browser.open({ javaScriptEnabled: false, viewport: { width: 390, height: 844 } });
  const publicPage = `${app.address}/workshop/${slug}`;
  await pupil.goto(`${publicPage}?words=wireless`);
  expect(await pupil.locator('mark').count()).toBe(0);

  const draft = await findDraft(app.db, lesson);
  const content = { ...aContent({ title: 'Earrings' }), schema: 1 as const };
  await app.db.lesson.update({ where: { id: lesson.lessonId }, data: { content } });
  const published = await publishLesson(
    { db: app.db, now: () => new Date(), newId: randomUUID },
    { current: async () => null, takeStill: async () => null, makeLater: async () => {} },
    {
      ...lesson,
      requestId: randomUUID(),
      version: draft?.version ?? 1,
      workshop: { name: 'Kettle Row Rings', slug },
    },
  );
  expect(published.ok).toBe(true);
  await pupil.goto(publicPage);
  await pupil.getByLabel('Search what is said in these lessons').fill('wireless');
  await pupil.getByRole('button', { name: 'Search' }).click();
  const link = pupil.locator('article a').first();
  const said = told.cues.find(({ text }) => text.includes('wireless'));
  expect(await link.getAttribute('href')).toContain(`?t=${Math.floor((said?.startMs ?? 0) / 1000)}`);
  expect(await pupil.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  await link.click();
  await pupil.getByRole('heading', { name: 'Earrings' }).first().waitFor();
});
