/** A public page as it is sent: painted from its first bytes, and saying what it said. */
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { isPublicPage, paintedFirst, sendPaintedFirst, stylesOfBuild } from '#app/http/first-view.ts';

const sheet = (name: string): string =>
  `<link rel="stylesheet" href="/_next/static/chunks/${name}.css" nonce="n" data-precedence="next"/>`;
const script = '<script src="/_next/static/chunks/a.js" async="" nonce="n"></script>';
const preload =
  '<link rel="preload" as="script" fetchPriority="low" nonce="n" href="/_next/static/chunks/b.js"/>';
const poster = '<link rel="preload" as="image" href="/p.webp" fetchPriority="high"/>';
const page = `<html><head>${poster}${sheet('one')}${sheet('two')}${preload}${script}<title>T</title></head><body><main>Text &lt;/head></main><script nonce="n">self.data=[]</script></body></html>`;

test('styles stand in the page in their order, scripts behind its text, and what is seen first before all', () => {
  const sent = paintedFirst(page, (address) => (address.includes('one') ? 'a{b:c}' : 'd{e:f}'));
  const order = [
    poster,
    '<style>a{b:c}</style>',
    '<style>d{e:f}</style>',
    '<main>',
    'self.data',
    script,
    '</body>',
  ];
  const places = order.map((part) => sent.indexOf(part));
  expect(places).toEqual(places.toSorted((one, other) => one - other));
  expect(places[0]).toBeGreaterThan(0);
  expect(sent.match(/rel="stylesheet"/g)).toHaveLength(2);
  expect(sent.match(/media="print"/g)).toHaveLength(2);
  expect(sent).not.toContain('as="script"');
  expect(sent.replace(/<style>.*?<\/style>/g, '').length).toBe(
    page.length - preload.length + 2 * ' media="print"'.length,
  );
});

test('a sheet that is not known is fetched as before, and a page in another form comes back as it was', () => {
  expect(paintedFirst(page, () => null)).toContain(`${sheet('one')}${sheet('two')}`);
  expect(paintedFirst('no page', () => '')).toBe('no page');
});

test('sheets are read from a build; what could end a style element, or points elsewhere, is not taken in', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'first-view-'));
  onTestFinished(() => rm(folder, { recursive: true, force: true }));
  await mkdir(join(folder, 'static/chunks'), { recursive: true });
  const files = { good: 'a{b:url(../media/x.woff2)}', ends: 'a{b:"</style>"}', far: 'a{b:url(../../x)}' };
  for (const [name, text] of Object.entries(files))
    await writeFile(join(folder, `static/chunks/${name}.css`), text);
  const styleOf = stylesOfBuild(folder);
  const read = (name: string) => styleOf(`/_next/static/chunks/${name}.css`);
  expect(read('good')).toBe('a{b:url(/_next/static/media/x.woff2)}');
  expect([read('ends'), read('far'), read('none')]).toEqual([null, null, null]);
});

test('a page is sent whole with its length and the status that it tells; anything else goes through as it is written', async () => {
  const server = createServer((request, response) => {
    sendPaintedFirst(
      response,
      () => 'a{}',
      () => 410,
    );
    response.setHeader('link', '</x.css>; rel=preload; as="style", </p.webp>; rel=preload; as="image"');
    response.setHeader('content-type', request.url === '/page' ? 'text/html; charset=utf-8' : 'video/mp4');
    response.write(page.slice(0, 40));
    response.flushHeaders();
    response.end(page.slice(40));
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  onTestFinished(() => void server.close());
  const address = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  const sent = await fetch(`${address}/page`);
  expect(sent.headers.get('link')).toBe('</p.webp>; rel=preload; as="image"');
  expect(sent.status).toBe(410);
  const text = await sent.text();
  expect(Number(sent.headers.get('content-length'))).toBe(Buffer.byteLength(text));
  expect(text).toContain('<style>a{}</style>');
  const recording = await fetch(`${address}/recording`);
  expect([recording.status, await recording.text()]).toEqual([200, page]);
});

test('pages for pupils are meant, and no others', () => {
  expect(['/workshop/w', '/workshop/w/lesson/l', '/preview/t'].every(isPublicPage)).toBe(true);
  expect(['/bench/w', '/', '/workshops', '/api/workshop/w'].some(isPublicPage)).toBe(false);
});
