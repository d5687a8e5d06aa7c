/** A portable copy in a pupil's and a teacher's hands: opened from disk, and brought in again. */
import { randomUUID } from 'node:crypto';
import { once } from 'node:events';
import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { dirname, extname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { unzipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, onTestFinished, test } from 'vitest';
import { applyChange } from '#lib/lesson/change.ts';
import { startFromWeave } from '#lib/lesson/start-from-weave.ts';
import { findWeave } from '#lib/weave/weave-library.ts';
import { aContent } from '#tests/support/a-content.ts';
import { aLesson } from '#tests/support/a-lesson.ts';
import { aTaughtLesson, publishBehindTheScenes, type Taught } from '#tests/support/a-taught-lesson.ts';
import { sharedApp, type TestApp } from '#tests/support/app.ts';
import { axeOn } from '#tests/support/axe.ts';
import { openBrowser, type TestBrowser } from '#tests/support/chromium.ts';
import { signIn } from '#tests/support/sign-in.ts';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.mp4': 'video/mp4',
  '.jpg': 'image/jpeg',
  '.svg': 'image/svg+xml',
};

let app: TestApp;
let browser: TestBrowser;
let folder: string;
let taught: Taught;
let zip: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'benchleaf-copy-'));
  app = await sharedApp();
  browser = await openBrowser(app.address);
  const base = aContent();
  const [weave, [kind]] = [findWeave('byzantine'), base.ringKinds];
  if (!weave || !kind) throw new Error('the library has the weave, the fixture a ring');
  const cast = Object.fromEntries(weave.roles.map(({ id }) => [id, kind.id]));
  const { content } = startFromWeave(base, weave, cast, randomUUID).reduce(applyChange, {
    content: base,
    cues: [],
  });
  const repeat = content.repeat.map((placement, at) => ({ ...placement, atMs: 30_000 + at * 5_000 }));
  taught = await aTaughtLesson(app, { ...content, repeat });
  await publishBehindTheScenes(app, taught);
  const page = await browser.open();
  await signIn(page, app.address, app.db, taught.userId);
  await page.goto(`${taught.bench}/check`);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: 'Portable copy, with the draft' }).click(),
  ]);
  zip = join(folder, download.suggestedFilename());
  await download.saveAs(zip);
  for (const [name, bytes] of Object.entries(unzipSync(await readFile(zip)))) {
    await mkdir(dirname(join(folder, name)), { recursive: true });
    await writeFile(join(folder, name), bytes);
  }
}, 120_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

const openFromDisk = async (options = {}): Promise<Page> => {
  const page = await browser.open(options);
  await page.goto(pathToFileURL(join(folder, `l-${taught.lessonId}`, 'index.html')).href);
  return page;
};

test('opens from disk: chapters and steps lead to their moments, captions are there, at both widths', async () => {
  const page = await openFromDisk();
  await page.waitForFunction(() => (document.querySelector('video')?.readyState ?? 0) >= 1);
  await page.getByRole('link', { name: 'The repeat unit', exact: false }).first().click();
  await page.waitForFunction(() => (document.querySelector('video')?.currentTime ?? 0) >= 30);
  const shown = await page.evaluate(() => {
    const track = document.querySelector('video')?.textTracks[0];
    return { mode: track?.mode, first: (track?.cues?.[0] as VTTCue | undefined)?.text };
  });
  expect(shown).toEqual({ mode: 'showing', first: 'Welcome to the bench.' });
  await page.waitForFunction(() => document.querySelectorAll('.chapters [aria-current]').length === 1);
  const { violations } = await axeOn(page).analyze();
  expect(violations.map(({ id }) => id)).toEqual([]);

  // Words of hand, drawn pictures and the recording turn round together, and its captions stay readable.
  const drawn = page.locator('.steps img[data-hand]');
  const shownHands = () =>
    drawn.evaluateAll((all) => [
      ...new Set(all.filter((one) => one.checkVisibility()).map((one) => one.dataset['hand'])),
    ]);
  expect(await shownHands()).toEqual(['shown']);
  await page.getByRole('button', { name: 'Mirror the picture' }).click();
  expect(await shownHands()).toEqual(['mirrored']);
  expect(await page.locator('video').evaluate((video) => getComputedStyle(video).transform)).toContain(
    'matrix(-1',
  );
  await page.getByRole('slider', { name: 'Place in the recording' }).fill('1');
  await page.getByText('Welcome to the bench.', { exact: true }).first().waitFor();
  await page.getByRole('button', { name: 'Mirror the picture' }).click();
  expect(await shownHands()).toEqual(['shown']);

  await page.getByRole('button', { name: 'Hold at each step' }).click();
  const first = page.getByRole('link', { name: /^Said here:/ }).first();
  const atS = Number(await first.getAttribute('data-at')) / 1000;
  await page.locator('video').evaluate((video: HTMLVideoElement, from) => {
    video.muted = true;
    video.currentTime = from;
    return video.play();
  }, atS - 0.4);
  await page.getByRole('status').filter({ hasText: 'Holding at ' }).waitFor();
  expect(await page.locator('video').evaluate((video: HTMLVideoElement) => video.paused)).toBe(true);
  const narrow = await openFromDisk({ viewport: { width: 390, height: 800 } });
  expect(await narrow.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
});

test('stands on a file server that gives no parts of a file: moments can be gone to all the same', async () => {
  const server = createServer((request, response) => {
    const path = join(folder, decodeURIComponent(new URL(request.url ?? '/', 'http://x').pathname));
    readFile(path).then(
      (bytes) => response.writeHead(200, { 'content-type': TYPES[extname(path)] ?? '' }).end(bytes),
      () => response.writeHead(404).end(),
    );
  }).listen(0, '127.0.0.1');
  onTestFinished(() => void server.close());
  await once(server, 'listening');
  const address = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  const page = await (await openBrowser(address)).open();
  await page.goto(`${address}/l-${taught.lessonId}/index.html`);
  await page.waitForFunction(() => (document.querySelector('video')?.readyState ?? 0) >= 1);
  const reach = (video: HTMLVideoElement) => (video.seekable.length > 0 ? video.seekable.end(0) : 0);
  expect(await page.locator('video').evaluate(reach)).toBeLessThan(30);
  await page.getByRole('link', { name: 'The repeat unit', exact: false }).first().click();
  await page.waitForFunction(() => (document.querySelector('video')?.currentTime ?? 0) >= 30);
});

test('reads without script: a moment is a link into the recording’s own file', async () => {
  const page = await openFromDisk({ javaScriptEnabled: false });
  const link = page.getByRole('link', { name: /^Said here:/ }).first();
  expect(await link.getAttribute('href')).toMatch(/^media\/recording-1\.mp4#t=\d/);
  expect(await page.locator('table').count()).toBe(4);
  expect(await page.locator('.measures tbody tr').count()).toBeGreaterThan(3);
});

test('is brought in at another workshop; what is none is refused with a sentence', async () => {
  const other = await aLesson(app.db);
  const page = await browser.open();
  await signIn(page, app.address, app.db, other.userId);
  await page.goto(`${app.address}/bench/w-${other.workshopId}`);
  await page.getByRole('heading', { name: 'Bring in a portable copy' }).click();
  const bad = join(folder, 'letter.zip');
  await writeFile(bad, 'Dear pupil');
  await page.getByLabel('Zip file').setInputFiles(bad);
  await page.getByText('Not taken. This file is no zip').waitFor();
  await page.getByLabel('Zip file').setInputFiles(zip);
  await page.getByText('Brought in: ').waitFor();
  expect(await app.db.lesson.count({ where: { workshopId: other.workshopId } })).toBe(2);
  const { violations } = await axeOn(page).include('main details').analyze();
  expect(violations.map(({ id }) => id)).toEqual([]);
  const answer = await page.request.get(
    `${app.address}/workshop/w-${other.workshopId}/lesson/l-${taught.lessonId}`,
  );
  expect(answer.status()).toBe(200);
  await page.getByRole('button', { name: /Take off this list.*letter\.zip/ }).click();
  await page.getByText('letter.zip is off the list.').waitFor();
});
