import { randomUUID } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { issuePreviewAddress } from '#lib/access/preview-address.ts';
import type { Content } from '#lib/lesson/content.ts';
import { aContent } from '#tests/support/a-content.ts';
import { aTaughtLesson, publishBehindTheScenes } from '#tests/support/a-taught-lesson.ts';
import { sharedApp } from '#tests/support/app.ts';
import { openBrowser } from '#tests/support/chromium.ts';

const adversarial = new URL('../../../shared/suites/adversarial/', import.meta.url);
if (!existsSync(adversarial)) console.warn('skipped: outside cases not present (adversarial strings)');
describe.skipIf(!existsSync(adversarial))('hostile strings', () => {
  const read = (file: string): unknown => JSON.parse(readFileSync(new URL(file, adversarial), 'utf8'));
  const textsIn = (value: unknown): string[] =>
    typeof value === 'string'
      ? [value]
      : value !== null && typeof value === 'object'
        ? Object.values(value).flatMap(textsIn)
        : [];

  const bare = (text: string | null) => (text ?? '').replace(/\s+/g, ' ').trim();
  /** Nothing in a lesson came to life, and nothing of it is lost. */
  async function bearsAll(page: Page, { chapters, steps }: Content): Promise<void> {
    const article = page.locator('main article');
    // Scripts are ours and Next's; pictures are stills, the mark and what we draw of kits and weaves; nothing else may have come to life.
    const alive = await article
      .locator(
        'script, iframe, object, embed, form:not([action*="/lesson/"], [action^="/preview/"]), svg:not([role="img"]), math, base, link, style, meta, foreignObject, svg image, svg use, svg a, animate, set',
      )
      .count();
    expect(alive).toBe(0);
    expect(await page.locator('#transcript').textContent()).toContain('alert(1)');
    const shown = bare(await article.textContent());
    for (const { title } of chapters) expect(shown).toContain(bare(title));
    for (const { sentence } of steps) expect(shown).toContain(bare(sentence));
  }

  test('as titles, sentences, names and cues: nothing fires, with script or without', async () => {
    const app = await sharedApp();
    const browser = await openBrowser(app.address);
    const strings = ['h5sc.json', 'dompurify.json']
      .flatMap((file) => textsIn(read(file)))
      .filter((text) => text.trim() !== '' && text.isWellFormed() && !text.includes('\u0000'));
    expect(strings.length).toBeGreaterThan(350);
    const title = (at: number) => (strings[at % strings.length] ?? '').slice(0, 290);
    const content = aContent({
      title: '</script><img src=x onerror=alert(1)>',
      summary: strings.slice(0, 40).join('\n\n').slice(0, 19_000),
      weave: title(7),
      steps: strings.slice(0, 480).map((sentence, at) => ({
        id: `s${at}`,
        sentence: sentence.slice(0, 5_000),
        atMs: null,
        pictureText: title(at),
      })),
      ringKinds: aContent().ringKinds.map((kind, at) => ({
        ...kind,
        name: title(at * 31),
        colour: title(at * 17),
      })),
      chapters: strings
        .slice(0, 8)
        .map((_, at) => ({ id: `c${at}`, kind: 'opening', title: title(at * 53), startMs: at * 11_000 })),
      corrections: [
        {
          id: 'x',
          kind: 'safety',
          startMs: 0,
          endMs: 90_000,
          wrong: title(3),
          right: title(9),
          affects: title(4),
          kitsChange: true,
          of: null,
          effects: [],
          revision: null,
        },
      ],
    });
    const cues = strings.slice(0, 850).map((text, at) => ({
      id: `q${at}`,
      startMs: at * 100,
      endMs: at * 100 + 90,
      text:
        text
          .replace(/\s*\n\s*/g, '\n')
          .trim()
          .slice(0, 4_000) || '-',
      settings: '',
    }));
    const taught = await aTaughtLesson(app, content, cues);
    await publishBehindTheScenes(app, taught);
    // Whatever its texts are, the page is painted from its first bytes: styles inside, scripts at its end.
    const [head = '', body = ''] = (await (await fetch(taught.page)).text()).split('</head>');
    expect(head).toContain('<style>');
    expect(head.match(/<link rel="stylesheet"(?! [^>]*media="print")|<script[^>]* async/g)).toBeNull();
    expect(body).toMatch(/<script src="[^"]+" async/);
    const token = await issuePreviewAddress(app.db, {
      id: randomUUID(),
      lessonId: taught.lessonId,
      note: title(5),
      now: new Date(),
    });
    const preview = `${app.address}${token}`;
    for (const javaScriptEnabled of [true, false]) {
      const page = await browser.open({ javaScriptEnabled });
      const fired: string[] = [];
      page.on('dialog', (dialog) => {
        fired.push(`dialog ${dialog.message()}`);
        void dialog.dismiss();
      });
      page.on('request', (request) => {
        if (!request.url().startsWith(app.address)) fired.push(`request ${request.url()}`);
      });
      for (const address of [taught.page, preview]) {
        await page.goto(address);
        if (javaScriptEnabled) await page.getByRole('button', { name: 'Play' }).waitFor();
        await bearsAll(page, content);
      }
      await page.goto(`${taught.page}/embed`);
      expect(await page.locator('script, iframe, object, embed, form, svg, math, base, img').count()).toBe(0);
      const said = bare(await page.locator('body').textContent());
      for (const { title: name } of content.chapters) expect(said).toContain(bare(name));
      expect(await page.title()).toContain(content.title);
      await page.goto(taught.page.replace(/\/lesson\/.*/, ''));
      expect(fired).toEqual([]);
    }
    // A withdrawn address tells nothing of what stood there.
    await app.db.previewAddress.deleteMany({ where: { lessonId: taught.lessonId } });
    const withdrawn = await fetch(preview);
    expect(withdrawn.status).toBe(404);
    const left = await withdrawn.text();
    for (const text of [content.title, content.weave, 'alert(1)']) expect(left).not.toContain(text);
  });
});
