/**
 * What other sites are told of a lesson, by oEmbed 1.0 (oembed.com, sections
 * 2.3.4 and 2.3.4.x: fields, types, and that nothing is larger than asked
 * for), held against a JSON schema of those rules beside the repository.
 */
import Ajv from 'ajv';
import { describe, expect, test } from 'vitest';
import { embedPage } from '#app/lesson-page/embed-page.ts';
import { oEmbed, type Room, roomOf } from '#lib/lesson/oembed.ts';
import { freezeRevision, type Revision } from '#lib/lesson/revision.ts';
import { aContent, aTranscript } from '#tests/support/a-content.ts';
import { haveOutsideCases, outsideJson } from '#tests/support/outside-cases.ts';

const HOSTILE = '"><script>alert(1)</script>';
const revisionOf = (over: Partial<NonNullable<Revision['recording']>> | null): Revision =>
  freezeRevision({
    number: 1,
    publishedAt: new Date('2026-03-01T10:00:00Z'),
    workshop: { name: HOSTILE, slug: 'kettle-row' },
    content: aContent({
      title: HOSTILE,
      chapters: [{ id: 'c', kind: 'opening', title: HOSTILE, startMs: 1_500 }],
    }),
    cues: aTranscript,
    recording: over && {
      id: 'r',
      durationMs: 90_000,
      hasVideo: true,
      hasAudio: true,
      width: 1920,
      height: 1080,
      mediaType: 'video/mp4',
      mediaKey: 'recordings/r/playable.mp4',
      posterKey: 'recordings/r/poster.jpg',
      ...over,
    },
    stillKeys: new Map(),
    published: [],
    terms: [],
  });
const places = {
  site: 'https://bench.example',
  shelf: 'https://bench.example/workshop/k',
  embed: 'https://bench.example/workshop/k/lesson/b/embed',
  poster: 'https://bench.example/workshop/k/lesson/b/revision/1/poster.jpg',
};
const sound = { hasVideo: false, width: null, height: null, posterKey: null };
const NONE: Room = { width: null, height: null };
const kinds: readonly (readonly [string, Revision])[] = [
  ['a video', revisionOf({})],
  ['an upright video', revisionOf({ width: 1080, height: 1920 })],
  ['sound alone', revisionOf(sound)],
  ['no recording', revisionOf(null)],
];
const rooms: readonly Room[] = [
  NONE,
  { width: 320, height: null },
  { width: null, height: 200 },
  { width: 1, height: 1 },
];

describe.each(kinds)('%s', (_name, revision) => {
  const at = { ...places, poster: revision.recording?.posterKey ? places.poster : null };
  test.each(rooms)('is not larger than the room of %o', (room) => {
    const { width, height, thumbnail_width, thumbnail_height } = oEmbed(revision, at, room) as Record<
      string,
      number
    >;
    for (const [is, most] of [
      [width, room.width],
      [height, room.height],
      [thumbnail_width, room.width],
      [thumbnail_height, room.height],
    ]) {
      if (is === undefined) continue;
      expect(is).toBeGreaterThan(0);
      if (most) expect(is).toBeLessThanOrEqual(most);
    }
  });

  test('names its type, and a frame in which a title closes nothing', () => {
    const told = oEmbed(revision, at, NONE);
    expect(told['type']).toBe(revision.recording?.hasVideo ? 'video' : 'rich');
    expect(told['html']).toMatch(/^<iframe src="https:\/\/bench\.example\/[^"<>]*" [^<>]*><\/iframe>$/);
    expect(told['title']).toBe(HOSTILE);
  });

  const schemas = haveOutsideCases('structured-data');
  test.skipIf(!schemas)('keeps to the rules of the specification', () => {
    const validate = new Ajv({ strict: false, validateFormats: false }).compile(
      outsideJson<object>('structured-data/oembed-1.0.schema.json'),
    );
    expect(
      validate(JSON.parse(JSON.stringify(oEmbed(revision, at, NONE)))),
      JSON.stringify(validate.errors),
    ).toBe(true);
  });
});

test.each([
  ['640', 640],
  ['0', null],
  ['-1', null],
  ['12.5', null],
  ['1e9', null],
  [null, null],
])('room of %s is %s', (text, px) => {
  expect(roomOf(text)).toBe(px);
});

describe('the page in the frame', () => {
  const addresses = {
    lesson: 'https://bench.example/workshop/k/lesson/b',
    recording: '/r/recording',
    poster: '/r/poster.jpg',
    captions: '/r/captions.vtt',
    chapters: '/r/chapters.vtt',
  };
  test('has no script, nothing of elsewhere, and shows what a person typed as text', () => {
    const page = embedPage(revisionOf({}), addresses, null);
    expect(page).not.toContain('<script');
    expect(page.match(/&quot;&gt;&lt;script&gt;alert\(1\)&lt;\/script&gt;/g)?.length).toBe(5);
    expect([...page.matchAll(/ src="([^"]*)"/g)].every(([, src]) => src?.startsWith('/r/'))).toBe(true);
  });

  test('begins at the moment that is asked for, by a media fragment', () => {
    expect(embedPage(revisionOf({}), addresses, { startMs: 62_500, endMs: null })).toContain(
      'src="/r/recording#t=62.5"',
    );
    expect(embedPage(revisionOf({}), addresses, { startMs: 0, endMs: 9_500 })).toContain('#t=0,9.5"');
    expect(embedPage(revisionOf({}), addresses, null)).toContain('href="?t=1.5"');
  });
});
