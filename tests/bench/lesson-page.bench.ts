/**
 * What a lesson page costs a pupil's telephone: the script that it loads, and
 * when its largest part is painted. The demo lesson, its poster as large as
 * a poster is, through a server in front that compresses (gzip, level 6), in
 * Chromium slowed down as telephones are slow: processor to a quarter, 150 ms
 * a round trip, 1.6 Mbit/s down, 750 kbit/s up (the mobile profile of
 * Lighthouse; from memory). Beside it, in the same run, the same page as plain
 * HTML: no script, no styles, no fonts. Nothing is asserted about times.
 *
 * Ours and the framework's script are told apart by what the page of a
 * workshop, which holds no part of ours that runs in a browser, loads too:
 * that is the framework's. The rest is ours, libraries that we take in among it.
 * `node tests/bench/lesson-page.bench.ts`, after a build.
 */
import { randomUUID } from 'node:crypto';
import { createServer, request } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Browser } from 'playwright-core';
import { noteRevisionFiles } from '#lib/data/revision-files.ts';
import { freezeRevision } from '#lib/lesson/revision.ts';
import { makeRevisionFile } from '#lib/recording/make-revision-file.ts';
import { openLocalDisk } from '#lib/storage/local-disk.ts';
import { recordingKey } from '#lib/storage/storage-key.ts';
import { aLesson } from '#tests/support/a-lesson.ts';
import { makeWithFfmpeg } from '#tests/support/clips.ts';
import { browserForBench, programForBench } from '#tests/support/program-for-bench.ts';
import { readDemo } from '../../prisma/demo/read-demo.ts';

const LOADS = 7;
const MOST_OWN_KB = 60;

const front = createServer();
await new Promise<void>((done) => front.listen(0, '127.0.0.1', done));
const address = `http://127.0.0.1:${(front.address() as AddressInfo).port}`;
const program = await programForBench(address);
const { db, files, folder } = program;
front.on('request', (from, to) => {
  const plain = from.url?.includes('plain=yes') ?? false;
  const headers = { ...from.headers, host: new URL(address).host };
  request({ port: program.port, path: from.url, method: from.method, headers }, (answer) => {
    const type = answer.headers['content-type'] ?? '';
    const isText = /^(text|application\/(javascript|json))|svg/.test(type);
    if (!isText || answer.statusCode !== 200) {
      to.writeHead(answer.statusCode ?? 502, answer.headers);
      answer.pipe(to);
      return;
    }
    const parts: Buffer[] = [];
    answer.on('data', (part: Buffer) => parts.push(part));
    answer.on('end', () => {
      const body = Buffer.concat(parts);
      const sent = gzipSync(
        plain && type.startsWith('text/html') ? Buffer.from(asPlain(body.toString())) : body,
      );
      const { 'transfer-encoding': _, ...rest } = answer.headers;
      to.writeHead(200, { ...rest, 'content-encoding': 'gzip', 'content-length': sent.length });
      to.end(sent);
    });
  })
    .on('error', () => to.destroy())
    .end();
});

/** The page's words and pictures, and nothing else. */
const asPlain = (html: string): string =>
  html
    .replace(/<script\b[^>]*>[\s\S]*?<\/script>/g, '')
    .replace(/<link\b[^>]*(stylesheet|preload)[^>]*>/g, '');

/** The demo lesson as it stands after its correction; its pictures are frames of its recording. */
async function publishDemo(): Promise<string> {
  const demo = readDemo();
  const rows = await aLesson(db, { content: demo.first });
  const id = randomUUID();
  const disk = openLocalDisk(files);
  const keys = { media: recordingKey(id, 'playable.mp4'), poster: recordingKey(id, 'poster.jpg') };
  await makeWithFfmpeg('-i', demo.recordingPath, '-c', 'copy', join(folder, 'clip.mp4'));
  await makeWithFfmpeg(
    '-ss',
    '100',
    '-i',
    demo.recordingPath,
    '-frames:v',
    '1',
    '-q:v',
    '3',
    join(folder, 'p.jpg'),
  );
  await disk.adopt(keys.media, join(folder, 'clip.mp4'));
  await disk.adopt(keys.poster, join(folder, 'p.jpg'));
  const content = demo.corrected(demo.first);
  const moments = [...content.start, ...content.repeat, ...content.finishing, ...content.steps];
  const document = freezeRevision({
    number: 1,
    publishedAt: new Date('2026-03-01T10:00:00Z'),
    workshop: { name: 'Kettle Row Rings', slug: `w-${rows.workshopId}` },
    content,
    cues: demo.said.map((text, at) => ({
      id: `c${at}`,
      startMs: at * 5_000,
      endMs: at * 5_000 + 4_900,
      text,
      settings: '',
    })),
    recording: {
      ...{ id, durationMs: 240_000, hasVideo: true, hasAudio: true, width: 1280, height: 720 },
      ...{ mediaType: 'video/mp4', mediaKey: keys.media, posterKey: keys.poster },
    },
    stillKeys: new Map(moments.flatMap(({ atMs }) => (atMs === null ? [] : [[atMs, keys.poster] as const]))),
    terms: [],
    published: [],
  });
  const revisionId = randomUUID();
  await db.revision.create({
    data: {
      ...{ id: revisionId, lessonId: rows.lessonId, number: 1, document, publishedById: rows.userId },
      publishedAt: new Date(document.publishedAt),
    },
  });
  // What the worker does after a publication, as far as the page is painted from it.
  const file = { revisionId, name: 'poster.webp' } as const;
  await noteRevisionFiles(db, revisionId, [file.name]);
  await makeRevisionFile({ db, storage: disk, ffmpeg: null, filesFolder: files, newId: randomUUID }, file, {
    signal: AbortSignal.timeout(60_000),
    isLast: true,
  });
  return `${address}/workshop/w-${rows.workshopId}/lesson/l-${rows.lessonId}`;
}

/** Scripts that a page loads, with their compressed size, bytes. */
async function scriptsOf(browser: Browser, page: string): Promise<ReadonlyMap<string, number>> {
  const window = await browser.newPage();
  const sizes = new Map<string, number>();
  const read: Promise<void>[] = [];
  window.on('response', (response) => {
    if (response.request().resourceType() !== 'script') return;
    read.push(response.body().then((body) => void sizes.set(response.url(), gzipSync(body).length)));
  });
  await window.goto(page, { waitUntil: 'networkidle' });
  await Promise.all(read);
  await window.close();
  return sizes;
}

interface Painted {
  readonly ms: number;
  /** What was painted: an element's name, with the file of its picture. */
  readonly what: string;
}

async function largestPaint(browser: Browser, page: string): Promise<Painted> {
  const context = await browser.newContext({
    ...{ viewport: { width: 390, height: 844 }, deviceScaleFactor: 2, isMobile: true },
  });
  const window = await context.newPage();
  const session = await context.newCDPSession(window);
  await session.send('Network.enable');
  await session.send('Network.emulateNetworkConditions', {
    ...{ offline: false, latency: 150 },
    ...{ downloadThroughput: 1_600_000 / 8, uploadThroughput: 750_000 / 8 },
  });
  await session.send('Emulation.setCPUThrottlingRate', { rate: 4 });
  await window.addInitScript(() => {
    const seen: Painted[] = [];
    Object.assign(globalThis, { seen });
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries() as (PerformanceEntry & { element?: Element; url?: string })[])
        seen.push({
          ms: entry.startTime,
          what: `${entry.element?.tagName.toLowerCase() ?? '?'} ${entry.url?.startsWith('data:') ? 'inside the page' : (entry.url?.split('/').at(-1) ?? '')}`.trim(),
        });
    }).observe({ type: 'largest-contentful-paint', buffered: true });
  });
  // Not until its end: the recording goes on coming for seconds.
  await window.goto(page, { waitUntil: 'domcontentloaded' });
  // The largest part may be painted once more when fonts and script are there.
  await window.waitForTimeout(2_000);
  const last = await window.evaluate(() => (globalThis as unknown as { seen: Painted[] }).seen.at(-1));
  await context.close();
  if (!last) throw new Error('nothing was painted');
  return last;
}

const median = (numbers: readonly number[]): number =>
  numbers.toSorted((one, other) => one - other)[Math.floor(numbers.length / 2)] ?? Number.NaN;
const kB = (bytes: number): string => `${(bytes / 1024).toFixed(1)} kB`;

const browser = await browserForBench();
try {
  const page = await publishDemo();
  const framework = await scriptsOf(browser, page.replace(/\/lesson\/.*/, ''));
  const scripts = await scriptsOf(browser, page);
  const sum = (wanted: (url: string) => boolean): number =>
    [...scripts].filter(([url]) => wanted(url)).reduce((total, [, size]) => total + size, 0);
  const own = sum((url) => !framework.has(url));
  console.log(
    `Script, compressed: ours ${kB(own)} (at most ${MOST_OWN_KB}), the framework's ${kB(sum((url) => framework.has(url)))}`,
  );
  const painted: Painted[] = [];
  const plain: Painted[] = [];
  for (let load = 0; load < LOADS; load++) {
    painted.push(await largestPaint(browser, page));
    plain.push(await largestPaint(browser, `${page}?plain=yes`));
  }
  const [ours, theirs] = [painted, plain].map((all) => median(all.map(({ ms }) => ms)));
  console.log(
    `Largest paint on a slow telephone, median of ${LOADS}: ${ours?.toFixed(0)} ms (${painted.at(-1)?.what}), as plain HTML ${theirs?.toFixed(0)} ms (${plain.at(-1)?.what}), ${((ours ?? 0) / (theirs ?? 1)).toFixed(2)} times`,
  );
  if (own > MOST_OWN_KB * 1024) process.exitCode = 1;
} finally {
  await browser.close();
  front.close();
  front.closeAllConnections();
  await program.stop();
}
