import { randomUUID } from 'node:crypto';
import type { Page } from 'playwright-core';
import { beforeAll, expect, test } from 'vitest';
import { findDraft } from '#lib/data/lessons.ts';
import { aUser, someCues } from '#tests/support/a-lesson.ts';
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

async function mend(page: Page, cueId: string, text: string): Promise<void> {
  const editor = page.locator('[data-editor]');
  // A note that comes just then moves the line away under the pointer: who misses it clicks again.
  for (let tries = 0; tries < 5 && !(await editor.isVisible()); tries++) {
    await page.locator(`[data-text="${cueId}"]`).dblclick({ position: { x: 5, y: 10 } });
    await editor.waitFor({ timeout: 3_000 }).catch(() => undefined);
  }
  await editor.fill(text);
  await page.keyboard.press('Escape');
}

/** Two people with the lesson open: its owner Ilo, and Mara, an editor. */
async function twoPeople(): Promise<{ lesson: OpenedLesson; ilo: Page; mara: Page }> {
  const lesson = await aMarkedLesson(app, someCues(8));
  const { workshopId } = lesson;
  const userId = await aUser(app.db, 'Mara Ellwood');
  await app.db.member.create({ data: { id: randomUUID(), workshopId, userId, role: 'editor' } });
  const [ilo, mara] = [await browser.open(), await browser.open()];
  await openTranscript(ilo, app, lesson);
  await openTranscript(mara, app, lesson, userId);
  return { lesson, ilo, mara };
}

const savedTexts = async (lesson: OpenedLesson) =>
  (await findDraft(app.db, lesson))?.cues.map((cue) => cue.text) ?? [];

test('two windows of one person: other things changed are taken in, and a note says so', async () => {
  const lesson = await aMarkedLesson(app, someCues(8));
  const first = await browser.open();
  await openTranscript(first, app, lesson);
  const second = await first.context().newPage();
  await openTranscript(second, app, lesson);
  await mend(first, 'cue-00001', 'Mended here.');
  await waitUntilSaved(first);
  await mend(second, 'cue-00002', 'Mended there.');
  await second.getByText('Changes from another window were taken in.').waitFor();
  await waitUntilSaved(second);
  browser.forgive(/409/);
  expect(await textOf(second, 'cue-00001')).toBe('Mended here.');
  expect((await savedTexts(lesson)).slice(1, 3)).toEqual(['Mended here.', 'Mended there.']);
});

test('two people changed the same cue: both are shown, nothing is written until it is decided', async () => {
  const { lesson, ilo, mara } = await twoPeople();
  await mend(mara, 'cue-00001', 'As Mara has it.');
  await waitUntilSaved(mara);
  // Without a line for a moment, so that both changes wait together.
  await ilo.route('**/draft', (route) => route.abort());
  await mend(ilo, 'cue-00001', 'As Ilo has it.');
  await mend(ilo, 'cue-00005', 'Only Ilo was here.');
  await ilo.unroute('**/draft');
  const dialog = ilo.getByRole('dialog', { name: /Mara Ellwood changed the same thing/ });
  await dialog.waitFor();
  browser.forgive(/409|ERR_FAILED/);
  expect(await dialog.innerText()).toContain('As Mara has it.');
  expect(await dialog.innerText()).toContain('As Ilo has it.');
  expect((await savedTexts(lesson))[1]).toBe('As Mara has it.');

  await dialog.getByRole('button', { name: 'Go on with these' }).click();
  await dialog.getByText('One is still undecided.').waitFor();
  await dialog.getByRole('radio', { name: /Keep mine/ }).check();
  await dialog.getByRole('button', { name: 'Go on with these' }).click();
  await waitUntilSaved(ilo);
  expect((await savedTexts(lesson))[1]).toBe('As Ilo has it.');
  expect((await savedTexts(lesson))[5]).toBe('Only Ilo was here.');
});

test('taking theirs leaves own changes of other things', async () => {
  const { lesson, ilo, mara } = await twoPeople();
  await mend(mara, 'cue-00001', 'As Mara has it.');
  await waitUntilSaved(mara);
  await mend(ilo, 'cue-00001', 'As Ilo has it.');
  const dialog = ilo.getByRole('dialog', { name: /changed the same thing/ });
  await dialog.waitFor();
  browser.forgive(/409/);
  await dialog.getByRole('radio', { name: /Take theirs/ }).check();
  await dialog.getByRole('button', { name: 'Go on with these' }).click();
  await waitUntilSaved(ilo);
  expect(await textOf(ilo, 'cue-00001')).toBe('As Mara has it.');
  expect((await savedTexts(lesson))[1]).toBe('As Mara has it.');
});

test('what could not be saved is kept through a reload and saved when the line is back', async () => {
  const lesson = await aMarkedLesson(app, someCues(8));
  const page = await browser.open();
  await openTranscript(page, app, lesson);
  await page.route('**/draft', (route) =>
    route.request().method() === 'PATCH' ? route.abort() : route.continue(),
  );
  await mend(page, 'cue-00003', 'Written without a line.');
  await page.getByText('Not saved yet: offline, will try again').first().waitFor();
  expect((await savedTexts(lesson))[3]).toBe('Sentence 4.');
  await page.unroute('**/draft');
  await page.reload();
  await page.getByText('A change that had not been saved was taken up again.').waitFor();
  await waitUntilSaved(page);
  browser.forgive(/ERR_FAILED/);
  expect((await savedTexts(lesson))[3]).toBe('Written without a line.');
});
