import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { findWeave } from '#lib/weave/weave-library.ts';
import { aContent } from '#tests/support/a-content.ts';
import { aTaughtLesson, publishBehindTheScenes, type Taught } from '#tests/support/a-taught-lesson.ts';
import { sharedApp, type TestApp } from '#tests/support/app.ts';
import { axeOn } from '#tests/support/axe.ts';
import { openBrowser, type TestBrowser } from '#tests/support/chromium.ts';
import { pdfPages, pdfText } from '#tests/support/read-pdf.ts';
import { signIn } from '#tests/support/sign-in.ts';

let app: TestApp;
let browser: TestBrowser;
let taught: Taught;

beforeAll(async () => {
  app = await sharedApp();
  browser = await openBrowser(app.address);
  const [first, ...repeat] = aContent().repeat;
  if (!first) throw new Error('the fixture has a repeat');
  const content = aContent({
    repeat: [{ ...first, sentence: 'Close the ring to the left, its seam inside.' }, ...repeat],
    summary: 'A square chain. Every ring of it is closed with its seam inside.',
  });
  taught = await aTaughtLesson(app, content);
  await app.db.glossaryTerm.create({
    data: {
      ...{ id: 'own', workshopId: taught.workshopId, term: 'square chain', forms: [], sounds: [] },
      meaning: 'What we call four-sided work <b>here</b>.',
    },
  });
  await publishBehindTheScenes(app, taught);
});

const seconds = (page: Page) =>
  page.locator('video').evaluate((media: HTMLVideoElement) => media.currentTime);
const isPaused = (page: Page) => page.locator('video').evaluate((media: HTMLVideoElement) => media.paused);

/** Plays until it is held at the first step of the repeat, at 0:30. */
async function holdAtRepeat(page: Page, goOn = ''): Promise<void> {
  await page.goto(`${taught.page}?t=29.4`);
  await page.getByRole('button', { name: 'Hold at each step' }).click();
  await page.getByLabel('Go on').selectOption(goOn);
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await page.getByText('at the repeat unit, step 1:').waitFor();
  expect(await isPaused(page)).toBe(true);
}

test.each([true, false])(
  'an address with an end plays that stretch alone, scripts on: %s',
  async (javaScriptEnabled) => {
    const page = await browser.open({ javaScriptEnabled });
    await page.goto(`${taught.page}?t=29,29.6`);
    expect(await page.locator('video').getAttribute('src')).toMatch(/\/recording#t=29,29\.6$/);
    await expect.poll(() => seconds(page)).toBeCloseTo(29, 1);
    if (javaScriptEnabled) await page.getByRole('button', { name: 'Play', exact: true }).click();
    else await page.locator('video').evaluate((media: HTMLVideoElement) => media.play());
    await expect.poll(() => seconds(page)).toBeGreaterThan(29.5);
    await expect.poll(() => isPaused(page)).toBe(true);
    // A browser stops at the next frame or so, never a second later.
    expect(await seconds(page)).toBeLessThan(30.2);
  },
);

describe('a held step', () => {
  test('goes on by a key, by the key of a pedal, and by a tap on the picture', async () => {
    const page = await browser.open({ viewport: { width: 390, height: 780 } });
    await holdAtRepeat(page);
    const { violations } = await axeOn(page).include('#player').analyze();
    expect(violations.map(({ id, nodes }) => `${id} ${nodes[0]?.html}`)).toEqual([]);
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Go on');
    await page.keyboard.press('PageDown');
    await expect.poll(() => seconds(page)).toBeGreaterThan(30.1);
    // The next step, at 0:34.
    await page.locator('video').evaluate((media: HTMLVideoElement) => {
      media.currentTime = 33.4;
    });
    await page.getByText('at the repeat unit, step 2:').waitFor();
    await page.locator('video').click({ force: true, position: { x: 100, y: 60 } });
    await expect.poll(() => seconds(page)).toBeGreaterThan(34.1);
  });

  test('shows again what it has just shown', async () => {
    const page = await browser.open();
    await holdAtRepeat(page);
    // Nothing was shown before the first step.
    expect(await page.getByRole('button', { name: 'Show it again' }).count()).toBe(0);
    await page.locator('video').evaluate((media: HTMLVideoElement) => {
      media.currentTime = 33.4;
    });
    await page.getByRole('button', { name: 'Play', exact: true }).click();
    await page.getByText('at the repeat unit, step 2:').waitFor();
    await page.getByRole('button', { name: 'Show it again' }).click();
    await expect.poll(() => seconds(page)).toBeLessThan(33);
    expect(await seconds(page)).toBeGreaterThanOrEqual(30);
    expect(await isPaused(page)).toBe(false);
  });

  test('goes on by itself after the time that was set, unless it is told to wait; the time is remembered', async () => {
    const page = await browser.open();
    await holdAtRepeat(page, '5000');
    await page.getByRole('button', { name: 'Wait' }).click();
    await page.getByText('Waiting until you go on.').waitFor();
    await holdAtRepeatAgain(page);
    await page.getByText('Goes on by itself in 5 s.').waitFor();
    await expect.poll(() => isPaused(page)).toBe(false);
    expect(await seconds(page)).toBeGreaterThanOrEqual(30);
    await page.reload();
    expect(await page.getByLabel('Go on').inputValue()).toBe('5000');
  });
});

async function holdAtRepeatAgain(page: Page): Promise<void> {
  await page.locator('video').evaluate((media: HTMLVideoElement) => {
    media.currentTime = 29.4;
  });
  await page.getByRole('button', { name: 'Play', exact: true }).click();
}

describe('terms', () => {
  test('open where they occur, by key and without script, and stand together below', async () => {
    const page = await browser.open({ javaScriptEnabled: false, viewport: { width: 390, height: 780 } });
    await page.goto(taught.page);
    const term = page.locator('#repeat-1').getByRole('button', { name: 'seam' });
    const box = page.locator('[popover]', { hasText: 'Where the two ends of a ring meet.' });
    await term.focus();
    await page.keyboard.press('Enter');
    await box.waitFor({ state: 'visible' });
    await page.keyboard.press('Escape');
    await box.waitFor({ state: 'hidden' });
    const together = page.getByRole('region', { name: 'Words of the trade' });
    expect(await together.locator('dt').allInnerTexts()).toEqual([
      'aspect ratio',
      'byzantine',
      'Close the ring'.toLowerCase(),
      'gauge',
      'inner diameter',
      'seam',
      'square chain',
    ]);
    // A workshop's own words are words.
    expect(await together.innerText()).toContain('four-sided work <b>here</b>.');
    // Said and reckoned words are explained too, each at its first place in a part of the page.
    const pressed = (part: string) => page.locator(part).locator('button[popovertarget]').allInnerTexts();
    expect(await pressed('#transcript')).toEqual(['gauge']);
    const ring = page.locator('#kit th').getByRole('button', { name: /^what it is ?: inner diameter$/ });
    expect(await ring.count()).toBe(1);
    // Pressed or not, the sentence reads as it was written.
    expect(await page.locator('#repeat-1 p').first().innerText()).toBe(
      'Close the ring to the left, its seam inside.',
    );
  });

  test('are explained in the captions too, and the recording waits for who reads', async () => {
    const page = await browser.open();
    await page.goto(`${taught.page}?t=31.2`);
    await page.getByRole('button', { name: 'Play', exact: true }).click();
    await page.locator('#player').getByRole('button', { name: 'gauge' }).click();
    await page
      .locator('[popover]', { hasText: 'A number for the thickness of wire.' })
      .waitFor({ state: 'visible' });
    expect(await isPaused(page)).toBe(true);
    expect(await page.locator('#player p[lang] span').innerText()).toBe('Take an eighteen gauge ring.');
  });

  test('turn their words of hand with the picture', async () => {
    const page = await browser.open();
    await page.goto(taught.page);
    await page.getByRole('button', { name: 'Mirror the picture' }).click();
    expect(await page.locator('#repeat-1 p').first().innerText()).toBe(
      'Close the ring to the right, its seam inside.',
    );
  });
});

describe('the weave', () => {
  let woven: Taught;
  beforeAll(async () => {
    const piece = findWeave('byzantine')?.piece;
    if (!piece) throw new Error('the weave is stored');
    const inCopper = (part: 'start' | 'repeat', fromMs: number) =>
      piece[part].map((placement, at) => ({
        ...placement,
        opened: placement.opened && 'copper',
        carries: placement.carries.map((each) => ({ ...each, ringKind: 'copper' })),
        sentence: `Make ${placement.id}.`,
        atMs: fromMs + at * 4_000,
      }));
    woven = await aTaughtLesson(
      app,
      aContent({ start: inCopper('start', 15_000), repeat: inCopper('repeat', 30_000), finishing: [] }),
    );
    await publishBehindTheScenes(app, woven);
  });

  test('is turned by keys, by hand and back again', async () => {
    const page = await browser.open();
    await page.goto(woven.page);
    await page.getByRole('button', { name: /^Turn it ?: the piece$/ }).click();
    const sheet = page.getByRole('dialog', { name: 'Turn the piece' });
    const canvas = sheet.getByRole('img');
    /** From the leftmost to the rightmost painted column, as a part of the canvas. */
    const inkWidth = () =>
      canvas.evaluate((drawn) => {
        const { width, height } = drawn as HTMLCanvasElement;
        const pixels = (drawn as HTMLCanvasElement).getContext('2d')?.getImageData(0, 0, width, height).data;
        const inked = [...Array(width).keys()].filter((x) =>
          [...Array(height).keys()].some((y) => (pixels?.[4 * (y * width + x) + 3] ?? 0) > 0),
        );
        return ((inked.at(-1) ?? 0) - (inked[0] ?? 0)) / width;
      });
    const at = async () => [
      await sheet.getByLabel('Roll about its length').inputValue(),
      await sheet.getByLabel('Swing its ends').inputValue(),
    ];
    await expect.poll(inkWidth).toBeGreaterThan(0.3);
    const first = await inkWidth();
    await page.keyboard.press('ArrowUp');
    for (let n = 0; n < 12; n++) await page.keyboard.press('ArrowLeft');
    expect(await at()).toEqual(['5', '-60']);
    // Its ends swung by 60 degrees it looks about half as long.
    await expect.poll(inkWidth).toBeLessThan(0.75 * first);
    const box = await canvas.boundingBox();
    if (!box) throw new Error('it has no place');
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + 40, y - 60);
    await page.mouse.up();
    // Half a degree to a pixel.
    expect(await at()).toEqual(['35', '-40']);
    await sheet.getByRole('button', { name: 'As at first' }).click();
    expect(await at()).toEqual(['0', '0']);
    await page.keyboard.press('Escape');
    await sheet.waitFor({ state: 'detached' });
  });

  test('stands there in fixed views where no script runs, and its marks are explained', async () => {
    const page = await browser.open({ javaScriptEnabled: false });
    await page.goto(woven.page);
    expect(await page.getByRole('button', { name: 'Turn it' }).count()).toBe(0);
    const pictures = page.locator('img[data-hand=shown]');
    const told = await pictures.evaluateAll((all) => all.map((each) => each.getAttribute('alt') ?? ''));
    expect(told.length).toBeGreaterThan(4);
    expect(told.every((words) => words.length > 20)).toBe(true);
    const source = await pictures.first().getAttribute('src');
    const drawn = await page.request.get(`${app.address}${source}`);
    expect(drawn.headers()['content-type']).toContain('image/svg+xml');
    expect(await page.getByText('a cross from the front').count()).toBe(1);
  });
});

test('the check screen names the letters that paper cannot show', async () => {
  const draft = await aTaughtLesson(app, aContent({ title: '編 → bracelet', licence: '' }));
  const page = await browser.open();
  await signIn(page, app.address, app.db, draft.userId);
  await page.goto(`${draft.bench}/check`);
  const told = page.getByText('Printed sheets cannot show some letters');
  expect(await told.locator('..').innerText()).toMatch(/this lesson: 編\. They read \[\?\] there/);
  const onCard = page.getByText('The picture for links leaves some letters or signs out:');
  expect(await onCard.locator('..').innerText()).toMatch(/signs out: 編\. Where nothing is left/);
});

test('the lesson on paper is for everybody, or for the measure in the address', async () => {
  const page = await browser.open();
  await page.goto(taught.page);
  const sheet = await page.request.get(
    await page
      .getByRole('link', { name: 'Sheet for the bench (PDF)' })
      .evaluate((link) => (link as HTMLAnchorElement).href),
  );
  expect([sheet.status(), sheet.headers()['content-type']]).toEqual([200, 'application/pdf']);
  expect(await pdfText(await sheet.body())).toContain('17 times for small, 19 times for medium');
  await page.getByLabel('Your measure').fill('165');
  const own = await page.getByRole('link', { name: 'steps and kit on paper (PDF)' }).getAttribute('href');
  const mine = await (await page.request.get(`${app.address}${own}`)).body();
  expect(await pdfText(mine)).toContain('Work these steps 19 times.');
  expect(await pdfPages(mine)).toBeLessThanOrEqual(2);
  const nonsense = await page.request.get(`${taught.page}/revision/1/sheet.pdf?measure=nonsense`);
  expect(nonsense.status()).toBe(422);
});
