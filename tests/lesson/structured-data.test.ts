import { existsSync, readFileSync } from 'node:fs';
import jsonld from 'jsonld';
import { describe, expect, test } from 'vitest';
import { freezeRevision } from '#lib/lesson/revision.ts';
import { isoDuration, jsonForScript, structuredData } from '#lib/lesson/structured-data.ts';
import { aContent, aTranscript } from '#tests/support/a-content.ts';

const revision = freezeRevision({
  number: 1,
  publishedAt: new Date('2026-03-01T10:00:00Z'),
  workshop: { name: 'Kettle Row Rings', slug: 'kettle-row' },
  content: aContent({
    title: '</script><script>alert(1)</script>',
    cautions: [
      { id: 'ca-1', of: 'small-parts', text: '' },
      { id: 'ca-2', of: null, text: 'Ends fly: wear glasses.' },
    ],
    corrections: [
      {
        id: 'co',
        kind: 'said wrongly',
        startMs: 31_000,
        endMs: 36_000,
        wrong: 'eighty gauge',
        right: 'eighteen gauge',
        affects: 'everyone who bought wire',
        kitsChange: false,
        of: null,
        effects: [],
        revision: 1,
      },
    ],
  }),
  cues: aTranscript,
  recording: {
    id: 'r',
    durationMs: 90_000,
    hasVideo: true,
    hasAudio: true,
    width: 640,
    height: 360,
    mediaType: 'video/mp4',
    mediaKey: 'recordings/r/playable.mp4',
    posterKey: null,
  },
  terms: [],
  stillKeys: new Map([[30_000, 'recordings/r/still-30000.jpg']]),
  published: [],
});
const places = {
  page: 'https://bench.example/l',
  shelf: 'https://bench.example/w',
  recording: 'https://bench.example/l/recording',
  captions: 'https://bench.example/l/captions.vtt',
  poster: 'https://bench.example/l/poster.jpg',
  still: (of: string) => `https://bench.example/l/stills/${of}.jpg`,
  pageAt: (atMs: number) => `https://bench.example/l?t=${atMs / 1000}#player`,
};
const data = structuredData(revision, places, '2026-02-01T10:00:00.000Z');

type Node = Record<string, unknown>;
const nodesIn = (value: unknown): Node[] =>
  Array.isArray(value)
    ? value.flatMap(nodesIn)
    : value !== null && typeof value === 'object'
      ? [value as Node, ...Object.values(value).flatMap(nodesIn)]
      : [];

const ofType = (type: string): Node[] => nodesIn(data).filter((node) => node['@type'] === type);

describe('structured data', () => {
  test('npm jsonld reads all of it: no term without a meaning, each address an address', async () => {
    // The site's own context is not fetched; these are its terms as this page uses them: all of one vocabulary, some addresses.
    const addresses = ['url', 'contentUrl', 'thumbnailUrl', 'image'];
    const context = {
      '@vocab': 'http://schema.org/',
      ...Object.fromEntries(addresses.map((name) => [name, { '@type': '@id' }])),
    };
    const documentLoader = async (url: string) => {
      if (url !== 'https://schema.org') throw new Error(`asked for ${url}`);
      return { contextUrl: undefined, document: { '@context': context } as never, documentUrl: url };
    };
    const expanded = await jsonld.expand(data as never, { documentLoader, safe: true } as never);
    const nodes = nodesIn(expanded);
    const clips = nodes.filter((node) => String(node['@type']) === 'http://schema.org/Clip');
    expect(clips.length).toBeGreaterThan(3);
    for (const { 'http://schema.org/url': url } of clips)
      expect(url).toMatchObject([{ '@id': expect.stringMatching(/^https:\/\/bench\.example\/l\?t=/) }]);
    const references = nodes.flatMap((node) =>
      Object.keys(node).join() === '@id' ? [String(node['@id'])] : [],
    );
    const described = new Set(nodes.flatMap((node) => ('@type' in node ? [String(node['@id'])] : [])));
    expect(
      references.filter((id) => id.includes('#') && !id.includes('?')).filter((id) => !described.has(id)),
    ).toEqual(ofType('HowToStep').map(({ url }) => url));
  });

  test('a correction says what is right, and plays the place that was wrong', () => {
    const [correction] = ofType('CorrectionComment');
    expect(correction).toMatchObject({
      text: 'eighty gauge → eighteen gauge\neveryone who bought wire',
      about: { startOffset: 31, endOffset: 36, url: 'https://bench.example/l?t=31#player' },
    });
    expect(ofType('LearningResource')[0]?.['correction']).toEqual([correction]);
  });

  test('captions, transcript, tools and the rings of each size are in it', () => {
    const [video] = ofType('VideoObject');
    expect(video).toMatchObject({
      transcript: 'Welcome to the bench.\nTake an eighteen gauge ring.',
      caption: { contentUrl: 'https://bench.example/l/captions.vtt', encodingFormat: 'text/vtt' },
      thumbnailUrl: 'https://bench.example/l/poster.jpg',
    });
    const [supply] = ofType('HowToSupply');
    const issued = revision.kits.map(({ rings }) => rings[0]?.issued);
    expect(supply?.['requiredQuantity']).toBe(
      `${issued[0]} for small (150 mm); ${issued[1]} for medium (165 mm); ${issued[2]} for large (180 mm)`,
    );
  });

  test('cautions stand before the steps, in the teacher’s words or ours', () => {
    const [care, ...steps] = (ofType('HowTo')[0]?.['step'] ?? []) as Node[];
    expect(care).toMatchObject({
      '@type': 'HowToSection',
      itemListElement: [
        { '@type': 'HowToTip', name: 'Small parts', text: expect.stringMatching(/swallowed/) },
        { '@type': 'HowToTip', text: 'Ends fly: wear glasses.' },
      ],
    });
    expect(steps.flatMap(nodesIn).filter((node) => node['@type'] === 'HowToTip')).toEqual([]);
  });

  test('a step shows its span of the recording and its still', () => {
    const step = ofType('HowToStep').find(({ url }) => url === 'https://bench.example/l#repeat-1');
    expect(step).toMatchObject({
      image: 'https://bench.example/l/stills/repeat-1.jpg',
      video: { startOffset: 30, endOffset: 34 },
    });
  });

  test('nothing in it can close its script element', () => {
    expect(jsonForScript(data)).not.toContain('<');
    expect(JSON.parse(jsonForScript(data))).toEqual(JSON.parse(JSON.stringify(data)));
  });

  test('clips follow each other to the end, each with an address of its own', () => {
    const clips = nodesIn(ofType('VideoObject')[0]?.['hasPart']);
    expect(clips.map(({ startOffset, endOffset }) => [startOffset, endOffset])).toEqual([
      [0, 30],
      [30, 60],
      [60, 90],
    ]);
    expect(new Set(clips.map(({ url }) => url)).size).toBe(3);
  });

  // ISO 8601 durations.
  test.each([
    [0, 'PT0S'],
    [760_000, 'PT12M40S'],
    [3_600_000, 'PT1H'],
    [3_723_999, 'PT1H2M3S'],
  ])('%d ms is %s', (ms, iso) => {
    expect(isoDuration(ms)).toBe(iso);
  });

  // schema.org release 30.0, the subset beside the project.
  const subset = new URL('../../../shared/suites/structured-data/schemaorg-30-subset.json', import.meta.url);
  test.skipIf(!existsSync(subset))('uses only properties that schema.org 30.0 gives to its types', () => {
    const { types } = JSON.parse(readFileSync(subset, 'utf8')) as {
      types: Record<string, { properties: Record<string, { superseded?: unknown }> }>;
    };
    const unknown = nodesIn(data).flatMap((node) => {
      const type = types[String(node['@type'])];
      return type ? Object.keys(node).filter((key) => !key.startsWith('@') && !(key in type.properties)) : [];
    });
    expect(nodesIn(data).filter((node) => String(node['@type']) in types).length).toBeGreaterThan(10);
    expect(unknown).toEqual([]);
  });
  if (!existsSync(subset)) console.warn('skipped: outside cases not present (schema.org subset)');
});
