/**
 * Feeds against their standards and an outside reader: Atom (RFC 4287, section
 * 4.1.1 and 4.1.2: what feeds and entries must contain), RSS 2.0 (an item's
 * enclosure needs url, length and type; dates as in RFC 822 with the right day
 * of the week), read by npm rss-parser, which shares no code with what wrote them.
 */
import Parser from 'rss-parser';
import { describe, expect, test } from 'vitest';
import { atomFeed } from '#lib/feeds/atom-feed.ts';
import {
  type CorrectionsOf,
  correctionsFeed,
  type PublishedCorrection,
} from '#lib/feeds/corrections-feed.ts';
import { podcastFeed } from '#lib/feeds/podcast-feed.ts';
import { type FeedOf, feedText, finishFeed, type PublishedLesson } from '#lib/feeds/published-lesson.ts';
import { haveOutsideCases, outsideJson } from '#tests/support/outside-cases.ts';

const lesson = (over: Partial<PublishedLesson> = {}): PublishedLesson => ({
  id: 'https://bench.example/workshop/kiln/lesson/b',
  address: 'https://bench.example/workshop/k/lesson/b',
  title: 'Byzantine bracelet',
  summary: 'A square chain.',
  language: 'en',
  firstPublished: new Date('2026-02-28T09:00:00Z'),
  lastPublished: new Date('2026-03-01T10:30:00Z'),
  revision: 2,
  corrections: ['Corrected: “80” Right: “18”'],
  recording: {
    address: 'https://bench.example/workshop/k/lesson/b/revision/2/recording',
    mediaType: 'video/mp4',
    bytes: 12_345_678,
    durationMs: 601_400,
    captionsAddress: 'https://bench.example/workshop/k/lesson/b/revision/2/captions.vtt',
    chaptersAddress: 'https://bench.example/workshop/k/lesson/b/revision/2/chapters.json',
  },
  posterAddress: 'https://bench.example/workshop/k/lesson/b/revision/2/poster.jpg',
  ...over,
});
const feed = (lessons: readonly PublishedLesson[], file: string): FeedOf => ({
  name: 'Kiln Lane Rings',
  about: 'Weaving & more',
  language: 'en',
  id: 'https://bench.example/workshop/kiln',
  address: 'https://bench.example/workshop/k',
  feedAddress: `https://bench.example/workshop/k/${file}`,
  lessons,
});

// Markup, the end of a CDATA section, characters no XML can hold, a lone surrogate, text that runs the other way.
const HOSTILE =
  '<script>alert(1)</script> ]]> &amp; &apos; \uE000 "\' \u0000\u0007\uFFFE\uD800 \u202Eabc ½ 🧵';
const HOSTILE_READ = '<script>alert(1)</script> ]]> &amp; &apos; \uE000 "\' � \u202Eabc ½ 🧵';

describe('Atom (RFC 4287)', () => {
  test('holds what feeds and entries must hold', async () => {
    const xml = atomFeed(feed([lesson()], 'feed.atom'));
    expect(xml).toContain('<feed xmlns="http://www.w3.org/2005/Atom"');
    const read = await new Parser().parseString(xml);
    expect(read.title).toBe('Kiln Lane Rings');
    expect(read.feedUrl).toBe('https://bench.example/workshop/k/feed.atom');
    expect(xml).toContain('<id>https://bench.example/workshop/kiln</id>');
    expect(xml.match(/<updated>(.*?)<\/updated>/)?.[1]).toBe('2026-03-01T10:30:00.000Z');
    expect(xml).toMatch(/<author>\s*<name>Kiln Lane Rings<\/name>/);
    const [entry] = read.items;
    expect(entry?.title).toBe('Byzantine bracelet');
    expect(entry?.link).toBe('https://bench.example/workshop/k/lesson/b');
    expect(entry?.isoDate).toBe('2026-02-28T09:00:00.000Z');
    expect(entry?.summary).toContain('Corrected: “80” Right: “18”');
  });

  test('is well formed before anything is published', async () => {
    const read = await new Parser().parseString(atomFeed(feed([], 'feed.atom')));
    expect(read.items).toEqual([]);
    expect(read.title).toBe('Kiln Lane Rings');
  });
});

const correction = (over: Partial<PublishedCorrection> = {}): PublishedCorrection => ({
  id: 'https://bench.example/workshop/kiln/lesson/b#correction-co-1',
  address: 'https://bench.example/workshop/k/lesson/b#correction-co-1',
  lesson: 'Byzantine bracelet',
  language: 'en',
  about: 'said wrongly, at 0:31',
  sentences: ['Wrong: eighty', 'Right: eighteen', 'Kits stay as they are.'],
  published: new Date('2026-03-01T10:30:00Z'),
  ...over,
});
const corrections = (list: readonly PublishedCorrection[], title = 'Corrections of it'): CorrectionsOf => ({
  title,
  author: 'Kiln Lane Rings',
  id: 'https://bench.example/workshop/kiln/lesson/b',
  address: 'https://bench.example/workshop/k/lesson/b',
  feedAddress: 'https://bench.example/workshop/k/lesson/b/corrections.atom',
  begun: new Date('2026-02-28T09:00:00Z'),
  corrections: list,
});

describe('corrections (RFC 4287)', () => {
  test('each has an id for life, the day of its revision, and says what was wrong and what is right', async () => {
    const older = correction({
      id: 'https://bench.example/workshop/kiln/lesson/b#correction-co-0',
      address: 'https://bench.example/workshop/k/lesson/b#correction-co-0',
      published: new Date('2026-02-28T12:00:00Z'),
    });
    const xml = correctionsFeed(corrections([correction(), older]));
    const read = await new Parser().parseString(xml);
    expect(read.feedUrl).toBe('https://bench.example/workshop/k/lesson/b/corrections.atom');
    expect(xml.match(/<updated>(.*?)<\/updated>/)?.[1]).toBe('2026-03-01T10:30:00.000Z');
    expect(xml).toMatch(/<author>\s*<name>Kiln Lane Rings<\/name>/);
    expect(read.items.map((item) => [item.id, item.isoDate])).toEqual([
      ['https://bench.example/workshop/kiln/lesson/b#correction-co-1', '2026-03-01T10:30:00.000Z'],
      ['https://bench.example/workshop/kiln/lesson/b#correction-co-0', '2026-02-28T12:00:00.000Z'],
    ]);
    expect(read.items[0]?.title).toBe('Byzantine bracelet: said wrongly, at 0:31');
    expect(read.items[0]?.summary).toBe('Wrong: eighty\nRight: eighteen\nKits stay as they are.');
  });

  test('without any it is well formed, and states since when there was nothing to correct', async () => {
    const xml = correctionsFeed(corrections([]));
    expect((await new Parser().parseString(xml)).items).toEqual([]);
    expect(xml).toContain('<updated>2026-02-28T09:00:00.000Z</updated>');
  });
});

describe('podcast (RSS 2.0, podcast namespace)', () => {
  test('an item has its enclosure whole, a right date, transcript and chapters', async () => {
    const xml = podcastFeed(feed([lesson()], 'podcast.xml'));
    const read = await new Parser({
      customFields: {
        item: [
          ['podcast:transcript', 'transcript'],
          ['podcast:chapters', 'chapters'],
        ],
      },
    }).parseString(xml);
    const [item] = read.items;
    expect(item?.enclosure).toEqual({
      url: 'https://bench.example/workshop/k/lesson/b/revision/2/recording',
      length: '12345678',
      type: 'video/mp4',
    });
    // 28 February 2026 is a Saturday.
    expect(xml).toContain('<pubDate>Sat, 28 Feb 2026 09:00:00 GMT</pubDate>');
    expect(item?.guid).toBe('https://bench.example/workshop/kiln/lesson/b');
    expect(xml).toContain('<itunes:duration>601</itunes:duration>');
    expect(item?.['transcript'].$).toMatchObject({ type: 'text/vtt', language: 'en' });
    expect(item?.['chapters'].$).toEqual({
      url: 'https://bench.example/workshop/k/lesson/b/revision/2/chapters.json',
      type: 'application/json+chapters',
    });
    expect(read.link).toBe('https://bench.example/workshop/k');
    expect(read.description?.trim()).toBe('Weaving & more');
  });

  test('a lesson without a recording is not in it', async () => {
    const read = await new Parser().parseString(
      podcastFeed(feed([lesson({ recording: null })], 'podcast.xml')),
    );
    expect(read.items).toEqual([]);
  });
});

describe('text that a person typed', () => {
  test.each([
    ['Atom', atomFeed],
    ['RSS', podcastFeed],
  ] as const)('%s carries it as text and stays well formed', async (_name, write) => {
    const xml = write({ ...feed([lesson({ title: HOSTILE, summary: HOSTILE })], 'f'), name: HOSTILE });
    for (const unseen of ['\u0000', '\u0007', '\uFFFE']) expect(xml).not.toContain(unseen);
    const read = await new Parser().parseString(xml);
    // White space round a text means nothing in either format.
    expect(read.title?.trim()).toBe(HOSTILE_READ);
    expect(read.items[0]?.title?.trim()).toBe(HOSTILE_READ);
  });

  test('a correction carries it as text and stays well formed, whatever the outside cases hold', async () => {
    const hostile = [HOSTILE, ...(haveOutsideCases('adversarial') ? adversarialTexts() : [])];
    const list = hostile.map((text, index) =>
      correction({
        id: `https://bench.example/workshop/kiln/lesson/b#correction-${index}`,
        address: `https://bench.example/workshop/k/lesson/b#correction-${index}`,
        lesson: text,
        about: text,
        sentences: [text, text],
      }),
    );
    // A feed holds a hundred entries at most.
    for (let from = 0; from < list.length; from += 100) {
      const part = list.slice(from, from + 100);
      const xml = correctionsFeed(corrections(part, part[0]?.lesson));
      const read = await new Parser().parseString(xml);
      expect(read.items).toHaveLength(part.length);
      read.items.forEach((item, index) => {
        // Line ends are one and the same to an XML reader (XML 1.0, 2.11); this one leaves them as they are.
        const lines = (text: string) => text.replace(/\r\n?/g, '\n').trim();
        expect(lines(item.summary ?? '')).toBe(
          lines(finishFeed(feedText(part[index]?.sentences.join('\n') ?? ''))),
        );
      });
    }
  });
});

const adversarialTexts = (): readonly string[] =>
  ['h5sc.json', 'dompurify.json'].flatMap((file) => textsIn(outsideJson<unknown>(`adversarial/${file}`)));

/** Every text inside a piece of JSON. */
function textsIn(json: unknown): readonly string[] {
  if (typeof json === 'string') return [json];
  return typeof json === 'object' && json !== null ? Object.values(json).flatMap(textsIn) : [];
}
