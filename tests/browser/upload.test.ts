/** Bringing a recording in, as a teacher sees it: in Chromium, with breaks in the middle. */
import { randomUUID } from 'node:crypto';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { CDPSession, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { aReadyRecording } from '#tests/support/a-ready-recording.ts';
import { startApp, type TestApp } from '#tests/support/app.ts';
import { openBrowser, type TestBrowser } from '#tests/support/chromium.ts';
import { makeWithFfmpeg } from '#tests/support/clips.ts';
import { type SignedIn, signedInOwner } from '#tests/support/signed-in.ts';

let app: TestApp;
let browser: TestBrowser;
let folder: string;
/** A phone-like recording, some megabytes: upright, index last. */
let phone: string;
let other: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'bring-in-'));
  phone = join(folder, 'phone recording.mp4');
  other = join(folder, 'other.webm');
  const flat = join(folder, 'flat.mp4');
  // Noise does not compress: the file gets large enough to be stopped in the middle.
  await makeWithFfmpeg(
    ...['-f', 'lavfi', '-i', 'testsrc=size=640x360:rate=30:duration=6,noise=alls=25:allf=t'],
    ...['-f', 'lavfi', '-i', 'sine=frequency=330:duration=6'],
    ...['-c:v', 'libx264', '-preset', 'ultrafast', '-crf', '18', '-pix_fmt', 'yuv420p', '-c:a', 'aac', flat],
  );
  await makeWithFfmpeg('-i', flat, '-c', 'copy', '-metadata:s:v', 'rotate=90', phone);
  await makeWithFfmpeg(
    ...['-f', 'lavfi', '-i', 'testsrc2=size=320x240:rate=25:duration=2'],
    ...['-f', 'lavfi', '-i', 'sine=duration=2'],
    ...[
      '-c:v',
      'libvpx',
      '-deadline',
      'realtime',
      '-cpu-used',
      '8',
      '-threads',
      '1',
      '-c:a',
      'libopus',
      other,
    ],
  );
  app = await startApp();
  browser = await openBrowser(app.address);
}, 300_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

async function bringIn(owner: SignedIn, options = {}): Promise<Page> {
  const page = await browser.open(options);
  await page.context().addCookies(owner.cookies.map((cookie) => ({ ...cookie, url: app.address })));
  await page.goto(`${owner.bench}/bring-in`);
  await page.getByRole('heading', { name: 'Recording', exact: true }).waitFor();
  return page;
}

const choose = (page: Page, path: string): Promise<void> =>
  page.getByLabel(/Bring in the recording|Replace by another recording/).setInputFiles(path);

const sessions = new WeakMap<Page, CDPSession>();

/** Lets the network carry so many bytes a second upwards. */
async function slowDown(page: Page, bytesASecond: number): Promise<void> {
  // One session for a page: what another one limited would stay limited.
  const devtools = sessions.get(page) ?? (await page.context().newCDPSession(page));
  sessions.set(page, devtools);
  await devtools.send('Network.enable');
  await devtools.send('Network.emulateNetworkConditions', {
    offline: false,
    latency: 0,
    downloadThroughput: -1,
    uploadThroughput: bytesASecond,
  });
}

const arrivedBytes = async (owner: SignedIn): Promise<number> => {
  const answer = await fetch(`${owner.api}/recordings`, { headers: { cookie: owner.cookie } });
  const { recordings } = await answer.json();
  return recordings[0]?.arrivedBytes ?? 0;
};

async function until(holds: () => Promise<boolean>, what: string): Promise<void> {
  for (let tries = 0; tries < 300; tries++) {
    if (await holds()) return;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  throw new Error(`never: ${what}`);
}

const seen = (page: Page, name: string) => page.getByRole('region', { name });
const READY = 'The recording that pupils see';

it('refuses at once what is no recording, and sends nothing', async () => {
  const owner = await signedInOwner(app);
  const page = await bringIn(owner);
  const playlist = join(folder, 'lesson.mp4');
  await writeFile(playlist, '#EXTM3U\n#EXTINF:2,\nother.mp4\n');
  await choose(page, playlist);
  await seen(page, 'File not taken').getByText('This is a playlist').waitFor();
  expect(await arrivedBytes(owner)).toBe(0);
  await page.getByRole('button', { name: 'Choose another file' }).click();
  await page.getByText('Bring in the recording').waitFor();
});

it('goes on after a reload in the middle and after a killed server, and shows the upright recording', async () => {
  const owner = await signedInOwner(app);
  const page = await bringIn(owner);
  await slowDown(page, 900_000);
  await choose(page, phone);
  await seen(page, 'Sending the recording').waitFor();
  await until(async () => (await arrivedBytes(owner)) > 400_000, 'some bytes arrived');
  await page.reload();
  const unfinished = seen(page, 'Unfinished upload');
  await unfinished.waitFor();
  const before = await arrivedBytes(owner);
  expect(before).toBeGreaterThan(0);
  await slowDown(page, 900_000);
  await choose(page, phone);
  await until(async () => (await arrivedBytes(owner)) > before, 'it goes on from there');

  await app.web.kill();
  await new Promise((resolve) => setTimeout(resolve, 500));
  await app.web.start();
  await slowDown(page, -1);
  await seen(page, READY).waitFor({ timeout: 90_000 });
  browser.forgive(/ERR_CONNECTION|ERR_EMPTY|Failed to load/);
  // One upload, not three: it went on and did not begin anew.
  expect(await app.db.recording.count({ where: { lessonId: owner.lessonId } })).toBe(1);
  await page.getByText('360 × 640').waitFor();

  await page.locator('video').evaluate((video: HTMLVideoElement) => {
    video.currentTime = 3.5;
  });
  await page.getByRole('button', { name: 'Use the picture at 0:03.500' }).click();
  await page.getByText('it is the picture at 0:03').waitFor({ timeout: 30_000 });
});

it('pauses, cancels, replaces', async () => {
  const owner = await signedInOwner(app);
  const page = await bringIn(owner);
  await slowDown(page, 500_000);
  await choose(page, phone);
  const sending = seen(page, 'Sending the recording');
  await until(async () => (await arrivedBytes(owner)) > 100_000, 'some bytes arrived');
  await sending.getByRole('button', { name: 'Pause' }).click();
  await sending.getByText('Paused.').waitFor();
  await sending.getByRole('button', { name: 'Go on sending' }).click();
  await sending.getByRole('button', { name: 'Pause' }).waitFor();
  await sending.getByRole('button', { name: 'Cancel sending' }).click();
  await page.getByText('Bring in the recording').waitFor();
  await until(
    async () => (await app.db.recording.count({ where: { lessonId: owner.lessonId } })) === 0,
    'gone',
  );

  await slowDown(page, -1);
  await choose(page, other);
  await seen(page, READY).getByText('other.webm').waitFor({ timeout: 60_000 });
  await page.getByText('A re-edited recording is compared with this one').waitFor();
  await choose(page, phone);
  await seen(page, READY).getByText('phone recording.mp4').waitFor({ timeout: 60_000 });
  // The former one is kept.
  expect(await app.db.recording.count({ where: { lessonId: owner.lessonId, state: 'ready' } })).toBe(2);
});

it('tells where a cut-off file ends, and lets it be removed by keys alone', async () => {
  const owner = await signedInOwner(app);
  const page = await bringIn(owner, { viewport: { width: 390, height: 800 } });
  const cut = join(folder, 'cut.mp4');
  const whole = join(folder, 'whole.mp4');
  await makeWithFfmpeg('-i', phone, '-c', 'copy', '-movflags', '+faststart', whole);
  const { readFile } = await import('node:fs/promises');
  const bytes = await readFile(whole);
  await writeFile(cut, bytes.subarray(0, Math.floor(bytes.length / 2)));
  await choose(page, cut);
  const refused = seen(page, 'Recording not taken');
  await refused.getByText(/breaks off at 0:0[23] of 0:06/).waitFor({ timeout: 60_000 });
  await refused.getByRole('button', { name: 'Remove this file' }).focus();
  await page.keyboard.press('Enter');
  await refused.waitFor({ state: 'detached' });
});

it('leaves open what was opened while the list of recordings is looked at again', async () => {
  const owner = await signedInOwner(app);
  const { lessonId } = owner;
  const oldRecordingId = await aReadyRecording(app.db, app.files, lessonId, 2_000);
  const newRecordingId = await aReadyRecording(app.db, app.files, lessonId, 2_000);
  await app.db.recordingComparison.create({
    data: { id: randomUUID(), lessonId, oldRecordingId, newRecordingId, state: 'accepted' },
  });
  const page = await browser.open();
  await page.context().addCookies(owner.cookies.map((cookie) => ({ ...cookie, url: app.address })));
  // First a worker is at one of the recordings; the next answer says that it is done.
  const opened = Promise.withResolvers<void>();
  let isFirst = true;
  await page.route('**/recordings', async (route) => {
    const response = await route.fetch();
    const json = await response.json();
    if (isFirst) json.recordings.find(({ id }: { id: string }) => id === oldRecordingId).state = 'waiting';
    else await opened.promise;
    isFirst = false;
    await route.fulfill({ response, json });
  });
  await page.goto(`${owner.bench}/bring-in`);
  const wayBack = page.locator('details', { hasText: 'Go back to the recording before this one' });
  await seen(page, 'Taking the recording in').waitFor();
  await wayBack.locator('summary').click();
  const compared = page.waitForResponse(/\/comparison$/);
  opened.resolve();
  await seen(page, 'Taking the recording in').waitFor({ state: 'detached' });
  await compared;
  await wayBack.getByRole('button').waitFor();

  // The lesson has the former one again, here too.
  await wayBack.getByRole('button', { name: 'Go back to the former recording' }).click();
  await page.getByRole('link', { name: 'Look at both and decide' }).waitFor();
  await page.locator(`video[src*="${oldRecordingId}"]`).waitFor();
});
