/** The draft seen before it is published: in frames at the bench, and under a secret address. */
import { randomUUID } from 'node:crypto';
import type { Page } from 'playwright-core';
import { beforeAll, expect, test } from 'vitest';
import { issuePreviewAddress } from '#lib/access/preview-address.ts';
import { aTaughtLesson, type Taught } from '#tests/support/a-taught-lesson.ts';
import { sharedApp, type TestApp } from '#tests/support/app.ts';
import { axeOn } from '#tests/support/axe.ts';
import { openBrowser, type TestBrowser } from '#tests/support/chromium.ts';
import { pdfText } from '#tests/support/read-pdf.ts';
import { signIn } from '#tests/support/sign-in.ts';
import { readDemo } from '../../prisma/demo/read-demo.ts';

const WCAG = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

let app: TestApp;
let browser: TestBrowser;
let taught: Taught;
let bench: Page;

beforeAll(async () => {
  app = await sharedApp();
  browser = await openBrowser(app.address);
  taught = await aTaughtLesson(app);
  bench = await browser.open();
  await signIn(bench, app.address, app.db, taught.userId);
}, 120_000);

const framed = async () => {
  const frame = await (await bench.locator('iframe').elementHandle())?.contentFrame();
  if (!frame) throw new Error('There is no frame');
  await frame.waitForLoadState('load');
  return frame;
};

test('frames are as wide as what they stand for, and chosen by keyboard; paper wears the print dress', async () => {
  await bench.goto(`${taught.bench}/check`);
  await bench.getByRole('link', { name: 'Preview the page' }).click();
  await bench.getByRole('radio', { name: 'Phone' }).focus();
  const widths: number[] = [];
  for (const name of ['Phone', 'Tablet', 'Window', 'Paper']) {
    await expect.poll(() => bench.getByRole('radio', { name }).isChecked()).toBe(true);
    const frame = await framed();
    await frame.getByRole('heading', { name: 'Byzantine bracelet' }).waitFor();
    widths.push(await frame.evaluate(() => innerWidth));
    if (name === 'Paper') {
      // What the page's own print style hides.
      await expect.poll(() => frame.locator('#player').isVisible()).toBe(false);
      expect(await frame.getByText('How all these numbers came about').isVisible()).toBe(false);
      const sheet = await bench.getByRole('link', { name: 'Steps and every size, PDF' }).getAttribute('href');
      const pdf = await (await bench.request.get(`${app.address}${sheet}`)).body();
      expect(await pdfText(pdf)).toContain('draft, not published');
    } else {
      expect(await frame.locator('#player').isVisible()).toBe(true);
      expect(await frame.getByText('How all these numbers came about').isVisible()).toBe(true);
      await bench.keyboard.press('ArrowRight');
    }
  }
  expect(widths).toEqual([390, 820, 1280, 718]);
  const { violations } = await axeOn(bench).withTags(WCAG).exclude('iframe').analyze();
  expect(violations.map(({ id, nodes }) => `${id} ${nodes[0]?.html}`)).toEqual([]);
  await bench.setViewportSize({ width: 390, height: 800 });
  expect(await bench.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  await bench.setViewportSize({ width: 1280, height: 800 });
});

test('the drawn pictures of a draft are seen under its secret address', async () => {
  const drawn = await aTaughtLesson(app, readDemo().first, []);
  const made = { id: randomUUID(), lessonId: drawn.lessonId, note: '', now: new Date() };
  const path = await app.db.$transaction((tx) => issuePreviewAddress(tx, made));
  const stranger = await browser.open({ viewport: { width: 390, height: 800 } });
  await stranger.goto(`${app.address}${path}`);
  const pictures = stranger.locator('img[src*="/pictures/"][data-hand="shown"]');
  expect(await pictures.count()).toBeGreaterThanOrEqual(8);
  for (const picture of await pictures.all()) {
    await picture.scrollIntoViewIfNeeded();
    await expect
      .poll(() => picture.evaluate((image: HTMLImageElement) => image.naturalWidth))
      .toBeGreaterThan(0);
  }
});

test('a secret address shows the draft with its media to anybody, is kept by nobody, and ends when it is withdrawn', async () => {
  await bench.goto(`${taught.bench}/preview`);
  await bench.getByLabel('For whom').fill('Otto, to try it out');
  await bench.getByRole('button', { name: 'Make a secret address' }).click();
  const address = await bench.getByLabel('The address. It is shown only this once.').inputValue();
  expect(address).toMatch(/\/preview\/[\w-]{43}$/);
  const token = address.slice(-43);
  expect(JSON.stringify(await app.db.previewAddress.findMany())).not.toContain(token);

  const stranger = await browser.open();
  const answer = await stranger.goto(address);
  const headers = answer?.headers() ?? {};
  expect(headers['cache-control']).toContain('no-store');
  expect(headers['referrer-policy']).toBe('no-referrer');
  expect(headers['x-robots-tag']).toContain('noindex');
  await stranger.getByText('seen by whoever has its secret address only').waitFor();
  await stranger.waitForFunction(() => (document.querySelector('video')?.readyState ?? 0) >= 1);
  const files = ['recording', 'poster.jpg', 'stills/30000', 'captions.vtt', 'chapters.json', 'sheet.pdf'];
  for (const file of files) {
    const got = await stranger.request.get(`${address}/${file}`);
    expect([file, got.status()]).toEqual([file, 200]);
    expect(got.headers()['cache-control']).toContain('no-store');
    expect(got.headers()['referrer-policy']).toBe('no-referrer');
  }
  // No picture is taken of any other moment.
  expect((await stranger.request.get(`${address}/stills/30001`)).status()).toBe(404);

  // A page that is still loading pictures when its address ends would rightly complain.
  await stranger.goto('about:blank');
  await bench.getByRole('button', { name: /^Withdraw….*Otto/ }).click();
  await bench.getByRole('button', { name: 'Withdraw it' }).click();
  await bench.getByText('In force').waitFor({ state: 'detached' });
  const never = `${app.address}/preview/${'A'.repeat(43)}`;
  for (const file of ['', '/pictures/repeat-1.svg', ...files.map((name) => `/${name}`)]) {
    const [gone, unknown] = await Promise.all([
      stranger.request.get(`${address}${file}`),
      stranger.request.get(`${never}${file}`),
    ]);
    expect([file, gone.status(), unknown.status()]).toEqual([file, 404, 404]);
    if (file !== '') expect(await gone.text()).toBe(await unknown.text());
  }
});
