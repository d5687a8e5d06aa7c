import type { Locator, Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { findDraft } from '#lib/data/lessons.ts';
import { someCues } from '#tests/support/a-lesson.ts';
import { aReadyRecording } from '#tests/support/a-ready-recording.ts';
import { sharedApp, type TestApp } from '#tests/support/app.ts';
import { axeOn } from '#tests/support/axe.ts';
import { openBrowser, type TestBrowser } from '#tests/support/chromium.ts';
import {
  aMarkedLesson,
  type OpenedLesson,
  openTranscript,
  tabTo,
  textOf,
  waitUntilSaved,
} from '#tests/support/transcript-page.ts';

let app: TestApp;
let browser: TestBrowser;

beforeAll(async () => {
  app = await sharedApp();
  browser = await openBrowser(app.address);
});

const words = (at: number) => `Take ring number ${at + 1} and open it with both pliers.`;

async function aTaughtLesson(): Promise<OpenedLesson> {
  const lesson = await aMarkedLesson(app, someCues(12, words));
  await aReadyRecording(app.db, app.files, lesson.lessonId, 26_000);
  return lesson;
}

async function savedDraft(page: Page, lesson: OpenedLesson) {
  await waitUntilSaved(page);
  const draft = await findDraft(app.db, lesson);
  if (!draft) throw new Error('no draft');
  const { version, ...rest } = draft;
  return rest;
}

async function pressWhileItCan(button: Locator): Promise<void> {
  for (let steps = 0; steps < 40 && (await button.getAttribute('aria-disabled')) !== 'true'; steps += 1) {
    await button.click();
  }
}

const undo = (page: Page) => page.getByRole('button', { name: /^Undo/ });

test('by mouse: mend, split, join, shift, chapters; undone all the way it is as it was', async () => {
  const lesson = await aTaughtLesson();
  const page = await browser.open();
  await openTranscript(page, app, lesson);
  const start = await savedDraft(page, lesson);

  await page.locator('[data-text="cue-00001"]').dblclick({ position: { x: 60, y: 12 } });
  await page.locator('[data-editor]').fill('Take it. Close it.');
  await page.keyboard.press('Escape');
  expect(await textOf(page, 'cue-00001')).toBe('Take it. Close it.');

  await page.getByRole('button', { name: 'Edit text' }).click();
  await page.keyboard.press('Home');
  for (let at = 0; at < 9; at += 1) await page.keyboard.press('ArrowRight');
  await page.getByRole('button', { name: 'Split at the caret' }).click();
  await page.keyboard.press('Escape');
  expect(await textOf(page, 'cue-00001')).toBe('Take it.');

  await page.locator('[data-text="cue-00003"]').click({ position: { x: 5, y: 12 } });
  await page.getByRole('button', { name: 'Join with next' }).click();
  expect(await textOf(page, 'cue-00003')).toBe(`${words(3)} ${words(4)}`);

  await page.getByRole('button', { name: 'Shift…' }).click();
  await page.getByLabel('Which').selectOption('this and all that follow');
  await page.getByRole('button', { name: 'Later', exact: true }).click();

  await page.locator('[data-text="cue-00002"]').click({ position: { x: 5, y: 12 } });
  await page.getByRole('button', { name: 'Chapter from here' }).click();
  await page.keyboard.type('The unit, slowly');
  await page.getByLabel('Kind of chapter').selectOption('Repeat unit');
  await page.getByRole('button', { name: 'from: a tenth of a second later' }).click();

  const marked = await savedDraft(page, lesson);
  expect(marked.content.chapters).toMatchObject([
    { kind: 'repeat unit', title: 'The unit, slowly', startMs: 4_300 },
  ]);
  expect(marked.cues).toHaveLength(12);
  expect(marked.cues.find((cue) => cue.id === 'cue-00005')?.startMs).toBe(5 * 2_100 + 500);

  await pressWhileItCan(undo(page));
  expect(await savedDraft(page, lesson)).toEqual(start);
  await pressWhileItCan(page.getByRole('button', { name: /^Redo/ }));
  expect(await savedDraft(page, lesson)).toEqual(marked);

  await page.reload();
  await page.locator('[data-chapter-title]').waitFor();
  expect(await page.locator('[data-chapter-title]').inputValue()).toBe('The unit, slowly');
  expect(await savedDraft(page, lesson)).toEqual(marked);
});

test('by keyboard alone: mend, split, join, shift, chapters; undone all the way it is as it was', async () => {
  const lesson = await aTaughtLesson();
  const page = await browser.open();
  await openTranscript(page, app, lesson);
  const start = await savedDraft(page, lesson);
  const press = (key: string) => page.keyboard.press(key);

  await tabTo(page, '[data-text="cue-00000"]');
  await press('ArrowDown');
  await press('Enter');
  await press('Control+A');
  await page.keyboard.type('Take it. Close it.');
  await press('Enter');
  expect(await textOf(page, 'cue-00001')).toBe('Take it. Close it.');
  await press('Enter');
  await press('Home');
  for (let at = 0; at < 9; at += 1) await press('ArrowRight');
  await press('Control+Enter');
  await press('Escape');
  expect(await textOf(page, 'cue-00001')).toBe('Take it.');
  expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Close it.');
  await press('Enter');
  await press('Home');
  await press('Backspace');
  await press('Escape');
  expect(await textOf(page, 'cue-00001')).toBe('Take it. Close it.');
  await press('Alt+J');
  expect(await textOf(page, 'cue-00001')).toBe(`Take it. Close it. ${words(2)}`);

  await tabTo(page, 'button[aria-expanded="false"]');
  await press('Space');
  await tabTo(page, 'fieldset input');
  await press('Control+A');
  await page.keyboard.type('0.25');
  await tabTo(page, 'fieldset button:last-of-type');
  await press('Enter');
  expect((await savedDraft(page, lesson)).cues[1]?.startMs).toBe(2_350);

  await press('Alt+C');
  await page.keyboard.type('Start');
  await tabTo(page, '[role="slider"]', 'Shift+Tab');
  await press('ArrowDown');
  await tabTo(page, '[aria-label="Kind of chapter"]');
  await page.keyboard.type('setup');
  expect((await savedDraft(page, lesson)).content.chapters).toMatchObject([
    { title: 'Start', startMs: 2_000, kind: 'setup' },
  ]);

  for (let steps = 0; steps < 40 && (await undo(page).getAttribute('aria-disabled')) !== 'true'; steps += 1) {
    await press('Control+z');
  }
  expect(await savedDraft(page, lesson)).toEqual(start);
  await press('Control+Shift+z');
  expect(await textOf(page, 'cue-00001')).toBe('Take it. Close it.');
});

test('clicking a word plays from it, and the ribbon marks the cue that is played', async () => {
  const lesson = await aTaughtLesson();
  const page = await browser.open();
  await openTranscript(page, app, lesson);
  await page.locator('[data-text="cue-00004"]').click({ position: { x: 3, y: 12 } });
  await page.locator('[data-cue="cue-00004"][data-current]').waitFor();
  const seconds = await page.locator('video').evaluate((video) => (video as HTMLVideoElement).currentTime);
  expect(seconds).toBeGreaterThanOrEqual(8.4);
  expect(seconds).toBeLessThan(10.4);
});

test('a chapter dragged along the ribbon comes to rest at the edge of a cue', async () => {
  const lesson = await aTaughtLesson();
  const page = await browser.open();
  await openTranscript(page, app, lesson);
  await page.locator('[data-text="cue-00001"]').click({ position: { x: 5, y: 12 } });
  await page.getByRole('button', { name: 'Chapter from here' }).click();
  const edge = await page.getByRole('slider', { name: /Edge of the chapter/ }).boundingBox();
  const target = await page.locator('[data-sound="cue-00006"]').boundingBox();
  if (!edge || !target) throw new Error('not in view');
  await page.mouse.move(edge.x + edge.width / 2, edge.y + edge.height / 2);
  await page.mouse.down();
  await page.mouse.move(target.x + 20, target.y + 3, { steps: 4 });
  await page.mouse.up();
  expect((await savedDraft(page, lesson)).content.chapters[0]?.startMs).toBe(6 * 2_100);
});

test('words are found, counted and replaced, and all of it is one step back', async () => {
  const lesson = await aTaughtLesson();
  const page = await browser.open();
  await openTranscript(page, app, lesson);
  const start = await savedDraft(page, lesson);
  await page.keyboard.press('Control+f');
  await page.getByLabel('Find', { exact: true }).fill('both pliers');
  await page.getByText('Place 1 of 12.').waitFor();
  await page.getByLabel('Put instead').fill('two pliers');
  await page.getByRole('button', { name: 'Replace all 12' }).click();
  await page.getByText('Found nowhere.').waitFor();
  expect((await savedDraft(page, lesson)).cues.every((cue) => cue.text.includes('two pliers'))).toBe(true);
  await undo(page).click();
  expect(await savedDraft(page, lesson)).toEqual(start);
});

describe('who only reads', () => {
  test('sees everything and changes nothing', async () => {
    const lesson = await aTaughtLesson();
    await app.db.member.updateMany({ where: { userId: lesson.userId }, data: { role: 'viewer' } });
    const page = await browser.open();
    await openTranscript(page, app, lesson);
    await page.locator('[data-text="cue-00001"]').dblclick();
    expect(await page.getByRole('button', { name: /Edit text|Undo|Delete|Set a chapter/ }).count()).toBe(0);
    expect(await page.locator('textarea').count()).toBe(0);
    await page.getByText('You may read, not change').first().waitFor();
  });
});

describe('axe finds nothing', () => {
  test.each([1280, 390])('at %i px', async (width) => {
    const lesson = await aTaughtLesson();
    const page = await browser.open({ viewport: { width, height: 844 } });
    await openTranscript(page, app, lesson);
    await page.locator('[data-text="cue-00001"]').click({ position: { x: 5, y: 12 } });
    await page.getByRole('button', { name: 'Chapter from here' }).click();
    await page.locator('[data-text="cue-00002"]').dblclick({ position: { x: 5, y: 12 } });
    await page.getByRole('button', { name: 'Shift…' }).click();
    await page.getByRole('button', { name: 'Find' }).click();
    const { violations } = await axeOn(page)
      .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
      .analyze();
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html).join(' ')}`)).toEqual(
      [],
    );
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
  });
});
