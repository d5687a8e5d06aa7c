/** Accounts in a real browser: from the founding address to members with roles. */
import type { Page } from 'playwright-core';
import { beforeAll, expect, test } from 'vitest';
import { issueNewPassword } from '#lib/access/new-password.ts';
import { foundingAddress, startApp, type TestApp } from '#tests/support/app.ts';
import { axeOn } from '#tests/support/axe.ts';
import { openBrowser, type TestBrowser } from '#tests/support/chromium.ts';

const FIRST = 'kettle orchard violin seven';
const SECOND = 'lantern meadow copper eleven';

let app: TestApp;
let browser: TestBrowser;
let ines: Page;

beforeAll(async () => {
  app = await startApp();
  browser = await openBrowser(app.address);
});

/** WCAG 2.2 A and AA as far as axe can tell, and nothing wider than the window, at both widths. */
async function looksRight(page: Page): Promise<void> {
  for (const width of [1280, 390]) {
    await page.setViewportSize({ width, height: 800 });
    const { violations } = await axeOn(page)
      .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22a', 'wcag22aa'])
      .analyze();
    expect(
      violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.target).join(', ')}`),
    ).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBe(0);
  }
  await page.setViewportSize({ width: 1280, height: 800 });
}

/** Goes on by the Tab key until the control with this name has the focus. */
async function tabTo(page: Page, name: string | RegExp): Promise<void> {
  const target = page
    .getByRole('button', { name })
    .or(page.getByRole('link', { name }))
    .or(page.getByLabel(name, { exact: true }))
    .first();
  await target.waitFor();
  for (let presses = 0; presses < 60; presses++) {
    if (await target.evaluate((element) => element === document.activeElement)) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`The Tab key does not reach ${name}.`);
}

async function signIn(page: Page, email: string, password: string): Promise<void> {
  await page.goto(`${app.address}/sign-in`);
  await page.getByLabel('E-mail address').fill(email);
  await page.getByLabel('Password', { exact: true }).fill(password);
  await page.getByRole('button', { name: 'Sign in' }).click();
}

test('the first owner begins a workshop by keyboard alone; faults stand at their fields', async () => {
  ines = await browser.openForFile();
  await ines.goto(await foundingAddress(app));
  await looksRight(ines);
  await tabTo(ines, 'Begin');
  await ines.keyboard.press('Enter');
  await ines.getByText('Enter a name for the workshop').waitFor();
  // The focus is where the first thing is wrong, and what is wrong is told with it.
  const focused = ines.locator(':focus');
  expect(await focused.getAttribute('name')).toBe('workshopName');
  expect(await focused.getAttribute('aria-describedby')).toContain('fault');
  await looksRight(ines);

  await ines.keyboard.type('Rowan Ring Workshop');
  await tabTo(ines, 'Your name');
  await ines.keyboard.type('Ines Holt');
  await tabTo(ines, 'Your e-mail address');
  await ines.keyboard.type('ines@example.org');
  await tabTo(ines, 'Password');
  await ines.keyboard.type('too short');
  await ines.keyboard.press('Enter');
  await ines.getByText('At least 15 characters, please.').waitFor();
  // What was typed stays.
  expect(await ines.getByLabel('Name of your workshop').inputValue()).toBe('Rowan Ring Workshop');
  await ines.keyboard.press('Control+a');
  await ines.keyboard.type(FIRST);
  await ines.keyboard.press('Enter');
  await ines.waitForURL('**/bench/rowan-ring-workshop');
  await looksRight(ines);
  browser.forgive(/422/);
});

test('she signs out and in again by keyboard, back to where she wanted to go', async () => {
  await tabTo(ines, /Ines Holt/);
  await ines.keyboard.press('Enter');
  await ines.waitForURL('**/account');
  await looksRight(ines);
  await tabTo(ines, 'Sign out');
  await ines.keyboard.press('Enter');
  await ines.waitForURL('**/sign-in');
  await looksRight(ines);

  await ines.goto(`${app.address}/bench/rowan-ring-workshop/members`);
  await ines.waitForURL('**/sign-in?back=*');
  await tabTo(ines, 'E-mail address');
  await ines.keyboard.type('ines@example.org');
  await tabTo(ines, 'Password');
  await ines.keyboard.type('not the right password');
  await ines.keyboard.press('Enter');
  await ines.getByRole('alert').filter({ hasText: 'do not belong together' }).waitFor();
  await tabTo(ines, 'Password');
  await ines.keyboard.press('Control+a');
  await ines.keyboard.type(FIRST);
  await ines.keyboard.press('Enter');
  await ines.waitForURL('**/bench/rowan-ring-workshop/members');
  browser.forgive(/401/);
});

test('a change of password ends what was signed in elsewhere', async () => {
  const phone = await browser.open({ viewport: { width: 390, height: 800 } });
  await signIn(phone, 'ines@example.org', FIRST);
  await phone.waitForURL('**/bench/rowan-ring-workshop');

  await ines.goto(`${app.address}/account`);
  await ines.getByLabel('Present password', { exact: true }).fill(FIRST);
  await ines.getByLabel('New password', { exact: true }).fill(SECOND);
  await ines.getByRole('button', { name: 'Change password' }).click();
  await ines.getByText('Changed. Wherever else').waitFor();
  await ines.goto(`${app.address}/bench/rowan-ring-workshop`);
  await ines.getByRole('heading', { name: 'Lessons' }).waitFor();

  await phone.goto(`${app.address}/bench/rowan-ring-workshop`);
  await phone.waitForURL('**/sign-in?back=*');
  await signIn(phone, 'ines@example.org', FIRST);
  await phone.getByRole('alert').filter({ hasText: 'do not belong together' }).waitFor();
  browser.forgive(/401/);
});

test('an editor and a viewer join by addresses that work once; the viewer changes nothing', async () => {
  const addresses: Record<string, string> = {};
  for (const role of ['Editor', 'Viewer']) {
    await ines.goto(`${app.address}/bench/rowan-ring-workshop/members`);
    await ines.getByLabel('For whom').fill(role);
    await ines.getByRole('radio', { name: new RegExp(role) }).check();
    await ines.getByRole('button', { name: 'Make an address' }).click();
    addresses[role] = await ines.getByLabel(/shown only this once/).inputValue();
    await ines.getByText(`as ${role.toLowerCase()}, until`).waitFor();
  }
  await looksRight(ines);

  const joined: Record<string, Page> = {};
  for (const [role, address] of Object.entries(addresses)) {
    const page = await browser.open();
    joined[role] = page;
    await page.goto(address);
    await looksRight(page);
    await page.getByLabel('Your name').fill(`${role} Person`);
    await page.getByLabel('Your e-mail address').fill(`${role.toLowerCase()}@example.org`);
    await page.getByLabel('Password', { exact: true }).fill(FIRST);
    await page.getByRole('button', { name: 'Make my account and join' }).click();
    await page.waitForURL('**/bench/rowan-ring-workshop');
    await page.goto(address);
    await page.getByRole('heading', { name: 'This address is no longer open' }).waitFor();
  }

  const { Editor: editor, Viewer: viewer } = joined as { Editor: Page; Viewer: Page };
  await editor.goto(`${app.address}/bench/rowan-ring-workshop`);
  await editor.getByLabel('Title of a new lesson').fill('Two-colour box chain');
  await editor.getByRole('button', { name: 'Begin the lesson' }).click();
  await editor.waitForURL('**/bring-in');

  await viewer.goto(`${app.address}/bench/rowan-ring-workshop`);
  await viewer.getByRole('link', { name: 'Two-colour box chain' }).waitFor();
  expect(await viewer.getByRole('button', { name: /Begin|Delete/ }).count()).toBe(0);
  expect(await viewer.getByRole('link', { name: 'Members' }).count()).toBe(0);
  await viewer.goto(`${app.address}/bench/rowan-ring-workshop/members`);
  await viewer.getByRole('heading', { name: 'Not with your role' }).waitFor();
  await looksRight(viewer);
  // And past the screens: the route itself refuses.
  const refused = await viewer.evaluate(async () => {
    const answer = await fetch('/api/workshops/rowan-ring-workshop/lessons', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ title: 'Not mine to begin' }),
    });
    return answer.status;
  });
  expect(refused).toBe(403);
  browser.forgive(/403/);
});

test('the last owner cannot take herself out; a lesson goes only after a question, by keyboard', async () => {
  await ines.goto(`${app.address}/bench/rowan-ring-workshop/members`);
  await ines.getByRole('form', { name: 'Role of Ines Holt' }).getByRole('combobox').selectOption('viewer');
  await ines
    .getByRole('form', { name: 'Role of Ines Holt' })
    .getByRole('button', { name: 'Save role' })
    .click();
  await ines.getByRole('alert').filter({ hasText: 'A workshop needs an owner' }).waitFor();
  browser.forgive(/422/);

  await ines.goto(`${app.address}/bench/rowan-ring-workshop/settings`);
  await looksRight(ines);
  await ines.goto(`${app.address}/bench?all`);
  await looksRight(ines);

  await ines.goto(`${app.address}/bench/rowan-ring-workshop`);
  await tabTo(ines, /Delete… Two-colour/);
  await ines.keyboard.press('Enter');
  await ines.getByRole('dialog').waitFor();
  await looksRight(ines);
  await ines.keyboard.press('Escape');
  await ines.getByRole('link', { name: 'Two-colour box chain' }).waitFor();
  await tabTo(ines, /Delete… Two-colour/);
  await ines.keyboard.press('Enter');
  await tabTo(ines, 'Delete for ever');
  await ines.keyboard.press('Enter');
  await ines.getByRole('heading', { name: 'No lesson yet' }).waitFor();
});

test('who forgot her password chooses a new one by an address that works once', async () => {
  const issued = await issueNewPassword(app.db, 'ines@example.org', new Date());
  const page = await browser.open();
  await page.goto(`${app.address}${issued?.path}`);
  await looksRight(page);
  await tabTo(page, 'New password');
  await page.keyboard.type('harbour pepper slate thirteen');
  await page.keyboard.press('Enter');
  await page.waitForURL('**/bench/rowan-ring-workshop');
  await ines.reload();
  await ines.waitForURL('**/sign-in?back=*');
  await page.goto(`${app.address}${issued?.path}`);
  await page.getByRole('heading', { name: 'This address is no longer open' }).waitFor();
  await looksRight(page);
});
