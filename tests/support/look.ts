/** Looks at a screen as a test can: by axe, and at both widths. SHOTS=folder keeps pictures. */
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { axeOn } from './axe.ts';

const shots = process.env['SHOTS'];
const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/** What axe finds on a screen, and whether it can be pushed sideways, at both widths. */
export async function look(page: Page, name: string): Promise<void> {
  for (const width of [390, 1280]) {
    await page.setViewportSize({ width, height: 800 });
    const sideways = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    expect(sideways, `${name} at ${width} px scrolls sideways`).toBeLessThanOrEqual(0);
    if (shots) await page.screenshot({ path: join(shots, `${name}-${width}.png`), fullPage: true });
  }
  const { violations } = await axeOn(page).withTags(RULES).analyze();
  expect(violations.map((one) => `${one.id}: ${one.nodes.map(({ html }) => html).join(' ')}`)).toEqual([]);
}
