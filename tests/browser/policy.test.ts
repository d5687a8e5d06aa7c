import { beforeAll, describe, expect, it } from 'vitest';
import { sharedApp, type TestApp } from '#tests/support/app.ts';
import { openBrowser, type TestBrowser } from '#tests/support/chromium.ts';

let app: TestApp;
let browser: TestBrowser;

beforeAll(async () => {
  app = await sharedApp();
  browser = await openBrowser(app.address);
});

describe('the Content-Security-Policy', () => {
  it('has a new nonce in each answer, and every script carries it', async () => {
    const nonces = new Set<string>();
    for (const path of ['/', '/', '/no-such-page']) {
      const answer = await fetch(app.address + path);
      const nonce = /'nonce-([^']+)'/.exec(answer.headers.get('content-security-policy') ?? '')?.[1] ?? '';
      expect(nonce).not.toBe('');
      nonces.add(nonce);
      const scripts = (await answer.text()).match(/<script[^>]*>/g) ?? [];
      expect(scripts.length).toBeGreaterThan(0);
      for (const script of scripts) expect(script).toContain(`nonce="${nonce}"`);
    }
    expect(nonces.size).toBe(3);
  });

  it('lets our own pages come alive, and nothing that was slipped in', async () => {
    const page = await browser.open();
    await page.goto(app.address);
    // React leaves its mark on what it has taken over.
    await page.waitForFunction(() => Object.keys(document).some((key) => key.startsWith('__reactContainer')));
    await page.evaluate(() => {
      const script = document.createElement('script');
      script.textContent = 'window.slippedIn = true';
      document.body.append(script);
    });
    expect(await page.evaluate(() => 'slippedIn' in window)).toBe(false);
    browser.forgive(/Content Security Policy/);
  });

  it('takes no nonce and no policy from the client', async () => {
    const answer = await fetch(app.address, {
      headers: { 'content-security-policy': "script-src 'nonce-chosenbyclient'" },
    });
    expect(await answer.text()).not.toContain('chosenbyclient');
  });
});

it('answers with the other headers that forbid', async () => {
  const { headers } = await fetch(app.address);
  expect(headers.get('x-content-type-options')).toBe('nosniff');
  expect(headers.get('x-frame-options')).toBe('SAMEORIGIN');
  expect(headers.get('referrer-policy')).toBe('strict-origin-when-cross-origin');
});

it('turns a large body away before any route', async () => {
  const answer = await fetch(`${app.address}/api/auth/sign-in`, {
    method: 'POST',
    body: 'x'.repeat(5_000_000),
  });
  expect(answer.status).toBe(413);
  expect(await answer.json()).toEqual({ fault: { code: 'body-too-large', limitBytes: 4_194_304 } });
});
