import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { freezeRevision } from '#lib/lesson/revision.ts';
import { isoDuration, jsonForScript, structuredData } from '#lib/lesson/structured-data.ts';
import { aContent, aTranscript } from '#tests/support/a-content.ts';

const revision = freezeRevision({
  number: 1,
  publishedAt: new Date('2026-03-01T10:00:00Z'),
  workshop: { name: 'Kettle Row Rings', slug: 'kettle-row' },
  content: aContent({ title: '</script><script>alert(1)</script>' }),
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
  stillKeys: new Map(),
  terms: [],
  published: [],
});
const data = structuredData(revision, {
  page: 'https://bench.example/l',
  recording: 'https://bench.example/l/recording',
  poster: null,
  pageAt: (atMs) => `https://bench.example/l?t=${atMs / 1000}#player`,
});

type Node = Record<string, unknown>;
const nodesIn = (value: unknown): Node[] =>
  Array.isArray(value)
    ? value.flatMap(nodesIn)
    : value !== null && typeof value === 'object'
      ? [value as Node, ...Object.values(value).flatMap(nodesIn)]
      : [];

describe('structured data', () => {
  test('nothing in it can close its script element', () => {
    expect(jsonForScript(data)).not.toContain('<');
    expect(JSON.parse(jsonForScript(data))).toEqual(JSON.parse(JSON.stringify(data)));
  });

  test('clips follow each other to the end, each with an address of its own', () => {
    const clips = nodesIn(data).filter((node) => node['@type'] === 'Clip');
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
