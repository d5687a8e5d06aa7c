/** What comes after publishing: a kit is sold and the lesson corrected; a pupil reports what is wrong. */
import { randomUUID } from 'node:crypto';
import { beforeAll, expect, test } from 'vitest';
import { saveDraft } from '#lib/bench/save-draft.ts';
import { aContent } from '#tests/support/a-content.ts';
import { aTaughtLesson, publishBehindTheScenes, type Taught } from '#tests/support/a-taught-lesson.ts';
import { startApp, type TestApp } from '#tests/support/app.ts';
import { axeOn } from '#tests/support/axe.ts';
import { openBrowser, type TestBrowser } from '#tests/support/chromium.ts';
import { look } from '#tests/support/look.ts';
import { pdfCode, pdfText } from '#tests/support/read-pdf.ts';
import { signIn } from '#tests/support/sign-in.ts';
import { waitUntilSaved } from '#tests/support/transcript-page.ts';

let app: TestApp;
let browser: TestBrowser;
let taught: Taught;

beforeAll(async () => {
  // Reports are limited by where they come from: in a shared one, others could have used them up.
  app = await startApp();
  browser = await openBrowser(app.address);
  taught = await aTaughtLesson(app);
  await publishBehindTheScenes(app, taught);
});

/** One small ring more at the end of the piece, stated as a correction, and published. */
async function correctTheEnd(): Promise<void> {
  const last = aContent().finishing.at(-1);
  if (!last) throw new Error('the fixture finishes its piece');
  const { version } = await app.db.lesson.findUniqueOrThrow({ where: { id: taught.lessonId } });
  const saved = await saveDraft(
    { db: app.db, now: () => new Date(), newId: randomUUID },
    {
      ...taught,
      saveId: randomUUID(),
      baseVersion: version,
      changes: [
        { kind: 'put', list: 'finishing', item: { ...last, id: 'more' } },
        {
          kind: 'put',
          list: 'corrections',
          item: {
            ...{
              id: 'co',
              kind: 'kit wrong',
              startMs: 31_000,
              endMs: 36_000,
              kitsChange: true,
              revision: null,
            },
            ...{ wrong: 'two small rings', right: 'three small rings', affects: 'everyone' },
          },
        },
      ],
    },
  );
  if (!saved.ok) throw new Error(JSON.stringify(saved.fault));
  await publishBehindTheScenes(app, taught);
}

test('a kit is sold, the lesson is corrected, and the address on its label tells what to add', async () => {
  const page = await browser.open();
  await signIn(page, app.address, app.db, taught.userId);
  await page.goto(`${taught.bench}/kit`);
  await page.getByText('Record a batch').click();
  await page.getByLabel('medium, 165 mm').last().fill('3');
  await page.getByLabel('Another measure').last().fill('190');
  await page.getByLabel('which is').selectOption('length');
  await page.getByLabel('kits of it').fill('2');
  await page.getByLabel('Made up on').fill('2026-05-04');
  await page.getByRole('button', { name: 'Record this batch' }).click();
  const batch = page.getByRole('article', { name: '5 kits of revision 1, 4 May 2026' });
  await batch.getByText('3 × medium, 2 × 190 mm long.').waitFor();

  const file = async (name: string, part = '') => {
    const href = await batch.getByRole('link', { name }).getAttribute('href');
    return (await page.request.get(`${app.address}${href?.replace('from=1', part)}`)).body();
  };
  expect((await pdfText(await file('Labels', 'from=1'))).match(/Revision 1/g)).toHaveLength(5);
  // The last of the five alone, since the reader takes one code a page: 190 mm less the ease of 20 mm.
  const address = await pdfCode(await file('Labels', 'from=5'));
  expect(address).toBe(`${taught.page}/kit/1?measure=170`);
  expect(await pdfCode(await file('Inserts', 'from=5'))).toBe(address);

  await page.goto(`${taught.bench}/check`);
  const outside = page.getByRole('region', { name: 'Where to paste again' });
  await outside.getByText('Places that a lesson may stand in').click();
  for (const name of ['Captions', 'Description, as plain text', 'Kit sheets that you print or send out']) {
    const further = outside.getByText(/^(Further places|Places that a lesson may stand in)$/);
    if (!(await further.locator('..').evaluate((details: HTMLDetailsElement) => details.open)))
      await further.click();
    await outside.getByRole('button', { name: `It is there ${name}` }).click();
    await outside.getByRole('button', { name: `Not used any more ${name}` }).waitFor();
  }
  await outside.getByText('All that is noted shows revision 1, or is the same in it.').waitFor();

  const holder = await browser.open({ javaScriptEnabled: false });
  await holder.goto(address ?? '');
  await holder.getByText('Your kit is up to date.').waitFor();

  await correctTheEnd();
  await page.reload();
  await outside.getByText('3 places outside do not show revision 2.').waitFor();
  const text = outside.getByRole('listitem').filter({ hasText: 'Description, as plain text' });
  expect(await text.innerText()).toMatch(/revision 1, [\s\S]*\d lines differ. Paste it again./);
  await text.getByRole('button', { name: 'It is there' }).click();
  await outside.getByText('2 places outside do not show revision 2.').waitFor();
  expect(await outside.getByRole('listitem').filter({ hasText: 'Captions' }).innerText()).toContain(
    'Up to date.',
  );

  await page.goto(`${taught.bench}/kit`);
  await batch.getByText('Revision 2 changes these kits.').waitFor();
  const row = batch.getByRole('row', { name: /^small/ });
  expect((await row.getByRole('cell').allInnerTexts()).map((cell) => cell.trim())).toEqual([
    'put in 1',
    'put in 1',
    'put in 5',
  ]);
  expect(await pdfText(await file('Picking list of the difference'))).toMatch(
    /small.*put in 1 ?put in 1 ?put in 5/,
  );

  await holder.reload();
  await holder.getByText('Add 1 × small, opened.').waitFor();
  expect(await holder.getByRole('row', { name: /^small/ }).innerText()).toMatch(/3\s+4\s+open 3, 1 spare/);
  expect(await holder.getByRole('region', { name: /^Corrected since/ }).innerText()).toContain(
    'three small rings',
  );
  const seeing = await browser.open();
  await seeing.goto(address ?? '');
  const found = await axeOn(seeing).analyze();
  expect(found.violations).toEqual([]);
  // Sizes and numbers that there are none of.
  await holder.goto(`${taught.page}/kit/1`);
  await holder.getByRole('link', { name: 'large (180 mm)' }).click();
  await holder.getByText('Add 1 × small, opened.').waitFor();
  await holder.goto(`${taught.page}/kit/1?measure=%3Cscript%3E`);
  await holder.getByText('“<script>” could not be read').waitFor();
  await holder.goto(`${taught.page}/kit/1?measure=3`);
  await holder.getByText('What differs cannot be told for this size.', { exact: false }).waitFor();
  for (const path of ['/kit/3?measure=165', '/kit/0?measure=165', '/kit/x'])
    expect((await page.request.get(`${taught.page}${path}`)).status(), path).toBe(404);
});

const HOSTILE = '</textarea><script>alert(1)</script><img src=x onerror=alert(2)> \u202Eabc';

test('a pupil reports without script, and the report becomes a correction with its words and its span', async () => {
  const pupil = await browser.open({ javaScriptEnabled: false });
  await pupil.goto(taught.page);
  await pupil.getByText('Something is wrong here').click();
  await pupil.getByLabel('At which time').fill('0:33');
  await pupil.getByLabel('What is wrong?').fill(HOSTILE);
  await pupil.getByLabel('What would be right').fill('18 SWG');
  await pupil.getByRole('button', { name: 'Send to the workshop' }).click();
  await pupil.getByText('Thank you. The workshop will read it.').waitFor();
  // Where there is script, the form says where the recording stands.
  const watching = await browser.open();
  await watching.goto(`${taught.page}?t=12`);
  await watching.getByRole('button', { name: 'Play' }).waitFor();
  await expect
    .poll(() => watching.locator('video').evaluate((video: HTMLVideoElement) => video.currentTime))
    .toBeGreaterThan(11);
  await watching.getByText('Something is wrong here').click();
  await expect.poll(() => watching.getByLabel('At which time').inputValue()).toBe('0:12');

  const page = await browser.open();
  await signIn(page, app.address, app.db, taught.userId);
  await page.goto(`${taught.bench}/corrections`);
  await page.getByRole('link', { name: 'Pupils reported something: 1 report waits for you' }).click();
  await page.getByText(HOSTILE).first().waitFor();
  const place = page.getByRole('link', { name: '0:31 Take an eighteen gauge ring.' });
  expect(await place.getAttribute('href')).toMatch(/\/transcript#c2$/);
  await page.getByRole('button', { name: 'Make a correction of it' }).click();
  await page.getByLabel('What was wrong').waitFor();
  expect(await page.getByLabel('What was wrong').inputValue()).toBe('Take an eighteen gauge ring.');
  expect(await page.getByLabel('What is right').inputValue()).toBe('18 SWG');
  expect(await page.getByLabel('From', { exact: true }).inputValue()).toBe('0:31.000');
  await waitUntilSaved(page);
  await page.goto(`${taught.bench}/corrections/reports`);
  await page.getByRole('link', { name: 'Go to the correction' }).waitFor();
  await page.getByRole('button', { name: 'Delete all settled reports…' }).click();
  await page.getByRole('button', { name: 'Delete them' }).click();
  await page.getByText('Nothing waits for you.', { exact: false }).waitFor();
  await expect.poll(() => page.getByRole('heading', { name: 'Settled' }).count()).toBe(0);
});

test('reports are limited in rate and in size, come from our own page alone, and leave no address', async () => {
  const send = (fields: Record<string, string>, headers: Record<string, string> = {}) =>
    fetch(`${taught.page}/report`, {
      method: 'POST',
      redirect: 'manual',
      headers: { 'content-type': 'application/x-www-form-urlencoded', origin: app.address, ...headers },
      body: new URLSearchParams({
        revision: '1',
        concerns: 'kit',
        at: '',
        wrong: 'Too few.',
        right: '',
        ...fields,
      }),
    });
  const led = async (fields: Record<string, string>) =>
    new URL((await send(fields)).headers.get('location') ?? '', app.address).searchParams.get('reported');
  expect((await send({}, { origin: 'https://elsewhere.example' })).status).toBe(403);
  expect((await send({}, { 'content-type': 'application/json' })).status).toBe(415);
  expect((await send({ wrong: 'x'.repeat(70_000) })).status).toBe(413);
  expect((await send({ revision: '99' })).status).toBe(404);
  expect(await led({ wrong: '  ' })).toBe('not-complete');
  expect(await led({ wrong: 'x'.repeat(2_001) })).toBe('not-complete');
  expect(await led({ concerns: 'weather' })).toBe('not-complete');
  const answers: (string | null)[] = [];
  for (let sent = 0; sent < 6; sent += 1) answers.push(await led({}));
  expect(answers).toContain('yes');
  expect(answers.at(-1)).toBe('too-many');
  const kept = JSON.stringify([
    await app.db.report.findMany(),
    await app.db.reportLimit.findMany(),
    await app.db.reportSalt.findMany(),
  ]);
  expect(kept).not.toContain('127.0.0.1');
});

test('an old revision says what it is in its title and on its sheets; a deleted lesson answers wherever its address stands', async () => {
  const page = await browser.open();
  await page.goto(`${taught.page}/revision/1`);
  expect(await page.title()).toContain('Byzantine bracelet, earlier revision 1');
  await page.goto(`${taught.page}/revision/2`);
  expect(await page.title()).toContain('Byzantine bracelet, revision 2');
  const paper = async (path: string) =>
    pdfText(await (await page.request.get(`${taught.page}/revision/${path}`)).body());
  for (const sheet of ['sheet.pdf', 'kit/kit.pdf?measure=165']) {
    expect(await paper(`1/${sheet}`)).toContain('Revision 2 is the latest');
    expect(await paper(`2/${sheet}`)).not.toContain('the latest');
  }

  // Whatever is taken along from the check screen is noted, wherever on it that was.
  await signIn(page, app.address, app.db, taught.userId);
  await page.goto(`${taught.bench}/check`);
  const outside = page.getByRole('region', { name: 'Where to paste again' });
  const place = (name: string) => outside.getByRole('listitem').filter({ hasText: name });
  await place('Captions').getByText('revision 1,').waitFor();
  const files = page.getByRole('region', { name: 'Files of the draft' });
  await Promise.all([page.waitForEvent('download'), files.locator('[href$="captions.srt"]').click()]);
  await place('Captions').getByText('revision 2,').waitFor();
  await page.getByRole('button', { name: 'Copy the text' }).click();
  await place('Description, as plain text').getByText('copied').waitFor();

  await page.goto(`${app.address}/bench/w-${taught.workshopId}`);
  await page.getByRole('button', { name: 'Delete…' }).click();
  const asked = page.getByRole('dialog');
  await asked.getByText('1 batch, 5 kits made up').waitFor();
  await asked.getByText(/^\d reports by pupils, \d not answered yet$/).waitFor();
  await look(page, 'delete-lesson');
  await asked.getByRole('button', { name: 'Delete for ever' }).click();
  await page.getByRole('heading', { name: 'No lesson yet' }).waitFor();

  await page.goto(`${taught.page}/kit/1?measure=170`);
  await page.getByText('It was packed by revision 1 of “Byzantine bracelet”.').waitFor();
  await look(page, 'kit-of-a-deleted-lesson');
  for (const path of ['', '/revision/1']) {
    expect((await page.goto(`${taught.page}${path}`))?.status()).toBe(410);
    await page.getByText('This lesson has ended.').waitFor();
    expect(await page.title()).toContain('Byzantine bracelet: this lesson has ended');
  }
  browser.forgive(/410/);
  const embed = await page.request.get(`${taught.page}/embed`);
  expect([embed.status(), await embed.text()]).toEqual([410, expect.stringContaining('has ended')]);
});
