/**
 * The whole job by the keyboard alone: no pointer, no focus that a script
 * sets. From the one-time address through every stage to a corrected lesson,
 * as it is done: fields by Tab, the transcript by arrows and by its keys.
 * With LONG_LESSON set, on ten minutes and 5,000 cues, at both widths.
 */
import { mkdir, mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { foundingAddress, startApp, type TestApp } from '#tests/support/app.ts';
import { openBrowser } from '#tests/support/chromium.ts';
import { type Keyboard, keyboardOf } from '#tests/support/keyboard.ts';
import { cueWords, isLong, type PhoneLesson, phoneLesson } from '#tests/support/phone-lesson.ts';
import { waitUntilSaved } from '#tests/support/transcript-page.ts';

let folder: string;
let lesson: PhoneLesson;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'keyboard-walk-'));
  lesson = await phoneLesson(folder);
}, 300_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

/** One walk: the page, the hands on it, and a picture of every stage where SHOTS names a folder. */
interface Walk {
  readonly page: Page;
  readonly keys: Keyboard;
  readonly shot: (name: string) => Promise<void>;
}

const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name, exact: true }).last();
const link = (page: Page, name: string | RegExp) => page.getByRole('link', { name, exact: true });

/** Goes back by Shift+Tab to the stages, and into one. */
async function stage({ page, keys }: Walk, name: string): Promise<void> {
  await keys.to(link(page, name), 'Shift+Tab');
  await keys.press('Enter');
  await link(page, name).and(page.locator('[aria-current]')).waitFor();
}

/** That the keyboard has a place: nothing that was done may leave it nowhere. */
async function placed({ page }: Walk, what: string): Promise<void> {
  expect(await page.evaluate(() => document.activeElement?.tagName), what).not.toBe('BODY');
}

async function found({ page, keys }: Walk, app: TestApp): Promise<void> {
  await page.goto(await foundingAddress(app));
  await keys.write(page.getByLabel('Name of your workshop'), 'Kettle Row Rings');
  await keys.write(page.getByLabel('Your name'), 'Ilo Verrand');
  await keys.write(page.getByLabel('Your e-mail address'), 'ilo@example.org');
  await keys.write(page.getByLabel('Password', { exact: true }), 'four willow rings and a kettle');
  await keys.enter(button(page, 'Begin'));
  await keys.write(page.getByLabel('Title of a new lesson'), 'Box chain');
  await keys.press('Enter');
  await page.waitForURL('**/bring-in');
}

async function bringIn(walk: Walk): Promise<void> {
  const { page, keys, shot } = walk;
  await keys.bring(page.getByLabel('Bring in the recording'), lesson.recording);
  await keys.bring(page.getByLabel('A transcript file'), lesson.transcript);
  await keys.enter(button(page, `Take these ${lesson.count} cues`));
  await waitUntilSaved(page);
  await page.getByText('360 × 640, H.264').waitFor({ timeout: 120_000 });
  await shot('bring-in');
}

async function markUp(walk: Walk): Promise<void> {
  const { page, keys, shot } = walk;
  const cue = (number: number) => page.locator('[data-text]', { hasText: cueWords(number) });
  await stage(walk, 'Transcript');
  await keys.to(page.locator('[data-text]').first());
  await keys.press('Alt+c');
  await page.locator('[data-chapter-title]:focus').waitFor();
  await keys.type('What you need');
  await keys.press('Enter');
  await page.locator('[data-text]:focus').waitFor();

  // Mend a word, go down, join, take it back.
  await keys.press('Enter', 'Control+End');
  await keys.type(' Copper.');
  await keys.press('Escape', ...Array(20).fill('ArrowDown'));
  await expect.poll(() => page.locator('[data-text]:focus').innerText()).toBe(cueWords(21));
  await keys.press('Alt+j');
  await expect.poll(() => page.locator('[data-text]:focus').innerText()).toContain(cueWords(22));
  await keys.press('Control+z');
  await cue(22).waitFor();

  // Play from a cue, stop, set a chapter where it stands, and move its edge.
  await keys.press('Space');
  await page.getByRole('button', { name: 'Pause' }).waitFor();
  await keys.press('Alt+p');
  await keys.press('Alt+c');
  await page.locator('[data-chapter-title]:focus').waitFor();
  await keys.type('The repeat unit');
  await keys.to(page.getByLabel('Kind of chapter').last(), 'Shift+Tab');
  await keys.type('rep');
  const edge = page.getByRole('slider', { name: 'Edge of the chapter The repeat unit' });
  await keys.to(edge, 'Shift+Tab');
  const before = Number(await edge.getAttribute('aria-valuenow'));
  await keys.press('ArrowDown');
  await expect.poll(async () => Number(await edge.getAttribute('aria-valuenow'))).toBeGreaterThan(before);
  await shot('transcript');

  // Find words at the far end, and go on from there.
  await keys.press('Control+f');
  await page.locator('search :focus').waitFor();
  await keys.type(cueWords(lesson.cues));
  await cue(lesson.cues).waitFor();
  await keys.press('Escape');
  await expect.poll(() => page.locator('[data-text]:focus').innerText()).toBe(cueWords(lesson.cues));
  await waitUntilSaved(page);
}

async function describeMaking(walk: Walk): Promise<void> {
  const { page, keys, shot } = walk;
  await stage(walk, 'Making');
  await keys.write(page.getByLabel('Summary'), 'A plain box chain, two rings at a time.');
  await keys.write(page.getByLabel('Weave or technique'), 'Box chain');
  await keys.write(page.getByLabel('Making takes'), '45');
  await keys.write(page.getByLabel('Who may use this lesson, and how'), 'for private use');
  const kinds = page.locator('#ring-kinds');
  await keys.write(kinds.getByLabel('Name').last(), 'copper');
  await keys.write(kinds.getByLabel('Inner diameter').last(), '1/4 in');
  await keys.write(kinds.getByLabel('Wire').last(), '16 SWG');
  await keys.enter(button(page, 'Add ring kind'));
  await page.locator('[id$="-colour"]:focus').waitFor();
  await keys.type('bright copper');
  expect(await kinds.locator('[id$="-colour"]').inputValue()).toBe('bright copper');
  await keys.enter(button(page, 'Add a placement to the repeat unit'));
  await keys.choose(page.getByLabel('Opens'), 'copper');
  await keys.enter(button(page, 'Add closed rings'));
  await keys.enter(button(page, 'Pass one from the front'));
  await keys.write(
    page.getByLabel('Sentence for the pupil'),
    'Pick up a closed ring, pass the last one, close.',
  );

  // The moment is where the recording stands, and its picture is taken.
  const recording = page.locator('video');
  await keys.to(recording, 'Shift+Tab');
  await keys.press('ArrowRight');
  await expect
    .poll(() => recording.evaluate((video: HTMLVideoElement) => video.currentTime))
    .toBeGreaterThan(0);
  const stands = await recording.evaluate((video: HTMLVideoElement) => Math.round(video.currentTime * 1000));
  await keys.enter(button(page, 'Take where the recording stands'));
  const still = page.locator(`img[src$="/stills/${stands}"]`);
  await expect
    .poll(() => still.evaluate((image: HTMLImageElement) => [image.naturalWidth, image.naturalHeight]))
    .toEqual([360, 640]);
  await shot('making');

  await keys.write(page.getByLabel('One repeat adds'), '10');
  await keys.enter(button(page, 'Add a size'));
  await page.locator('[id$="-name"]:focus').waitFor();
  await keys.type('medium');
  await waitUntilSaved(page);
}

/** (150 + 20) / 10 = 17 repeats, 17 opened and 17 closed rings, a tenth spare: 38. */
async function readKit(walk: Walk): Promise<void> {
  const { page, keys, shot } = walk;
  await stage(walk, 'Kit');
  await page.getByRole('cell', { name: '38', exact: true }).first().waitFor();
  await shot('kit');
  const sheet = link(page, 'Spreadsheet (CSV)');
  await keys.to(sheet);
  const download = page.waitForEvent('download');
  await keys.press('Enter');
  const lines = (await readFile(await (await download).path(), 'utf8')).split('\r\n');
  expect(lines.find((line) => line.includes('copper'))).toMatch(/\b38\b/);
}

async function publish(walk: Walk, revision: number): Promise<void> {
  const { page, keys } = walk;
  await keys.enter(button(page, `Publish revision ${revision}`));
  await page.getByText(`Revision ${revision} is published.`).first().waitFor({ timeout: 60_000 });
  await placed(walk, `publishing revision ${revision}`);
}

async function correct(walk: Walk): Promise<void> {
  const { page, keys, shot } = walk;
  await stage(walk, 'Corrections');
  await keys.enter(button(page, 'State a correction'));
  await page.getByLabel('What was wrong').and(page.locator(':focus')).waitFor();
  await keys.type('I said sixty gauge.');
  await keys.write(page.getByLabel('What is right'), 'The wire is sixteen gauge, SWG.');
  await keys.write(page.getByLabel('Whom it concerns'), 'Everyone who ordered by ear.');
  await keys.write(page.getByLabel('Find it by a word that is said'), cueWords(3).slice(0, 9));
  await keys.press('Tab', 'Enter');
  await page.getByLabel('From', { exact: true }).and(page.locator(':focus')).waitFor();
  await waitUntilSaved(page);
  await shot('corrections');
  await keys.enter(link(page, 'Check and publish revision 2'));
  await publish(walk, 2);
}

/** What the pupil gets, by keyboard too. */
async function readPage(walk: Walk): Promise<void> {
  const { page, keys, shot } = walk;
  await keys.enter(link(page, 'Open the lesson page'));
  await page.locator('#corrections').getByText('The wire is sixteen gauge, SWG.').waitFor();
  await keys.enter(page.getByRole('button', { name: 'Play', exact: true }));
  await expect
    .poll(() => page.locator('video').evaluate((video: HTMLVideoElement) => video.currentTime))
    .toBeGreaterThan(0.3);
  await keys.press('Enter');
  await keys.write(page.getByLabel('Your measure'), '180');
  await page.getByText('20 repeats', { exact: true }).waitFor();
  await shot('page');
}

test.each(isLong ? [1280, 390] : [390])(
  'from the one-time address to a corrected lesson, %d px wide',
  {
    timeout: 600_000,
  },
  async (width) => {
    const app = await startApp();
    const browser = await openBrowser(app.address);
    const page = await browser.open({ viewport: { width, height: 844 } });
    const shots = process.env['SHOTS'];
    if (shots) await mkdir(shots, { recursive: true });
    const walk: Walk = {
      page,
      keys: keyboardOf(page),
      async shot(name) {
        if (shots) await page.screenshot({ path: join(shots, `${width}-${name}.png`) });
      },
    };
    await found(walk, app);
    await bringIn(walk);
    await markUp(walk);
    await describeMaking(walk);
    await readKit(walk);
    await stage(walk, 'Check');
    await publish(walk, 1);
    await correct(walk);
    await readPage(walk);
  },
);
