/** Describing the making and reading the kit, in Chromium: by mouse, and by keyboard alone. */
import type { Page } from 'playwright-core';
import { beforeAll, expect, it } from 'vitest';
import { content } from '#lib/lesson/content.ts';
import { byzantineMaking } from '#tests/support/a-making.ts';
import { sharedApp, type TestApp } from '#tests/support/app.ts';
import { axeOn } from '#tests/support/axe.ts';
import { openBrowser, type TestBrowser } from '#tests/support/chromium.ts';
import { type SignedIn, signedInOwner } from '#tests/support/signed-in.ts';

let app: TestApp;
let browser: TestBrowser;

beforeAll(async () => {
  app = await sharedApp();
  browser = await openBrowser(app.address);
}, 300_000);

async function openScreen(owner: SignedIn, screen: 'making' | 'kit', options = {}): Promise<Page> {
  const page = await browser.open(options);
  await page.context().addCookies(owner.cookies.map((cookie) => ({ ...cookie, url: app.address })));
  await page.goto(`${owner.bench}/${screen}`);
  await page.locator('main h2').first().waitFor();
  return page;
}

const saved = (page: Page) => page.locator('[data-testid=save-state][data-state=saved]').waitFor();

const draftOf = async (owner: SignedIn) => {
  const row = await app.db.lesson.findUniqueOrThrow({ where: { id: owner.lessonId } });
  return content.parse(row.content);
};

/** Gives the owner's lesson the worked example whose kits the standards tests check. */
async function withByzantine(owner: SignedIn): Promise<void> {
  const sizes = [
    { id: 's', name: 'small', bodyMm: 150 },
    { id: 'm', name: 'medium', bodyMm: 165 },
    { id: 'l', name: 'large', bodyMm: 180 },
  ];
  const whole = content.parse({ ...(await draftOf(owner)), weave: 'Byzantine', ...byzantineMaking(), sizes });
  await app.db.lesson.update({
    where: { id: owner.lessonId },
    data: { content: JSON.parse(JSON.stringify(whole)) },
  });
}

it('asks which system a gauge is of, takes the answer, and counts what the sequence says', async () => {
  const owner = await signedInOwner(app);
  const page = await openScreen(owner, 'making');
  // Its rings are described after it was chosen: it stays chosen, and open.
  const weave = page.getByLabel('Weave', { exact: true });
  await page.getByText('Start from a weave', { exact: true }).click();
  await weave.selectOption({ label: 'byzantine' });
  const form = page.getByRole('group', { name: 'Add a ring kind' });
  await form.getByLabel('Name').fill('large copper');
  await form.getByLabel('Inner diameter').fill('1/4"');
  await form.getByLabel('Wire').fill('16');
  await form.getByText('means different sizes in different systems').waitFor();
  await form.getByRole('button', { name: '16 SWG (1.6256 mm)' }).click();
  await form.getByRole('button', { name: 'Add ring kind' }).click();
  const card = page
    .getByRole('listitem')
    .filter({ has: page.getByRole('heading', { name: 'large copper' }) });
  // 6.35 / 1.6256 = 3.91
  await card.getByText('3.91').waitFor();
  await page.getByRole('button', { name: 'Start from byzantine' }).waitFor();
  // The list changes, by undo here or by another window: what is being typed stays.
  await form.getByLabel('Name').fill('small copper');
  await page.getByRole('button', { name: 'Undo: add ring kind' }).click();
  await card.waitFor({ state: 'detached' });
  await page.getByRole('button', { name: 'Redo: add ring kind' }).click();
  await card.waitFor();
  expect(await form.getByLabel('Name').inputValue()).toBe('small copper');
  expect(await weave.locator('option:checked').innerText()).toBe('byzantine');

  await page.getByRole('button', { name: 'Add a placement to the repeat unit' }).click();
  await page.getByRole('button', { name: 'Add closed rings' }).click();
  await page.getByLabel('How many', { exact: true }).fill('2');
  await page.getByRole('button', { name: 'Pass one from the front' }).click();
  await page.getByRole('button', { name: 'Pass one from the back' }).click();
  await page.getByRole('button', { name: 'Take this sentence' }).click();
  await page.getByLabel('One repeat adds').fill('10');
  await page.getByRole('button', { name: 'Add a size' }).click();
  await saved(page);

  const draft = await draftOf(owner);
  expect(draft.ringKinds[0]).toMatchObject({
    name: 'large copper',
    innerDiameter: { stated: '1/4 in', mm: 6.35 },
    wire: { stated: '16 SWG', mm: 1.6256 },
  });
  expect(draft.repeat[0]).toMatchObject({
    opened: draft.ringKinds[0]?.id,
    carries: [{ count: 2 }],
    passes: [{ from: 'front' }, { from: 'back' }],
    sentence: expect.stringContaining('large copper'),
  });
  await page.getByRole('link', { name: 'Kit', exact: true }).click();
  // 150 + 20 ease, 10 mm a repeat: 17 repeats of one opened and two closed; 51 and 10 % is 57 rounded up.
  const rings = page.getByRole('region', { name: /^Rings:/ });
  const row = rings.getByRole('row', { name: /large copper/ });
  await row.waitFor();
  expect(await row.getByRole('cell').allTextContents()).toEqual([...['17', '34', '6', '57']]);
  const bought = page.getByRole('region', { name: 'Packs, mass and cost' });
  // 57 rings of 0.46595 g: Pappus, copper 8.96 g/cm3.
  expect(
    await bought
      .getByRole('row', { name: /large copper/ })
      .getByRole('cell')
      .allTextContents(),
  ).toEqual([...['57', '–', '26.56 g', 'no price', '–']]);
  const working = page.locator('[popover]', { hasText: '17 opened = 17 × 1 in the repeat' });
  expect(await working.isVisible()).toBe(false);
  await row.getByRole('button', { name: '17, how it came about' }).focus();
  await page.keyboard.press('Enter');
  await working.waitFor();
  await page.keyboard.press('Escape');
  await working.waitFor({ state: 'hidden' });
});

it('describes a piece of two sizes and three colours from nothing, by keyboard alone', async () => {
  const owner = await signedInOwner(app);
  const page = await openScreen(owner, 'making');
  await tabTo(page, /^Name$/);
  for (const [name, inner, wire, metal, colour] of [
    ['large copper', '1/4 in', '18 SWG', 'copper', 'copper'],
    // The wire stays as it was for the kind before.
    ['small copper', '3/16 in', '', 'copper', 'copper'],
    ['small blue', '4.7625mm', '', 'aluminium 5356', 'deep blue'],
  ] as const) {
    for (const text of [name, inner, wire, metal]) {
      await page.keyboard.type(text);
      await page.keyboard.press('Tab');
    }
    await page.keyboard.type(colour);
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name, exact: true }).waitFor();
    await page.waitForFunction(() => document.activeElement?.id === 'new-ring-name');
  }
  await tabTo(page, /^Weave$/);
  await page.keyboard.type('half Persian 3-in-1, t');
  await tabTo(page, /^Start from half Persian 3-in-1, two sizes$/);
  await page.keyboard.press('Enter');
  await page.getByText('It can be made as told').waitFor();
  await tabTo(page, /^Put a motif in the middle$/);
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'Run 3' }).waitFor();
  for (const _ of ['first', 'second']) {
    await tabTo(page, /^In place of small copper$/);
    await page.keyboard.press('Tab');
  }
  await page.keyboard.press('Shift+Tab');
  await page.keyboard.type('small blue');
  await page.getByText('11 as described, then 3 with small blue, then 10 as described.').waitFor();
  await saved(page);

  const draft = await draftOf(owner);
  const [large, small, blue] = draft.ringKinds;
  expect(draft.ringKinds.map((kind) => [kind.wire.stated, kind.innerDiameter.mm, kind.colour])).toEqual([
    ['18 SWG', 6.35, 'copper'],
    ['18 SWG', 4.7625, 'copper'],
    ['18 SWG', 4.7625, 'deep blue'],
  ]);
  expect(draft.repeat.map((p) => [p.opened, p.carries[0]?.ringKind])).toEqual([
    [small?.id, large?.id],
    [large?.id, small?.id],
  ]);
  expect(draft.runs.map((run) => run.repeats)).toEqual([null, 3, null]);
  expect(draft.runs[1]?.swaps).toEqual([{ ringKind: small?.id, by: blue?.id }]);
  expect(draft.endsAfter).toBe(draft.repeat[0]?.id);

  // A fault is told where it starts, and at the top with the way to it.
  await page.getByRole('button', { name: 'Change repeat 1' }).click();
  await page
    .getByRole('combobox', { name: 'Pass 2' })
    .selectOption({ label: 'second newest of row A (large copper)' });
  const card = page
    .getByRole('listitem')
    .filter({ has: page.getByRole('button', { name: 'Done repeat 1' }) });
  await card.getByText('Passes 1 and 2 name the same ring').waitFor();
  await page.getByRole('status').getByRole('link', { name: 'repeat 1' }).waitFor();
});

it('describes a knotted piece without a ring by keyboard alone, and counts its beads and cord', async () => {
  const owner = await signedInOwner(app);
  const page = await openScreen(owner, 'making');
  await tabTo(page, /^Add a step$/);
  await page.keyboard.press('Enter');
  // The keyboard goes along: a space in the sentence does not press the button again.
  await page.keyboard.type('Slide two beads on and push them up.');
  await tabTo(page, /^One repeat adds/);
  await page.keyboard.type('10');
  await tabTo(page, /^Add a size$/);
  await page.keyboard.press('Enter');
  await page.keyboard.type('medium');
  for (const [add, name, quantity] of [
    ['beads', 'turquoise bead', '2'],
    ['cord or wire', 'waxed cord', '3'],
  ] as const) {
    await tabTo(page, new RegExp(`^Add ${add}$`));
    await page.keyboard.press('Enter');
    await page.keyboard.type(name);
    await page.keyboard.press('Tab');
    await page.keyboard.press('Tab');
    await page.keyboard.type(quantity);
  }
  // From "for the whole piece" to "for each 100 mm".
  await page.keyboard.press('Tab');
  await page.keyboard.press('ArrowDown');
  await saved(page);
  expect((await draftOf(owner)).steps.map((step) => step.sentence)).toEqual([
    'Slide two beads on and push them up.',
  ]);
  await page.getByRole('link', { name: 'Kit', exact: true }).click();
  // By hand: 150 + 20 ease, 10 mm a repeat: 17 repeats of two beads; 3 m for each 100 of 170 mm.
  const bought = page.getByRole('region', { name: 'Packs, mass and cost' });
  await bought.getByRole('row', { name: /turquoise bead 34 pieces/ }).waitFor();
  await bought.getByRole('row', { name: /waxed cord 5.1 m/ }).waitFor();
  expect(await page.locator('main').innerText()).not.toMatch(/\b(rings?|spare|clasp)\b/i);
});

it('keeps a text that it could not read, over a reload', async () => {
  const owner = await signedInOwner(app);
  const page = await openScreen(owner, 'making');
  await page.getByLabel('One repeat adds').fill('about nine');
  await page.getByText('“about nine” is not a number').waitFor();
  await page.reload();
  await page.locator('main h2').first().waitFor();
  expect(await page.getByLabel('One repeat adds').inputValue()).toBe('about nine');
  expect((await draftOf(owner)).sample).toBeNull();
});

it('adds kits for a class, tries any measure, and leads from a fault to where it is mended', async () => {
  const owner = await signedInOwner(app);
  await withByzantine(owner);
  const page = await openScreen(owner, 'kit');
  await page.getByLabel('small, 150 mm').last().fill('2');
  await page.getByLabel('medium, 165 mm').last().fill('3');
  await page.getByLabel('large, 180 mm').last().fill('1');
  await page.getByRole('button', { name: '53.40 EUR, how it came about' }).waitFor();
  // 507 copper are needed; of 400 at hand 107 lack, two packs of 100.
  await page.getByLabel('copper: at hand').fill('400');
  await page.getByText('Counts are kept.').waitFor();
  const lacking = page.getByRole('region', { name: 'Lacking' }).getByRole('row', { name: /copper/ });
  expect(await lacking.getByRole('cell').allTextContents()).toEqual([
    ...['507', '400', '107', '2 × 100, 93 over', '9.60 EUR'],
  ]);
  const sheet = await page.getByRole('link', { name: 'Picking sheet (CSV)' }).getAttribute('href');
  const csv = await (await page.request.get(new URL(sheet ?? '', page.url()).href)).text();
  expect(csv.split('\r\n')[1]).toMatch(/^copper,77,86,95,,507,ring,6 x 100,93,28.80,EUR$/);
  await page.getByRole('radio', { name: 'Another measure' }).check();
  await page.getByLabel('Measure of wrist').fill('6 1/2 in');
  await page.getByText('190 mm').first().waitFor();
  await page.getByLabel('Measure of wrist').fill('5 mm');
  await page.getByText('is too short for this piece').waitFor();

  await app.db.lesson.update({
    where: { id: owner.lessonId },
    data: { content: JSON.parse(JSON.stringify({ ...(await draftOf(owner)), sample: null })), version: 2 },
  });
  await page.reload();
  await page.getByRole('link', { name: 'Enter the measured sample' }).click();
  await page.getByRole('heading', { name: 'Sample and rules' }).waitFor();
});

it('moves, mirrors and takes back by keyboard alone', async () => {
  const owner = await signedInOwner(app);
  await withByzantine(owner);
  const page = await openScreen(owner, 'making');
  const before = await draftOf(owner);
  await tabTo(page, /^Move repeat 1 down$/);
  await page.keyboard.press('Enter');
  await saved(page);
  const moved = await draftOf(owner);
  expect(moved.repeat.map((p) => p.id).slice(0, 2)).toEqual(
    before.repeat
      .map((p) => p.id)
      .slice(0, 2)
      .reverse(),
  );
  // Focus went along with what was moved.
  expect(await focusedName(page)).toBe('Move repeat 2 down');

  await tabTo(page, /^Leaning$/, 'Shift+Tab');
  await page.keyboard.press('End');
  await tabTo(page, /^Mirror everything to the left$/);
  await page.keyboard.press('Enter');
  await saved(page);
  const mirrored = await draftOf(owner);
  expect(mirrored.leaning).toBe('left');
  expect(new Set(mirrored.repeat.flatMap((p) => p.passes.map((pass) => pass.from)))).toEqual(
    new Set(['back']),
  );
  await page.keyboard.press('Control+z');
  await saved(page);
  expect((await draftOf(owner)).leaning).toBe('right');
  expect((await draftOf(owner)).repeat).toEqual(moved.repeat);
});

it.each([1280, 390])('has nothing for axe to find at %i px, and does not scroll sideways', async (width) => {
  const owner = await signedInOwner(app);
  await withByzantine(owner);
  for (const screen of ['making', 'kit'] as const) {
    const page = await openScreen(owner, screen, { viewport: { width, height: 900 } });
    const button = screen === 'making' ? 'Change repeat 1' : '36, how it came about';
    await page.getByRole('button', { name: button }).first().click();
    const found = await axeOn(page).withTags(['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa']).analyze();
    expect(found.violations.map((v) => `${v.id}: ${v.nodes[0]?.html ?? ''}`)).toEqual([]);
    expect(
      await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth),
    ).toBeLessThanOrEqual(0);
  }
});

/** Label, or text, of what holds the keyboard. */
const focusedName = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const at = document.activeElement;
    const label = at instanceof HTMLSelectElement || at instanceof HTMLInputElement ? at.labels?.[0] : null;
    return ((label ?? at)?.textContent ?? '').replace(/[↑↓]/g, '').trim();
  });

async function tabTo(page: Page, name: RegExp, key: 'Tab' | 'Shift+Tab' = 'Tab'): Promise<void> {
  for (let presses = 0; presses < 300; presses++) {
    if (name.test(await focusedName(page))) return;
    await page.keyboard.press(key);
  }
  throw new Error(`The keyboard never reached ${name}`);
}
