/** What rings foretell and what two sizes can do together, at the bench: through workers, and where the browser refuses them. */
import type { BrowserContextOptions, Page } from 'playwright-core';
import { beforeAll, expect, it } from 'vitest';
import { content, emptyContent } from '#lib/lesson/content.ts';
import { ownSequences } from '#lib/lesson/own-sequences.ts';
import { deriveOwnShape } from '#lib/shapes/derive-own-shape.ts';
import { findWeave } from '#lib/weave/weave-library.ts';
import { back, front, lay, ONE_KIND, open, type Weave, weave } from '#lib/weave/weaves/weave.ts';
import { aRingKind } from '#tests/support/a-making.ts';
import { sharedApp, type TestApp } from '#tests/support/app.ts';
import { openBrowser, type TestBrowser } from '#tests/support/chromium.ts';
import { look } from '#tests/support/look.ts';
import { signedInOwner } from '#tests/support/signed-in.ts';

let app: TestApp;
let browser: TestBrowser;

beforeAll(async () => {
  app = await sharedApp();
  browser = await openBrowser(app.address);
}, 300_000);

const REFUSES = `window.Worker = class { constructor() { throw new DOMException('no workers', 'SecurityError'); } };`;

/** The making screen of a lesson that makes half Persian 3-in-1 in 1/4 in and 3/16 in rings of 1 mm wire, or another weave. */
async function openMaking(
  of: string | Weave,
  script = '',
  { says = 'Computed from the shape', ...options }: BrowserContextOptions & { says?: string } = {},
): Promise<Page> {
  const owner = await signedInOwner(app);
  const weave = typeof of === 'string' ? findWeave(of) : of;
  if (!weave) throw new Error(`${of}`);
  const inner: Readonly<Record<string, number>> = { small: 4.7625 };
  const ringKinds = weave.roles.map(({ id, name }) =>
    aRingKind({
      id,
      name,
      innerDiameter: { stated: `${inner[id] ?? 6.35} mm`, mm: inner[id] ?? 6.35 },
      wire: { stated: '1 mm', mm: 1 },
    }),
  );
  const whole = content.parse({
    ...emptyContent('Half Persian', 'en', 'EUR'),
    ...weave.piece,
    weave: weave.name,
    ringKinds,
  });
  await app.db.lesson.update({
    where: { id: owner.lessonId },
    data: { content: JSON.parse(JSON.stringify(whole)) },
  });
  const page = await browser.open(options);
  await page.context().addCookies(owner.cookies.map((cookie) => ({ ...cookie, url: app.address })));
  if (script !== '') await page.addInitScript(script);
  await page.goto(`${owner.bench}/making`);
  await page.getByText(says).waitFor();
  await page
    .locator('summary', { hasText: /^Change/ })
    .first()
    .click();
  return page;
}

const wireField = (page: Page) => page.getByLabel('Wire', { exact: true }).first();

it('foretells at once what other rings do, before the server is asked', async () => {
  const page = await openMaking('half-persian-3-in-1');
  // From here on the server gives no pictures: what is shown comes from the page itself.
  await page.route('**/pictures', () => {});
  await wireField(page).fill('1.5mm');
  await wireField(page).press('Tab');
  // An independent study of the same model: 3.893 at the least; 6.35 / 1.5 = 4.23.
  await page.getByText('aspect ratio 4.23, and the weave exists from 3.89 on').waitFor();
  await wireField(page).fill('1.8mm');
  await wireField(page).press('Tab');
  await page.getByText('rigid rings need an aspect ratio of at least 3.89, and these have 3.53').waitFor();
});

it('two sizes: says for each way of taking turns which wire goes, in a worker', async () => {
  const page = await openMaking('half-persian-3-in-1-two-sizes', '', {
    viewport: { width: 390, height: 844 },
  });
  await page.getByText('Two sizes together: 6.35 mm and 4.76 mm').click();
  await page.getByRole('button', { name: 'Work it out' }).click();
  // Typing goes on meanwhile.
  await page.getByLabel('Weave or technique').fill('half Persian, graded');
  await page.getByText(/^One size a row: with wire up to 1\.1\d mm/).waitFor({ timeout: 60_000 });
  await page.getByText(/^In step: with wire up to 1\.3\d mm/).waitFor();
  await page.getByText(/^Against each other: with wire up to 0\.9\d mm/).waitFor();
  const row = page.getByRole('row', { name: /^1\.4/ });
  expect(await row.getByRole('cell').allTextContents()).toEqual([
    expect.stringMatching(/^no, the wire is \d+\u00a0% too thick$/),
    expect.stringMatching(/^no, the wire is [345]\u00a0% too thick$/),
    expect.stringMatching(/^no, the wire is \d+\u00a0% too thick$/),
  ]);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
});

it('without workers the server foretells, and two sizes say why they cannot be worked out', async () => {
  const page = await openMaking('half-persian-3-in-1-two-sizes', REFUSES);
  await wireField(page).fill('0.9mm');
  const before = await page.getByText('Computed from the shape').textContent();
  await wireField(page).press('Tab');
  await page.waitForFunction(
    (old) =>
      [...document.querySelectorAll('figcaption')].every(({ textContent }) => textContent !== old) &&
      document.body.textContent?.includes('Computed from the shape'),
    before,
  );
  await page.getByText('Two sizes together').click();
  await page.getByRole('button', { name: 'Work it out' }).click();
  await page.getByRole('alert').filter({ hasText: 'does not let the page work in the background' }).waitFor();
});

it('a sequence of her own: its shape is derived while she looks on, and answers like a stored one from then on', async () => {
  const own = weave({
    id: 'own',
    name: 'three back',
    about: '',
    hasHand: true,
    roles: ONE_KIND,
    start: [lay(['ring', '', 1]), open('ring', '', front('', 1)), open('ring', '', front('', 2, 1))],
    repeat: [open('ring', '', [...back('', 3), ...front('', 2, 1)])],
  });
  const page = await openMaking(own, '', { says: 'Its shape in space is being derived' });
  const [key = ''] = ownSequences({ ...emptyContent('', 'en', 'EUR'), ...own.piece }).keys();
  await deriveOwnShape(app, { key }, new AbortController().signal);
  await page.getByText('this shape is derived from who passes through whom').waitFor();
  await page.getByRole('slider', { name: 'Roll the piece about its length' }).waitFor();
  await page.getByText('this shape is derived').scrollIntoViewIfNeeded();
  await look(page, 'own-sequence');
  await page.route('**/pictures', () => {});
  await wireField(page).fill('1.8mm');
  await wireField(page).press('Tab');
  await page.getByText('These rings are tighter than any that a shape was found for').waitFor();
});
