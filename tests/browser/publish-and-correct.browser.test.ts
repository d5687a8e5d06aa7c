import { randomUUID } from 'node:crypto';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { HtmlValidate } from 'html-validate';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { saveDraft } from '#lib/bench/save-draft.ts';
import { aContent, aTranscript } from '#tests/support/a-content.ts';
import { aTaughtLesson, publishBehindTheScenes, type Taught } from '#tests/support/a-taught-lesson.ts';
import { sharedApp, type TestApp } from '#tests/support/app.ts';
import { axeOn } from '#tests/support/axe.ts';
import { openBrowser, type TestBrowser } from '#tests/support/chromium.ts';
import { pdfCode, pdfText } from '#tests/support/read-pdf.ts';
import { signIn } from '#tests/support/sign-in.ts';
import { tabTo, waitUntilSaved } from '#tests/support/transcript-page.ts';
import { readWithW3cParser } from '#tests/support/webvtt-readers.ts';

let app: TestApp;
let browser: TestBrowser;

beforeAll(async () => {
  app = await sharedApp();
  browser = await openBrowser(app.address);
});

const kitNumbers = (page: Page) =>
  page
    .locator('#kit table')
    .first()
    .locator('tbody tr')
    .evaluateAll((rows) =>
      rows.map((row) => [...row.querySelectorAll('td')].map((cell) => cell.textContent)),
    );

/** Stage and field to which the check screen leads for each finding of the faulty lesson below. */
const MENDED_AT: Readonly<Record<string, string>> = {
  'adds-nothing': 'making: Opens',
  'captions-hard-to-read': 'transcript: 1:32 And so on.',
  'caution-empty': 'making: Caution 1',
  'caution-fits': 'making: Add the caution Copper and skin',
  'chapter-late-start': 'transcript: Title of the chapter',
  'chapter-nameless': 'transcript: Title of the chapter',
  'colour-missing': 'making: Colour in words',
  'correction-incomplete': 'corrections: What was wrong',
  'correction-span-wrong': 'corrections: From',
  'kit-not-computed': 'kit: tiny 5 mm',
  'leaning-unstated': 'making: Leaning',
  'licence-missing': 'making: Who may use this lesson, and how',
  'link-nameless': 'making: What it leads to',
  'link-not-well-formed': 'making: Address',
  'material-nameless': 'making: What',
  'metal-missing': 'making: Name of the metal',
  'minutes-missing': 'making: Preparing takes, minutes',
  'moment-after-end': 'making: Moment in the recording',
  'moment-missing': 'making: Moment in the recording',
  'never-said': 'making: Name',
  'nothing-closed': 'making: Add a placement to the repeat unit',
  'piece-not-sound': 'making: Opens',
  'picture-without-words': 'making: What the picture shows',
  'quantity-missing': 'making: How much, piece',
  'ring-kind-nameless': 'making: Name',
  'ring-kind-unknown': 'making: Opens',
  'sentence-missing': 'making: Sentence for the pupil',
  'summary-missing': 'making: Summary',
  'times-approximate': 'transcript: 1:32 And so on.',
  'title-missing': 'making: Title of the lesson',
  'tools-missing': 'making: What',
  'transcript-after-end': 'transcript: 1:32 And so on.',
};

describe('from check to a corrected lesson', () => {
  test('by keyboard alone: publish, correct, publish again; the old revision says that it is superseded', async () => {
    const taught = await aTaughtLesson(app);
    const page = await browser.open();
    expect((await page.request.get(taught.page)).status()).toBe(404);
    await signIn(page, app.address, app.db, taught.userId);
    await page.goto(`${taught.bench}/check`);
    await page.getByRole('button', { name: 'Publish revision 1' }).waitFor();
    await tabTo(page, 'button[aria-describedby="publish-note"]');
    await page.keyboard.press('Enter');
    await page.getByText('Revision 1 is published.', { exact: false }).first().waitFor();

    await page.goto(`${taught.bench}/corrections`);
    const state = page.getByRole('button', { name: 'State a correction' });
    await state.waitFor();
    await state.focus();
    await page.keyboard.press('Enter');
    await page.getByLabel('What was wrong').waitFor();
    await page.keyboard.type('eighteen gauge');
    await page.keyboard.press('Tab');
    await page.keyboard.type('18 SWG');
    await page.getByLabel('Whom it concerns').focus();
    await page.keyboard.type('everyone who works by revision 1');
    await page.getByLabel('Find it by a word that is said').focus();
    await page.keyboard.type('gauge');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await expect.poll(() => page.getByLabel('From', { exact: true }).inputValue()).toBe('0:31.000');
    await waitUntilSaved(page);

    await page.getByRole('link', { name: 'Check and publish revision 2' }).focus();
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Publish revision 2' }).waitFor();
    await tabTo(page, 'button[aria-describedby="publish-note"]');
    await page.keyboard.press('Enter');
    await page.getByText('Revision 2 is published.', { exact: false }).first().waitFor();

    await page.goto(taught.page);
    expect(await page.locator('#corrections li').innerText()).toMatch(/since revision 2, at 0:31 to 0:36/);
    expect(await page.locator('#transcript').innerText()).toContain('Corrected: eighteen gauge 18 SWG');
    await page.goto(`${taught.page}/revision/1`);
    await page.getByText('This is revision 1; it is superseded.').waitFor();
    expect(await page.locator('#corrections').count()).toBe(0);
    expect(await page.locator('meta[name="robots"]').getAttribute('content')).toMatch(/noindex/);
    // The bench shows the published correction as one that can no longer be changed.
    await page.goto(`${taught.bench}/corrections`);
    await page.getByText('Revision 2').first().waitFor();
    expect(await page.getByLabel('What was wrong').count()).toBe(0);
  });

  test('every “Go to” gives the keyboard to what is to be mended, on every stage', async () => {
    const [kind, ...kinds] = aContent().ringKinds;
    const [first] = aContent().repeat;
    const [step] = aContent().finishing;
    const [thing] = aContent().materials;
    if (!kind || !first || !step || !thing) throw new Error('the fixture has one of each');
    const NOTHING = { opened: null, carries: [], sentence: '', atMs: null };
    const content = aContent({
      ...{ title: '', summary: '', weave: 'jens pind', prepareMinutes: null, makeMinutes: null, licence: '' },
      ringKinds: [{ ...kind, name: '', metal: 'other', metalName: '', colour: '' }, ...kinds],
      repeat: [{ ...first, ...NOTHING }],
      finishing: [{ ...step, opened: 'gone', atMs: 95_000 }],
      sizes: [{ id: 'tiny', name: 'tiny', bodyMm: 5 }],
      materials: [{ ...thing, name: '', quantityMilli: 0 }],
      links: [{ id: 'li', label: '', address: 'https://nowhere' }],
      cautions: [{ id: 'own', of: null, text: '' }],
      steps: [{ id: 'st', sentence: 'Polish it.', atMs: 70_000, pictureText: '' }],
      chapters: [{ id: 'ch', kind: 'opening', title: '', startMs: 3_000 }],
      corrections: [
        {
          ...{ id: 'co', kind: 'said wrongly', startMs: 9_000, endMs: 5_000, wrong: '', right: '' },
          ...{ affects: '', kitsChange: false, of: null, effects: [], revision: null },
        },
      ],
    });
    const late = {
      id: 'late',
      startMs: 92_000,
      endMs: 92_600,
      text: 'And so on.',
      settings: '',
      timing: 'approximate' as const,
    };
    const taught = await aTaughtLesson(app, content, [...aTranscript, late]);
    const page = await browser.open();
    await signIn(page, app.address, app.db, taught.userId);
    await page.goto(`${taught.bench}/check`);
    await page
      .getByRole('link', { name: /^Go to / })
      .first()
      .waitFor();
    const ways = await page
      .locator('[data-code]')
      .evaluateAll((rows) =>
        rows.map((row) => [row.getAttribute('data-code') ?? '', row.querySelector('a')?.href ?? ''] as const),
      );
    const landed = () =>
      page.evaluate(() => {
        const field = document.activeElement;
        if (!(field instanceof HTMLElement) || field === document.body) return 'nowhere';
        const { top, bottom } = field.getBoundingClientRect();
        const labels = 'labels' in field ? (field.labels as NodeListOf<HTMLElement>) : [];
        const words = labels[0]?.innerText ?? field.ariaLabel ?? field.innerText;
        const sight = top >= 0 && bottom <= innerHeight ? '' : ', out of sight';
        return `${location.pathname.split('/').at(-1)}: ${words.replaceAll(/\s+/g, ' ')}${sight}`;
      });
    expect(ways.map(([code]) => code)).toEqual(expect.arrayContaining(Object.keys(MENDED_AT)));
    // Of several findings of a kind the last one.
    for (const [code, way] of new Map(ways)) {
      await page.goto(way);
      await expect.poll(landed, { message: code }).toBe(MENDED_AT[code]);
    }
    // A moment after the end has no picture: that is what one of the findings is about.
    browser.forgive(/stills.95000/);
  });

  test('what blocks keeps the button away, a warning can be put aside and brought back', async () => {
    const taught = await aTaughtLesson(app, aContent({ title: '', licence: '' }));
    const page = await browser.open();
    await signIn(page, app.address, app.db, taught.userId);
    await page.goto(`${taught.bench}/check`);
    await page.getByText('The lesson has no title.').first().waitFor();
    expect(await page.getByRole('button', { name: 'Publish revision 1' }).isDisabled()).toBe(true);
    const licence = page.locator('[data-code="licence-missing"]');
    await licence.getByRole('button', { name: /Put aside/ }).click();
    await page.getByText('1 put aside').click();
    await licence.getByRole('button', { name: /Bring back/ }).click();
    await waitUntilSaved(page);
    expect(await page.locator('[data-code="licence-missing"] button').innerText()).toMatch(/Put aside/);
  });
});

describe('the public page', () => {
  let taught: Taught;
  beforeAll(async () => {
    taught = await aTaughtLesson(app);
    await publishBehindTheScenes(app, taught);
    const [small] = aContent().ringKinds.slice(2);
    if (!small) throw new Error('the fixture has a third ring kind');
    const finishing = aContent().finishing.slice(0, 3);
    const saved = await saveDraft(
      { db: app.db, now: () => new Date(), newId: randomUUID },
      {
        ...taught,
        saveId: randomUUID(),
        baseVersion: 1,
        changes: finishing
          .slice(2)
          .map((item) => ({ kind: 'put', list: 'finishing', item: { ...item, id: 'more' } })),
      },
    );
    if (!saved.ok) throw new Error(saved.fault.code);
    await publishBehindTheScenes(app, taught);
  });

  // Kit A of the worked example (invented sizes and prices): medium, 165 mm, 19 repeats; here one small ring more.
  test('gives the kit for an own wrist without script, in mm and in inches alike', async () => {
    const page = await browser.open({ javaScriptEnabled: false });
    await page.goto(taught.page);
    await page.getByLabel('Your measure').fill('6 1/2');
    await page.getByLabel('inches').check();
    await page.getByRole('button', { name: 'Show my kit' }).click();
    expect(page.url()).toContain('unit=in');
    const inInches = await kitNumbers(page);
    expect(inInches[0]).toEqual(['40', '38', '8', '86']);
    await page.goto(`${taught.page}?measure=165.1&unit=mm&of=wrist#kit`);
    expect(await kitNumbers(page)).toEqual(inInches);
    await page.goto(`${taught.page}?measure=nonsense&unit=mm&of=wrist#kit`);
    expect(await page.locator('#kit-fault').innerText()).toContain('“nonsense” could not be read');
    const chapter = page.getByRole('navigation', { name: 'Chapters' }).getByRole('link').nth(1);
    await chapter.click();
    expect(await page.locator('video').getAttribute('src')).toMatch(/recording#t=30$/);
    expect(await page.locator('#transcript').innerText()).toContain('Take an eighteen gauge ring.');
  });

  test('changes the kit at once with script, and keeps it in the address', async () => {
    const page = await browser.open();
    await page.goto(taught.page);
    await page.getByRole('button', { name: 'Play' }).waitFor();
    await page.getByLabel('Your measure').fill('180');
    await expect.poll(() => kitNumbers(page).then((rows) => rows[0])).toEqual(['44', '42', '9', '95']);
    expect(page.url()).toContain('measure=180');
  });

  test('tells the holder of an earlier kit what to add', async () => {
    const page = await browser.open({ javaScriptEnabled: false });
    await page.goto(`${taught.page}?measure=165&unit=mm&of=wrist&held=1#kit`);
    const box = page.getByRole('region', { name: 'If your kit is of revision 1' });
    expect(await box.innerText()).toContain('Add 1 × small, opened.');
  });

  test('mirrors the picture with its words of hand, and plays slowly and from a step', async () => {
    const page = await browser.open();
    await page.goto(taught.page);
    const sentence = page.locator('#repeat-1');
    await page.getByRole('button', { name: 'Mirror the picture' }).click();
    expect(await sentence.innerText()).toContain('with the right hand');
    await page.getByRole('button', { name: 'Half' }).click();
    await sentence.getByRole('link', { name: /Said here/ }).click();
    await expect
      .poll(() => page.locator('video').evaluate((video: HTMLVideoElement) => video.currentTime))
      .toBeGreaterThanOrEqual(30);
    expect(await page.locator('video').evaluate((video: HTMLVideoElement) => video.playbackRate)).toBe(0.5);
    expect(await page.locator('video').evaluate((video: HTMLVideoElement) => video.preservesPitch)).toBe(
      true,
    );
    await page.getByRole('link', { name: 'Back to the repeat unit, step 1' }).waitFor();
  });

  test('holds at the next step until the pupil goes on', async () => {
    const page = await browser.open();
    await page.goto(`${taught.page}?t=29`);
    await page.getByRole('button', { name: 'Hold at each step' }).click();
    await page.getByRole('button', { name: 'Play' }).click();
    const goOn = page.getByRole('button', { name: 'Go on' });
    await goOn.waitFor();
    expect(await page.locator('video').evaluate((video: HTMLVideoElement) => video.paused)).toBe(true);
    await page.keyboard.press('Enter');
    await expect
      .poll(() => page.locator('video').evaluate((video: HTMLVideoElement) => video.currentTime))
      .toBeGreaterThan(30.2);
  });

  test('loops the repeat unit, counting in or at once', async () => {
    const page = await browser.open();
    await page.goto(taught.page);
    await page.getByRole('button', { name: 'Loop the repeat unit' }).click();
    const video = page.locator('video');
    const seconds = () => video.evaluate((media: HTMLVideoElement) => media.currentTime);
    // From 0:30 to 1:00; played on from shortly before its end.
    const nearEnd = () =>
      video.evaluate((media: HTMLVideoElement) => {
        media.currentTime = 59.5;
      });
    await expect.poll(seconds).toBeGreaterThan(30);
    await nearEnd();
    const counts = page.getByRole('status').filter({ hasText: /^[123]$/ });
    await counts.waitFor();
    expect(await video.evaluate((media: HTMLVideoElement) => media.paused)).toBe(true);
    await counts.waitFor({ state: 'detached' });
    await expect.poll(seconds).toBeGreaterThan(30.1);
    expect(await seconds()).toBeLessThan(59);
    await page.getByLabel('Count me in').uncheck();
    await nearEnd();
    await expect.poll(seconds).toBeLessThan(59);
    expect(await counts.count()).toBe(0);
    // Let go, it plays past the end.
    await page.getByRole('button', { name: 'Loop the repeat unit' }).click();
    await nearEnd();
    await expect.poll(seconds).toBeGreaterThan(60.2);
  });

  test('keeps on the device where the pupil left off, how she watched, and what she ticked', async () => {
    const page = await browser.open();
    await page.goto(taught.page);
    await page.getByRole('button', { name: 'Half' }).click();
    await page.getByLabel('Place in the recording').fill('42000');
    const box = page.getByRole('checkbox', { name: /^Open \d+/ }).first();
    await box.check();
    await expect.poll(() => page.evaluate(() => JSON.stringify(localStorage))).toContain('40000');
    await page.reload();
    await page.getByRole('button', { name: 'Go on where you left off, at 0:40' }).click();
    const playing = () =>
      page
        .locator('video')
        .evaluate((media: HTMLVideoElement) => [media.currentTime >= 40, media.playbackRate]);
    await expect.poll(playing).toEqual([true, 0.5]);
    await expect.poll(() => box.isChecked()).toBe(true);
    expect(
      await page
        .getByRole('checkbox', { name: /^Close \d+/ })
        .first()
        .isChecked(),
    ).toBe(false);
  });

  test('gives files that an outside reader takes without complaint, kept for long', async () => {
    const page = await browser.open();
    for (const [file, cues] of [
      ['captions.vtt', 2],
      ['chapters.vtt', 3],
    ] as const) {
      const answer = await page.request.get(`${taught.page}/revision/2/${file}`);
      expect(answer.headers()['content-type']).toMatch(/^text\/vtt/);
      expect(answer.headers()['cache-control']).toContain('immutable');
      const read = readWithW3cParser(
        await answer.text(),
        file === 'captions.vtt' ? 'subtitles/captions/descriptions' : 'chapters',
      );
      expect(read.errors).toEqual([]);
      expect(read.cues).toHaveLength(cues);
      const etag = answer.headers()['etag'] ?? '';
      const again = await page.request.get(answer.url(), { headers: { 'if-none-match': etag } });
      expect(again.status()).toBe(304);
    }
    const part = await page.request.get(`${taught.page}/revision/2/recording`, {
      headers: { range: 'bytes=0-9' },
    });
    expect([part.status(), (await part.body()).length]).toEqual([206, 10]);
    for (const path of [
      '/revision/3',
      '/revision/0',
      '/revision/2/stills/none.jpg',
      '/revision/02/captions.vtt',
    ])
      expect((await page.request.get(`${taught.page}${path}`)).status(), path).toBe(404);
  });

  test('gives the kit for any measure as a sheet whose code leads back here, as a table and as data', async () => {
    const page = await browser.open();
    const kit = `${taught.page}/revision/2/kit`;
    const sheet = await page.request.get(`${kit}/kit.pdf?measure=6.5&unit=in&of=wrist`);
    expect([sheet.status(), sheet.headers()['content-type']]).toEqual([200, 'application/pdf']);
    expect(await pdfText(await sheet.body())).toContain('For 165.1 mm (6.5 in) on the body.');
    expect(await pdfCode(await sheet.body())).toBe(taught.page);
    const again = await page.request.get(`${kit}/kit.pdf?measure=6.5&unit=in&of=wrist`);
    expect((await again.body()).equals(await sheet.body())).toBe(true);
    const data = await (await page.request.get(`${kit}/kit.json?measure=6.5&unit=in`)).json();
    const schema = await (await page.request.get(data.$schema)).json();
    expect(new Ajv2020({ strict: true }).validate(schema, data)).toBe(true);
    const table = await (await page.request.get(`${kit}/kit.csv?measure=6.5&unit=in`)).text();
    const issued = data.rings.map((ring: { issued: number }) => String(ring.issued));
    const rows = table.split('\r\n').map((row) => row.split(','));
    expect(rows.slice(1, 1 + issued.length).map((cells) => cells.at(-9))).toEqual(issued);
    for (const [file, status] of [
      ['kit.pdf?measure=nonsense', 422],
      ['kit.pdf?measure=99999', 422],
      ['kit.exe', 404],
    ])
      expect((await page.request.get(`${kit}/${file}`)).status(), `${file}`).toBe(status);
  });

  test('is sound HTML', async () => {
    const page = await browser.open();
    const validate = new HtmlValidate({
      extends: ['html-validate:standard'],
      // React writes attributes and void elements in its own style; style is not soundness.
      rules: {
        'attribute-boolean-style': 'off',
        'void-style': 'off',
        'no-inline-style': 'off',
        'long-title': 'off',
        'doctype-style': 'off',
        'attribute-empty-style': 'off',
        'no-trailing-whitespace': 'off',
        'valid-id': ['error', { relaxed: true }],
        'script-type': 'off',
        'require-sri': 'off',
      },
    });
    for (const address of [
      taught.page,
      `${taught.page}/revision/1`,
      taught.page.replace(/\/lesson\/.*/, ''),
    ]) {
      const report = await validate.validateString(await (await page.request.get(address)).text());
      expect(
        report.results.flatMap(({ messages }) =>
          messages.map(({ ruleId, message, line }) => `${ruleId} ${message} ${line}`),
        ),
      ).toEqual([]);
    }
  });

  test.each([1280, 390])(
    'passes axe at WCAG 2.2 A and AA, %d px wide, and scrolls one way only',
    async (width) => {
      const page = await browser.open({ viewport: { width, height: 800 } });
      for (const address of [
        taught.page,
        taught.page.replace(/\/lesson\/.*/, ''),
        `${taught.page}/revision/1`,
      ]) {
        await page.goto(address);
        if (address.includes('/lesson/')) await page.getByRole('button', { name: 'Play' }).waitFor();
        const { violations } = await axeOn(page)
          .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
          .analyze();
        expect(violations.map(({ id, nodes }) => `${id} ${nodes[0]?.html}`)).toEqual([]);
        expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
      }
      await signIn(page, app.address, app.db, taught.userId);
      for (const screen of ['check', 'corrections']) {
        await page.goto(`${taught.bench}/${screen}`);
        await page.getByRole('heading', { level: 2 }).first().waitFor();
        const { violations } = await axeOn(page)
          .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
          .analyze();
        expect(violations.map(({ id, nodes }) => `${screen} ${id} ${nodes[0]?.html}`)).toEqual([]);
      }
    },
  );
});
