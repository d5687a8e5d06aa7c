/**
 * Debian's Chromium for browser tests. A page that logs an error, breaks the
 * Content-Security-Policy or asks for anything outside the site fails the test.
 */
import {
  type Browser,
  type BrowserContext,
  type BrowserContextOptions,
  chromium,
  type Page,
} from 'playwright-core';
import { expect, TestRunner } from 'vitest';
import { atEndOfEachTest, atEndOfFile } from './at-end.ts';

const PROGRAM = process.env['CHROMIUM_BIN'] ?? '/usr/bin/chromium';
/**
 * Parts of the browser that are switched off. The last two draw the list below
 * the address bar, as two more pages in every window, seen or not; the spare
 * process is started with every window and seldom used. Without the three, a
 * window costs a third of the processor time. The rest is what the driver
 * switches off by itself, since the browser heeds only one such list.
 */
const OFF = [
  'AvoidUnnecessaryBeforeUnloadCheckSync',
  'DestroyProfileOnBrowserClose',
  'HttpsFirstBalancedModeAutoEnable',
  'HttpsUpgrades',
  'LensOverlay',
  'MediaRouter',
  'NetworkTimeServiceQuerying',
  'OptimizationHints',
  'PaintHolding',
  'PreconnectToSearch',
  'ThirdPartyStoragePartitioning',
  'SpareRendererForSitePerProcess',
  'WebUIOmniboxAimPopup',
  'WebUIOmniboxPopup',
];
const FLAGS = [
  `--disable-features=${OFF.join(',')}`,
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

export interface TestBrowser {
  /**
   * A window of its own: no cookies but its own. 1280 × 800 unless told
   * otherwise. One that a test opens is closed with the test, so that nothing
   * plays on behind the next; one that beforeAll opens, with the file.
   */
  open: (options?: BrowserContextOptions) => Promise<Page>;
  /** The same, closed only with the file: for tests that go on where another stopped. */
  openForFile: (options?: BrowserContextOptions) => Promise<Page>;
  /**
   * Takes out what was noted so far and fits a pattern: for tests in which a
   * refusal is the point (the browser logs an answer of 409 as an error).
   */
  forgive: (pattern: RegExp) => void;
}

let shared: Promise<Browser> | undefined;
let complaints: string[] = [];
let ofTest: BrowserContext[] = [];

atEndOfEachTest(async () => {
  const [found, contexts] = [complaints, ofTest];
  complaints = [];
  ofTest = [];
  await Promise.all(contexts.map((context) => context.close()));
  expect(found, 'what pages complained about').toEqual([]);
});

/** One browser for all test files of a process; it ends with the process. */
async function sharedBrowser(): Promise<Browser> {
  const running = await shared?.catch(() => undefined);
  if (running?.isConnected()) return running;
  shared = chromium.launch({ executablePath: PROGRAM, args: FLAGS });
  return shared;
}

/**
 * The browser for a test file. After each test, whatever the pages complained
 * about must be nothing.
 * @param address of the site under test.
 */
export async function openBrowser(address: string): Promise<TestBrowser> {
  const browser = await sharedBrowser();
  const own = new URL(address).origin;
  const ofFile: BrowserContext[] = [];
  atEndOfFile(async () => {
    await Promise.all(ofFile.map((context) => context.close()));
  });

  async function openWatched(options: BrowserContextOptions): Promise<BrowserContext> {
    const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, ...options });
    context.on('request', (request) => {
      const { protocol, origin } = new URL(request.url());
      if (protocol.startsWith('http') && origin !== own) complaints.push(`asked outside: ${request.url()}`);
    });
    context.on('console', (message) => {
      if (message.type() === 'error') complaints.push(`${message.text()} (${message.location().url})`);
    });
    context.on('weberror', (error) => complaints.push(`uncaught: ${error.error().message}`));
    return context;
  }

  return {
    async open(options = {}) {
      const context = await openWatched(options);
      (TestRunner.getCurrentTest() ? ofTest : ofFile).push(context);
      return context.newPage();
    },
    async openForFile(options = {}) {
      const context = await openWatched(options);
      ofFile.push(context);
      return context.newPage();
    },
    forgive(pattern) {
      complaints = complaints.filter((complaint) => !pattern.test(complaint));
    },
  };
}
