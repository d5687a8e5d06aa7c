/** Kits made up and labelled on the kit screen, as a teacher does it. */
import type { Locator, Page } from 'playwright-core';
import { pdfCode, pdfText } from './read-pdf.ts';

export interface SoldKit {
  /** As the kit screen names the batch that it is the only kit of. */
  readonly title: string;
  /** Where the code on its label leads. */
  readonly address: string;
}

export interface ToSell {
  /** As the form labels it: `medium, 165 mm`. */
  readonly size: string;
  /** Day, ISO 8601, and as the screen writes it. */
  readonly madeOn: readonly [iso: string, words: string];
}

export const batchOf = (page: Page, title: string): Locator => page.getByRole('article', { name: title });

/** A batch of one kit, recorded on the screen; its label is downloaded and read as a telephone reads it. */
export async function sellKit(
  page: Page,
  bench: string,
  revision: number,
  { size, madeOn: [day, words] }: ToSell,
): Promise<SoldKit> {
  await page.goto(`${bench}/kit`);
  await page.getByText('Record a batch').click();
  // The computed kits above ask for sizes in the same words.
  await page.getByLabel(size).last().fill('1');
  await page.getByLabel('Made up on').fill(day);
  await page.getByRole('button', { name: 'Record this batch' }).click();
  const title = `1 kit of revision ${revision}, ${words}`;
  const label = await download(page, batchOf(page, title).getByRole('link', { name: 'Labels' }));
  const text = await pdfText(label);
  const address = await pdfCode(label);
  if (!text.includes(`Revision ${revision}`) || !address)
    throw new Error(`the label says neither revision nor address: ${text}`);
  return { title, address };
}

export async function download(page: Page, link: Locator): Promise<Buffer> {
  const href = (await link.getAttribute('href')) ?? '';
  return (await page.request.get(new URL(href, page.url()).href)).body();
}
