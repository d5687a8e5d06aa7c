/**
 * The whole job as a new teacher does it, from the one-time address to a
 * published and corrected lesson, in Chromium at two widths; and what a pupil
 * then reads, with and without JavaScript. Every screen is looked at by axe.
 * With LONG_LESSON set, on ten minutes and 5,000 cues.
 */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { foundingAddress, startApp, type TestApp } from '#tests/support/app.ts';
import { axeOn } from '#tests/support/axe.ts';
import { openBrowser, type TestBrowser } from '#tests/support/chromium.ts';
import { isLong, type PhoneLesson, phoneLesson } from '#tests/support/phone-lesson.ts';

const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
const WIDTHS = [1280, 390];

let app: TestApp;
let browser: TestBrowser;
let folder: string;
let lesson: PhoneLesson;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'whole-job-'));
  lesson = await phoneLesson(folder);
}, 300_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

/** What axe finds, at both widths, and whether the page can be pushed sideways. */
async function look(page: Page): Promise<void> {
  const before = page.viewportSize();
  for (const width of WIDTHS) {
    await page.setViewportSize({ width, height: 800 });
    const { violations } = await axeOn(page).withTags(RULES).analyze();
    const found = violations.map((one) => `${one.id}: ${one.nodes.map((node) => node.html).join(' ')}`);
    expect(found, `${page.url()} at ${width} px`).toEqual([]);
    const sideways = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    expect(sideways, `${page.url()} at ${width} px scrolls sideways`).toBeLessThanOrEqual(0);
  }
  if (before) await page.setViewportSize(before);
}

const saved = (page: Page): Promise<void> => page.getByText('Saved', { exact: true }).waitFor();
const stage = async (page: Page, name: string): Promise<void> => {
  await page.getByRole('link', { name, exact: true }).click();
  await page
    .getByRole('link', { name, exact: true, disabled: false })
    .and(page.locator('[aria-current]'))
    .waitFor();
};
const part = (page: Page, heading: string): Locator =>
  page
    .locator('section')
    .filter({ has: page.getByRole('heading', { name: heading, exact: true }) })
    .last();

const walked = isLong ? [1280, 390] : [1280];

it.each(walked)(
  'goes from the one-time address to a corrected lesson, %d px wide',
  {
    timeout: 600_000,
  },
  async (width) => {
    app = await startApp();
    browser = await openBrowser(app.address);
    const page = await browser.open({ viewport: { width, height: 800 } });
    await page.goto(app.address);
    await page.getByRole('heading', { name: 'Nobody teaches here yet' }).waitFor();
    await look(page);

    // Found the workshop.
    await page.goto(await foundingAddress(app));
    await look(page);
    await page.getByLabel('Name of your workshop').fill('Kettle Row Rings');
    await page.getByLabel('Your name').fill('Ilo Verrand');
    await page.getByLabel('Your e-mail address').fill('ilo@example.org');
    await page.getByLabel('Password', { exact: true }).fill('four willow rings and a kettle');
    await page.getByRole('button', { name: 'Begin', exact: true }).click();
    await page.getByLabel('Title of a new lesson').fill('Box chain');
    await look(page);
    await page.getByRole('button', { name: 'Begin the lesson' }).click();

    // Bring in.
    await page.getByLabel('Bring in the recording').setInputFiles(lesson.recording);
    await page.getByLabel('A transcript file').setInputFiles(lesson.transcript);
    await page.getByRole('button', { name: `Take these ${lesson.count} cues` }).click();
    await saved(page);
    await page.getByText('360 × 640, H.264').waitFor({ timeout: 120_000 });
    await look(page);

    // Mark up.
    await stage(page, 'Transcript');
    await page.getByText('Part 1 of the books chain.').first().waitFor();
    await page.getByRole('button', { name: 'Set a chapter here' }).click();
    await page.keyboard.type('The beginning');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Find' }).click();
    await page.getByLabel('Find', { exact: true }).fill('books chain');
    await page.getByLabel('Put instead').fill('box chain');
    await page.getByRole('button', { name: /all/i }).last().click();
    await page.getByText('Part 1 of the box chain.').first().waitFor();
    await saved(page);
    await look(page);

    // Describe the making.
    await stage(page, 'Making');
    await page.getByLabel('Summary').fill('A plain box chain, two rings at a time.');
    await page.getByLabel('Weave or technique').fill('Box chain');
    await page.getByLabel('Making takes').fill('45');
    await page.getByLabel('Who may use this lesson, and how').fill('for private use');
    const kinds = part(page, 'Ring kinds');
    await kinds.getByLabel('Name').last().fill('copper');
    await kinds.getByLabel('Inner diameter').last().fill('1/4 in');
    await kinds.getByLabel('Wire').last().fill('16 SWG');
    await kinds.getByRole('button', { name: 'Add ring kind' }).click();
    await page.getByRole('button', { name: 'Add a placement to the repeat unit' }).click();
    await page.getByLabel('Opens').last().selectOption({ label: 'copper' });
    await page.getByRole('button', { name: 'Add closed rings' }).last().click();
    await page.getByRole('button', { name: 'Pass one from the front' }).last().click();
    await page
      .getByLabel('Sentence for the pupil')
      .last()
      .fill('Pick up a closed ring, pass the last one, close.');
    await page.getByLabel('One repeat adds').fill('10');
    await page.getByRole('button', { name: 'Add a size' }).click();
    await saved(page);
    await look(page);

    // Read the kit: (150 + 20) / 10 = 17 repeats, 17 opened and 17 closed rings, a tenth spare: 38.
    await stage(page, 'Kit');
    await page.getByRole('cell', { name: '38', exact: true }).first().waitFor();
    await look(page);

    // Check and publish.
    await stage(page, 'Check');
    await look(page);
    await page.getByRole('button', { name: 'Publish revision 1' }).click();
    await page.getByRole('button', { name: 'Publish revision 2' }).waitFor({ timeout: 60_000 });

    // Correct.
    await stage(page, 'Corrections');
    await page.getByRole('button', { name: 'State a correction' }).first().click();
    await page.getByLabel('What was wrong').fill('I said sixty gauge.');
    await page.getByLabel('What is right').fill('The wire is sixteen gauge, SWG.');
    await page.getByLabel('Whom it concerns').fill('Everyone who ordered by ear.');
    await saved(page);
    await look(page);
    await stage(page, 'Check');
    await page.getByRole('button', { name: 'Publish revision 2' }).click();
    await page.getByRole('button', { name: 'Publish revision 3' }).waitFor({ timeout: 60_000 });
  },
);

it('gives pupils a page that says all of it, with and without JavaScript', async () => {
  const address = `${app.address}/workshop/kettle-row-rings/lesson/box-chain`;
  const page = await browser.open();
  await page.goto(address);
  for (const text of ['Box chain', 'The wire is sixteen gauge, SWG.', 'Part 1 of the box chain.'])
    await page.getByText(text).first().waitFor({ state: 'attached' });
  await look(page);

  const plain = await browser.open({ javaScriptEnabled: false });
  await plain.goto(address);
  // What is closed in a long transcript is read too.
  const words = (await plain.locator('main').textContent()) ?? '';
  for (const text of [
    'I said sixty gauge.',
    'Pick up a closed ring',
    `Part ${lesson.cues} of the box chain.`,
    '38',
  ])
    expect(words).toContain(text);

  await page.goto(`${address}/revision/1`);
  await page
    .getByText(/it is superseded/)
    .first()
    .waitFor();
  await look(page);
});
