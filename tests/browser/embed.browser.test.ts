/** A lesson's player in the frame of another site, and what may not stand there; links that play their place. */
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { aTaughtLesson, publishBehindTheScenes, type Taught } from '#tests/support/a-taught-lesson.ts';
import { sharedApp, type TestApp } from '#tests/support/app.ts';
import { openBrowser, type TestBrowser } from '#tests/support/chromium.ts';

// The tests ask for that page themselves.
const theOtherSite = /^asked outside: http:\/\/localhost:/;

let app: TestApp;
let browser: TestBrowser;
let taught: Taught;
let elsewhere: Server;
let elsewhereAddress: string;

beforeAll(async () => {
  app = await sharedApp();
  taught = await aTaughtLesson(app);
  await publishBehindTheScenes(app, taught);
  elsewhere = createServer((request, response) => {
    const wanted = new URL(request.url ?? '/', 'http://elsewhere.example').searchParams.get('frame') ?? '';
    response.setHeader('content-type', 'text/html');
    response.end(
      `<!doctype html><title>Elsewhere</title><iframe src="${wanted}" width="640" height="416"></iframe>`,
    );
  });
  await new Promise<void>((done) => elsewhere.listen(0, '127.0.0.1', done));
  // Another host's name, so that it is another site to the browser.
  elsewhereAddress = `http://localhost:${(elsewhere.address() as AddressInfo).port}`;
  browser = await openBrowser(app.address);
});
afterAll(() => elsewhere?.close());

describe('the answers', () => {
  const policyOf = async (path: string) => {
    const { headers } = await fetch(path);
    return { policy: headers.get('content-security-policy') ?? '', frame: headers.get('x-frame-options') };
  };

  test('only the player may be framed by any site', async () => {
    const player = await policyOf(`${taught.page}/embed`);
    expect(player.policy).toContain('frame-ancestors *');
    expect(player.policy).not.toMatch(/script-src|unsafe/);
    expect(player.frame).toBeNull();
    for (const path of [
      taught.page,
      `${taught.page}/revision/1`,
      `${taught.page}/embed/x`,
      app.address,
      `${app.address}/sign-in`,
      `${app.address}/bench/lesson/embed`,
    ]) {
      const other = await policyOf(path);
      expect(other.policy, path).toContain("frame-ancestors 'self'");
      expect(other.frame, path).toBe('SAMEORIGIN');
    }
  });

  test('the page tells where its oEmbed answer is, and that frames the player', async () => {
    const page = await (await fetch(taught.page)).text();
    const link = /<link[^>]*type="application\/json\+oembed"[^>]*>/.exec(page)?.[0] ?? '';
    const address = /href="([^"]*)"/.exec(link)?.[1]?.replaceAll('&amp;', '&') ?? '';
    const answer = await fetch(`${address}&maxwidth=400`);
    expect(answer.headers.get('access-control-allow-origin')).toBe('*');
    const told = (await answer.json()) as { html: string; width: number; type: string };
    expect(told).toMatchObject({
      version: '1.0',
      type: 'video',
      width: 400,
      author_name: 'Kettle Row Rings',
    });
    expect(told.html).toContain(`src="${taught.page}/embed"`);
    const status = async (query: string) => (await fetch(`${app.address}/oembed?${query}`)).status;
    const url = encodeURIComponent(taught.page);
    expect(await status(`url=${url}&format=xml`)).toBe(501);
    expect(await status(`url=${url}-not-there`)).toBe(404);
    expect(await status(`url=${encodeURIComponent('https://elsewhere.example/workshop/a/lesson/b')}`)).toBe(
      404,
    );
    expect(await status('')).toBe(404);
  });

  test('the page says what a link to it may show, in absolute addresses', async () => {
    const page = await (await fetch(taught.page)).text();
    const told = (property: string) =>
      new RegExp(`<meta property="${property}" content="([^"]*)"`).exec(page)?.[1] ?? null;
    expect(told('og:title')).toBe('Byzantine bracelet');
    expect(told('og:url')).toBe(taught.page);
    const picture = told('og:image') ?? '';
    expect(picture.startsWith(app.address)).toBe(true);
    expect((await fetch(picture)).headers.get('content-type')).toBe(told('og:image:type'));
    expect(told('og:image:alt')).toContain('Byzantine bracelet');
  });
});

test('in the frame of another site it plays, with captions and chapters, without script', async () => {
  const page = await browser.open({ javaScriptEnabled: true });
  await page.goto(`${elsewhereAddress}/?frame=${encodeURIComponent(`${taught.page}/embed`)}`);
  const frame = page.frameLocator('iframe');
  const video = frame.locator('video');
  await video.waitFor();
  await video.evaluate((element: HTMLVideoElement) => {
    element.muted = true;
    return element.play();
  });
  const state = () =>
    video.evaluate((element: HTMLVideoElement) => ({
      cues: [...element.textTracks].map((track) => track.cues?.length ?? 0)[0],
      at: element.currentTime,
    }));
  await expect.poll(async () => (await state()).cues).toBe(2);
  expect((await state()).at).toBeGreaterThanOrEqual(0);
  await frame.getByText('Chapters').click();
  await frame.getByRole('link', { name: 'The repeat unit' }).click();
  await expect.poll(async () => (await state()).at).toBe(30);
  // The way back opens beside the other site's page, not in its frame.
  expect(await frame.getByRole('link', { name: 'Byzantine bracelet' }).getAttribute('target')).toBe('_blank');
  browser.forgive(theOtherSite);
});

test('a lesson page does not come up in the frame of another site', async () => {
  const page = await browser.open();
  await page.goto(`${elsewhereAddress}/?frame=${encodeURIComponent(taught.page)}`);
  expect(await page.frameLocator('iframe').locator('video').count()).toBe(0);
  browser.forgive(/frame-ancestors|X-Frame-Options/i);
  browser.forgive(theOtherSite);
});

test.each([
  ['with script', true],
  ['without', false],
])('the address of every clip plays its place, %s', async (_name, javaScriptEnabled) => {
  const page = await browser.open({ javaScriptEnabled });
  await page.goto(taught.page);
  const written = (await page.locator('script[type="application/ld+json"]').textContent()) ?? '';
  const graph = (JSON.parse(written) as { '@graph': Record<string, unknown>[] })['@graph'];
  const media = graph.find((node) => node['@type'] === 'VideoObject');
  const clips = media?.['hasPart'] as { url: string; startOffset: number }[];
  expect(clips).toHaveLength(3);
  const last = clips.at(-1);
  await page.goto(last?.url ?? '');
  const at = () => page.locator('video').evaluate((element: HTMLVideoElement) => element.currentTime);
  await expect.poll(at).toBeGreaterThanOrEqual(last?.startOffset ?? Number.NaN);
  expect(await at()).toBeLessThan((last?.startOffset ?? 0) + 20);
});
