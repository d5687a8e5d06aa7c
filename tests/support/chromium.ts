/**
 * Debian's Chromium for browser tests. A page that logs an error, breaks the
 * Content-Security-Policy or asks for anything outside the site fails the test.
 */
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { afterAll, afterEach, expect } from 'vitest';

const PROGRAM = process.env['CHROMIUM_BIN'] ?? '/usr/bin/chromium';
const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

export interface TestBrowser {
  /** A window of its own: no cookies but its own. 1280 × 800 unless told otherwise. */
  open: (options?: BrowserContextOptions) => Promise<Page>;
  /**
   * Takes out what was noted so far and fits a pattern: for tests in which a
   * refusal is the point (the browser logs an answer of 409 as an error).
   */
  forgive: (pattern: RegExp) => void;
}

// Registered when a test file loads this one: within a hook it would be too late.
let complaints: string[] = [];
const toEnd: (() => Promise<void>)[] = [];
afterEach(() => {
  const found = complaints;
  complaints = [];
  expect(found, 'what pages complained about').toEqual([]);
});
afterAll(async () => {
  for (const end of toEnd) await end();
});

/**
 * Opens the browser for a test file; closed when the file is done. After each
 * test, whatever the pages complained about must be nothing.
 * @param address of the site under test.
 */
export async function openBrowser(address: string): Promise<TestBrowser> {
  const browser: Browser = await chromium.launch({ executablePath: PROGRAM, args: FLAGS });
  const own = new URL(address).origin;

  toEnd.push(() => browser.close());

  return {
    async open(options = {}) {
      const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, ...options });
      context.on('request', (request) => {
        const { protocol, origin } = new URL(request.url());
        if (protocol.startsWith('http') && origin !== own) complaints.push(`asked outside: ${request.url()}`);
      });
      context.on('console', (message) => {
        if (message.type() === 'error') complaints.push(`${message.text()} (${message.location().url})`);
      });
      context.on('weberror', (error) => complaints.push(`uncaught: ${error.error().message}`));
      return context.newPage();
    },
    forgive(pattern) {
      complaints = complaints.filter((complaint) => !pattern.test(complaint));
    },
  };
}
