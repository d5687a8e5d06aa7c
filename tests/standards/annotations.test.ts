/**
 * Steps as annotations, against the W3C's Web Annotation vocabulary: npm
 * jsonld expands them with the W3C's own context (a copy beside the
 * repository), in safe mode, where a term that the context does not know is
 * an error. Nothing is fetched. Times go through our reader of media
 * fragments, which the W3C's cases check.
 */
import fc from 'fast-check';
import jsonld from 'jsonld';
import { describe, expect, test } from 'vitest';
import { pageSteps } from '#lib/lesson/page-steps.ts';
import { freezeRevision } from '#lib/lesson/revision.ts';
import { writeStepAnnotations } from '#lib/lesson/step-annotations.ts';
import { LONGEST_MS } from '#lib/time/longest-time.ts';
import { readFragment, writeFragment } from '#lib/time/media-fragment.ts';
import { aContent, aTranscript } from '#tests/support/a-content.ts';
import { haveOutsideCases, outsideJson } from '#tests/support/outside-cases.ts';

const content = aContent({
  steps: [{ id: 'no moment/ü', sentence: 'Sort the rings by colour.', atMs: null, pictureText: '' }],
});
const revision = freezeRevision({
  number: 2,
  publishedAt: new Date('2026-03-01T10:00:00Z'),
  workshop: { name: 'Kettle Row Rings', slug: 'kettle-row' },
  content,
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
  stillKeys: new Map([[30_000, 'recordings/r/still-30000.jpg']]),
  published: [],
  terms: [],
});
const at = 'https://bench.example/workshop/k/lesson/b/revision/2';
const places = {
  file: `${at}/steps.jsonld`,
  page: at,
  recording: `${at}/recording`,
  still: (of: string) => `${at}/stills/${of}.jpg`,
};
const written = writeStepAnnotations(revision, places);

const OA = 'http://www.w3.org/ns/oa#';
const AS = 'http://www.w3.org/ns/activitystreams#';
type Node = Readonly<Record<string, readonly Node[]>> & { '@id'?: string; '@value'?: unknown };

const present = haveOutsideCases('annotation');
describe.skipIf(!present)('expanded by npm jsonld with the context of the W3C', () => {
  const expand = async (text: string): Promise<Node[]> => {
    const context = outsideJson<object>('annotation/anno.jsonld');
    const documentLoader = async (url: string) => {
      if (url !== 'http://www.w3.org/ns/anno.jsonld') throw new Error(`asked for ${url}`);
      return { contextUrl: undefined, document: context as never, documentUrl: url };
    };
    return (await jsonld.expand(JSON.parse(text), {
      documentLoader,
      safe: true,
    } as never)) as unknown as Node[];
  };

  test('is a collection whose one page holds every step in order', async () => {
    const [collection] = await expand(written);
    expect(collection?.['@type' as never]).toEqual([`${AS}OrderedCollection`]);
    const steps = pageSteps(content);
    expect(collection?.[`${AS}totalItems`]?.[0]?.['@value']).toBe(steps.length);
    const [page] = collection?.[`${AS}first`] ?? [];
    expect(page?.['@type' as never]).toEqual([`${AS}OrderedCollectionPage`]);
    const [list] = (page?.[`${AS}items`] ?? []) as unknown as { '@list': Node[] }[];
    const items = list?.['@list'] ?? [];
    expect(items).toHaveLength(steps.length);
    // Model, section 3.1: an annotation has a type, an id of its own, a body or none, and a target.
    expect(new Set(items.map((item) => item['@id'])).size).toBe(steps.length);
    const told = items.map((item) => {
      const [body] = item[`${OA}hasBody`] ?? [];
      const [target] = item[`${OA}hasTarget`] ?? [];
      const [selector] = target?.[`${OA}hasSelector`] ?? [];
      const rdf = 'http://www.w3.org/1999/02/22-rdf-syntax-ns#value';
      return {
        sentence: body?.[rdf]?.[0]?.['@value'],
        source: target?.[`${OA}hasSource`]?.[0]?.['@id'] ?? target?.['@id'],
        fragment: selector?.[rdf]?.[0]?.['@value'],
        conformsTo: selector?.['http://purl.org/dc/terms/conformsTo']?.[0]?.['@id'],
      };
    });
    expect(told.map(({ sentence }) => sentence)).toEqual(steps.map(({ sentence }) => sentence));
    for (const [index, step] of steps.entries()) {
      const one = told[index];
      if (step.atMs === null) {
        expect(one).toMatchObject({ source: `${at}#setup-1`, fragment: undefined });
        continue;
      }
      expect(one).toMatchObject({
        source: `${at}/recording`,
        // Model, section 4.2.1: the specification that media fragments are written to.
        conformsTo: 'http://www.w3.org/TR/media-frags/',
      });
      const span = readFragment(String(one?.fragment));
      expect(span?.startMs).toBe(step.atMs);
      expect(span?.endMs).toBeGreaterThan(step.atMs);
      expect(span?.endMs).toBeLessThanOrEqual(90_000);
    }
  });

  test('a lesson without steps gives an empty collection', async () => {
    const empty = freezeRevision({
      ...revision,
      publishedAt: new Date(revision.publishedAt),
      content: { ...content, start: [], repeat: [], finishing: [], steps: [] },
      stillKeys: new Map(),
      published: [],
    });
    const [collection] = await expand(writeStepAnnotations(empty, places));
    expect(collection?.[`${AS}totalItems`]?.[0]?.['@value']).toBe(0);
    expect(collection?.[`${AS}first`]).toBeUndefined();
  });
});

test('the same revision gives the same bytes', () => {
  expect(writeStepAnnotations(structuredClone(revision), places)).toBe(written);
});

test('every span comes back from its fragment to the millisecond', () => {
  const ms = fc.integer({ min: 0, max: LONGEST_MS });
  fc.assert(
    fc.property(ms, fc.option(fc.integer({ min: 1, max: LONGEST_MS })), (startMs, length) => {
      const span = { startMs, endMs: length === null ? null : startMs + length };
      expect(readFragment(writeFragment(span))).toEqual(span);
    }),
  );
});
