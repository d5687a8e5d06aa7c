/**
 * Every text file of a revision with payloads that nobody here wrote (HTML and
 * SVG that fires scripts, hostile file names; beside the repository) in every
 * field: each is read back by a reader of its format, and each payload must
 * come out whole, as the text that it is. And what is made twice is the same.
 */
import { Parser as MarkdownParser } from 'commonmark';
import { decodeHTML } from 'entities';
import RssParser from 'rss-parser';
import { describe, expect, test } from 'vitest';
import { attachment } from '#app/http/attachment.ts';
import { embedPage } from '#app/lesson-page/embed-page.ts';
import { kitSheet } from '#app/paper/kit-sheet.ts';
import { lessonSheet } from '#app/paper/lesson-sheet.ts';
import { makePdf, type Sheet } from '#app/paper/make-pdf.ts';
import { signs } from '#app/paper/signs.ts';
import { readChapters } from '#lib/chapters/chapters-read.ts';
import { DEFAULT_SETUP } from '#lib/description/description-setup.ts';
import { composeDescription } from '#lib/description/description-text.ts';
import { atomFeed } from '#lib/feeds/atom-feed.ts';
import { podcastFeed } from '#lib/feeds/podcast-feed.ts';
import { kitCsv } from '#lib/kit/kit-csv.ts';
import { kitFor } from '#lib/kit/kit-list.ts';
import { oEmbed } from '#lib/lesson/oembed.ts';
import { plainLine } from '#lib/lesson/plain-line.ts';
import { freezeRevision, type Revision } from '#lib/lesson/revision.ts';
import { writeStepAnnotations } from '#lib/lesson/step-annotations.ts';
import { jsonForScript, structuredData } from '#lib/lesson/structured-data.ts';
import { TEXT_FILES, type TextFile, writeTextFile } from '#lib/lesson/text-files.ts';
import type { Cue } from '#lib/transcript/cue.ts';
import { readTranscript } from '#lib/transcript/read-transcript.ts';
import { tidyCueText } from '#lib/transcript/tidy-text.ts';
import { shownInTurn } from '#lib/transcript/timed-text-track.ts';
import { aContent } from '#tests/support/a-content.ts';
import { haveOutsideCases, outsideJson } from '#tests/support/outside-cases.ts';
import { pdfPages, pdfText } from '#tests/support/read-pdf.ts';
import { readWithImsc } from '#tests/support/ttml-reader.ts';
import { readWithW3cParser } from '#tests/support/webvtt-readers.ts';

/** A text without what no XML document can hold (XML 1.0, section 2.2). */
const xmlSafe = (text: string): string =>
  text.replace(/[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu, '');

const present = haveOutsideCases('adversarial');
const textsIn = (value: unknown): string[] =>
  typeof value === 'string'
    ? [value]
    : value !== null && typeof value === 'object'
      ? Object.values(value).flatMap(textsIn)
      : [];
const payloads = present
  ? ['h5sc.json', 'dompurify.json', 'filenames.json']
      .flatMap((file) => textsIn(outsideJson(`adversarial/${file}`)))
      .filter((text) => text.trim() !== '' && text.isWellFormed() && !text.includes('\0'))
  : ['<b>'];
const line = (at: number): string =>
  plainLine(payloads[at % payloads.length] ?? '')
    .slice(0, 290)
    .trim();
const SECONDS = payloads.length;

const cues: readonly Cue[] = payloads.map((text, at) => ({
  id: `q${String(at).padStart(5, '0')}`,
  startMs: at * 1_000,
  endMs: at * 1_000 + 900,
  text: tidyCueText(text).slice(0, 4_900),
  settings: '',
}));
const content = aContent({
  title: line(1),
  summary: payloads.slice(0, 30).join('\n\n').slice(0, 19_000),
  weave: line(2),
  licence: line(3),
  chapters: payloads
    .slice(0, 400)
    .map((_, at) => ({ id: `c${at}`, kind: 'opening' as const, title: line(at), startMs: at * 1_000 })),
  steps: payloads.slice(0, 400).map((sentence, at) => ({
    id: `s${at}`,
    sentence: sentence.slice(0, 5_000),
    atMs: at * 1_000,
    pictureText: line(at),
  })),
  ringKinds: aContent().ringKinds.map((kind, at) => ({
    ...kind,
    name: line(at + 40),
    colour: line(at + 50),
  })),
  links: [{ id: 'l', label: line(60), address: 'https://bench.example/x' }],
  corrections: payloads.slice(0, 200).map((wrong, at) => ({
    id: `k${at}`,
    kind: 'safety' as const,
    startMs: at * 1_000,
    endMs: at * 1_000 + 500,
    wrong,
    right: line(at + 1),
    affects: line(at + 2),
    kitsChange: false,
    of: null,
    effects: [],
    revision: 1,
  })),
});
const revisionOf = (number: number, day: string): Revision =>
  freezeRevision({
    number,
    publishedAt: new Date(day),
    workshop: { name: line(9), slug: 'kettle-row' },
    content,
    cues,
    recording: {
      id: 'r',
      durationMs: SECONDS * 1_000,
      hasVideo: true,
      hasAudio: true,
      width: 640,
      height: 360,
      mediaType: 'video/mp4',
      mediaKey: 'recordings/r/playable.mp4',
      posterKey: 'recordings/r/poster.jpg',
    },
    stillKeys: new Map(),
    published: [],
    terms: [],
  });
const revision = revisionOf(1, '2026-03-01T10:00:00Z');
const file = (name: TextFile, of = revision): string =>
  writeTextFile(name, { content: of.content, cues: of.cues, durationMs: SECONDS * 1_000 });

const at = 'https://bench.example/workshop/k/lesson/b';
const annotations = (of: Revision) =>
  writeStepAnnotations(of, {
    file: `${at}/steps.jsonld`,
    page: at,
    recording: `${at}/r`,
    still: (id) => `${at}/${id}`,
  });
const data = (of: Revision) =>
  jsonForScript(
    structuredData(
      of,
      {
        page: at,
        shelf: at,
        recording: at,
        captions: at,
        poster: at,
        still: () => at,
        pageAt: (ms) => `${at}?t=${ms}`,
      },
      '2026-03-01T10:00:00.000Z',
    ),
  );
const description = (format: 'text' | 'markdown' | 'html') =>
  composeDescription({
    content,
    setup: DEFAULT_SETUP,
    lessonAddress: at,
    durationMs: SECONDS * 1_000,
    format,
  }).text;
const embed = (of: Revision) =>
  embedPage(of, { lesson: at, recording: '/r', poster: '/p', captions: '/c', chapters: '/ch' }, null);

const said = cues.map(({ text }) => text);
const chapterTitles = content.chapters.map(({ title }) => title);
const textsOf = (name: TextFile): string[] => {
  const read = readTranscript(new TextEncoder().encode(file(name)), { recordingMs: null, newId: () => 'id' });
  if (!read.ok || read.value.kind !== 'read') throw new Error(`${name} cannot be read`);
  return read.value.cues.map(({ text }) => text);
};

describe.skipIf(!present)('payloads in every field', () => {
  test('there are hundreds of them', () => expect(payloads.length).toBeGreaterThan(400));

  test('captions.vtt, by the W3C’s parser', () => {
    const { cues: read, errors } = readWithW3cParser(file('captions.vtt'));
    expect(errors).toEqual([]);
    expect(read.map(({ text }) => decodeHTML(text))).toEqual(said);
  });

  test('captions.ttml, by npm imsc', () => {
    const { moments, errors } = readWithImsc(file('captions.ttml'));
    expect(errors).toEqual([]);
    const shown = moments.map(({ text }) => text.trim()).filter((text) => text !== '');
    // What no XML document can hold is a mark there (U+FFFD).
    const bare = (text: string) => xmlSafe(text).replaceAll('\uFFFD', '').replaceAll(/\s+/g, ' ').trim();
    expect(shown.map(bare)).toEqual(said.map(bare).filter((text) => text !== ''));
  });

  test('captions.srt, by our reader', () => expect(textsOf('captions.srt')).toEqual(said));

  test('captions inside an MP4', () => {
    const shown = shownInTurn(cues).map(({ text }) => text);
    expect(shown.filter((text) => text !== '')).toEqual(said);
  });

  test('transcript.txt has every word in order', () => {
    const text = file('transcript.txt');
    let from = 0;
    for (const words of said.flatMap((one) => one.split('\n'))) {
      const found = text.indexOf(words, from);
      expect(found, words).toBeGreaterThanOrEqual(0);
      from = found;
    }
  });

  test('chapters.vtt, by the W3C’s parser', () => {
    const { cues: read, errors } = readWithW3cParser(file('chapters.vtt'), 'chapters');
    expect(errors).toEqual([]);
    expect(read.map(({ text }) => decodeHTML(text))).toEqual(chapterTitles);
  });

  test.each(['chapters.json', 'chapters.ffmetadata'] as const)('%s', (name) => {
    const { chapters } = readChapters(file(name), () => 'id');
    expect(chapters.map(({ title }) => title)).toEqual(chapterTitles);
  });

  test('annotations hold every sentence', () => {
    const { first } = JSON.parse(annotations(revision)) as {
      first: { items: { body: { value: string }[] }[] };
    };
    const sentences = new Set(first.items.map(({ body }) => body[0]?.value));
    for (const { sentence } of content.steps) expect(sentences).toContain(sentence);
  });

  test('structured data closes no element and holds every field', () => {
    const text = data(revision);
    expect(text).not.toContain('<');
    const held = new Set(textsIn(JSON.parse(text)));
    for (const { sentence } of content.steps) expect(held).toContain(sentence);
    for (const title of [...chapterTitles, content.title, ...content.ringKinds.map(({ name }) => name)])
      expect(held).toContain(title);
    for (const { wrong, right } of content.corrections)
      expect([...held].some((one) => one.startsWith(`${wrong} → ${right}`))).toBe(true);
  });

  test('the player for other sites holds its own elements and no others', () => {
    const names = new Set([...embed(revision).matchAll(/<\/?([a-z!][a-z0-9]*)/gi)].map(([, name]) => name));
    expect([...names].toSorted()).toEqual(
      'a body details footer head html li link main meta ol p strong style summary time title track video'
        .split(' ')
        .concat('!doctype')
        .toSorted(),
    );
    expect(decodeHTML(embed(revision))).toContain(content.title);
  });

  test('the frame of an oEmbed answer is one element', () => {
    const places = { site: at, shelf: at, embed: at, poster: null };
    const { html, title } = oEmbed(revision, places, { width: null, height: null });
    expect(String(html).match(/[<>]/g)).toHaveLength(4);
    expect(title).toBe(content.title);
  });

  test('the description text, in each format', () => {
    for (const { title } of content.chapters.slice(0, 50))
      expect(description('text')).toContain(plainLine(title));
    expect(description('html').match(/<(?!\/?(?:p|h2|ul|li|a|br)[\s>])/g)).toBeNull();
    const walker = new MarkdownParser().parse(description('markdown')).walker();
    const kinds = new Set<string>();
    for (let step = walker.next(); step; step = walker.next()) kinds.add(step.node.type);
    expect([...kinds].filter((kind) => /html|image|code|emph|strong/.test(kind))).toEqual([]);
  });

  test('feeds, by npm rss-parser', async () => {
    const lessons = payloads.slice(0, 300).map((text, index) => ({
      id: `${at}/${index}`,
      address: `${at}/${index}`,
      title: line(index),
      summary: text,
      language: 'en',
      firstPublished: new Date('2026-02-28T09:00:00Z'),
      lastPublished: new Date('2026-03-01T10:30:00Z'),
      revision: 2,
      corrections: [text],
      recording: {
        address: at,
        mediaType: 'video/mp4',
        bytes: 1,
        durationMs: 1,
        captionsAddress: at,
        chaptersAddress: at,
      },
      posterAddress: null,
    }));
    const of = {
      name: line(9),
      about: line(10),
      language: 'en',
      id: at,
      address: at,
      feedAddress: at,
      lessons,
    };
    for (const write of [atomFeed, podcastFeed]) {
      const { items } = await new RssParser().parseString(write(of));
      expect(items.map(({ title }) => title?.trim())).toEqual(
        lessons.map(({ title }) => xmlSafe(title).trim()),
      );
    }
  });

  test('the kit as CSV keeps each name in its field', () => {
    const kit = kitFor(content, 165);
    if (!kit.ok) throw new Error(kit.fault.code);
    const csv = kitCsv(kit.value);
    for (const { name } of content.ringKinds) expect(csv.replaceAll('""', '"')).toContain(plainLine(name));
  });

  // Pages of a lesson and of a kit, each set once with every payload on it.
  test('the sheets on paper, by npm pdfjs-dist: each sign is printed, or a mark says that it cannot be', async () => {
    const { runsOf } = await signs();
    // What paper shows of a text; white space is set anew on it, and a soft line takes none.
    const onPaper = (text: string): string =>
      runsOf(text)
        .map((run) => run.text)
        .join('')
        .replaceAll(/\s+/g, '');
    const kit = kitFor(content, 165);
    if (!kit.ok) throw new Error(kit.fault.code);
    const lesson = {
      ...{ title: content.title, weave: content.weave, workshop: line(9), language: 'en' },
      ...{ address: at, revision: 1, at: new Date('2026-03-01T10:00:00Z') },
    };
    const printed = async (sheet: Sheet): Promise<string> => {
      // A foot would stand in the middle of what goes over two pages; without one its page numbers are left.
      const made = await makePdf({ ...sheet, foot: '' });
      const numbers = new RegExp(`\\d+of${await pdfPages(made)}`, 'g');
      expect(Buffer.from(made).toString('latin1')).not.toMatch(
        /\/(?:JavaScript|JS|Launch|SubmitForm|EmbeddedFile)\b/,
      );
      return (await pdfText(made)).replaceAll(/\s+/g, '').replaceAll(numbers, '');
    };
    const bare = { ...revision, content: { ...content, corrections: content.corrections.slice(0, 200) } };
    const text = await printed(lessonSheet({ lesson, revision: bare, kit: null, playsAt: null }, 10));
    const inKit = await printed(kitSheet(lesson, kit.value));
    const lost = (held: string, texts: readonly string[]): readonly string[] =>
      texts.filter((one) => !held.includes(onPaper(one)));
    expect(lost(text, [content.title, ...content.steps.map(({ sentence }) => sentence)])).toEqual([]);
    expect(
      lost(
        text,
        content.corrections.flatMap(({ wrong, right }) => [wrong, right]),
      ),
    ).toEqual([]);
    expect(lost(inKit, [content.title, ...content.ringKinds.map(({ name }) => name)])).toEqual([]);
  });

  test('a name under which something is saved stays in its header', () => {
    for (const name of payloads) {
      const header = attachment(name);
      // RFC 6266 and RFC 8187: a quoted string of plain signs, then percent-encoded UTF-8.
      expect(header).toMatch(/^attachment; filename="[\w .()-]*"; filename\*=UTF-8''[\w.!~%-]*$/);
      expect(decodeURIComponent(header.slice(header.indexOf("''") + 2))).toBe(name);
      expect(() => new Headers({ 'content-disposition': header })).not.toThrow();
    }
  });
});

describe('made twice', () => {
  test.each(Object.keys(TEXT_FILES) as TextFile[])('%s of two publications is the same', (name) => {
    expect(file(name, revisionOf(2, '2026-04-01T10:00:00Z'))).toBe(file(name, revision));
  });

  test.each([
    ['annotations', annotations],
    ['structured data', data],
    ['the player for other sites', embed],
  ])('%s of one revision', (_name, write) => {
    expect(write(revisionOf(1, '2026-03-01T10:00:00Z'))).toBe(write(revision));
  });
});
