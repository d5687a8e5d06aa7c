import { describe, expect, test } from 'vitest';
import type { Content } from '#lib/lesson/content.ts';
import { FINDING_CODES, findingKey } from '#lib/lesson/finding.ts';
import { linkIsWellFormed, missingFrom } from '#lib/lesson/missing.ts';
import { aContent, aTranscript } from '#tests/support/a-content.ts';

const RECORDING = { durationMs: 90_000, hasAudio: true };
const check = (content: Content, over: Partial<Parameters<typeof missingFrom>[0]> = {}) =>
  missingFrom({ content, cues: aTranscript, recording: RECORDING, ...over });
const codes = (findings: readonly { code: string }[]) => findings.map(({ code }) => code);
const [firstKind, ...otherKinds] = aContent().ringKinds;
const withKind = (over: Partial<Content['ringKinds'][number]>): Content =>
  aContent({ ringKinds: firstKind ? [{ ...firstKind, ...over }, ...otherKinds] : [] });
const CORRECTION = {
  id: 'co',
  kind: 'said wrongly',
  startMs: 31_000,
  endMs: 36_000,
  wrong: 'eighteen gauge',
  right: '18 SWG',
  affects: 'everyone',
  kitsChange: false,
  of: null,
  effects: [],
  revision: null,
} as const;

describe('what a pupil would still have to ask', () => {
  test('nothing blocks a complete lesson', () => {
    expect(check(aContent()).blocks).toEqual([]);
  });

  test.each<[string, Content, string]>([
    ['a lesson without title', aContent({ title: ' ' }), 'title-missing'],
    ['a gauge without its system', withKind({ wire: { stated: '18', mm: 1.2192 } }), 'size-without-system'],
    ['a metal that is not named', withKind({ metal: 'other', metalName: '' }), 'metal-missing'],
    [
      'a chapter without title',
      aContent({ chapters: [{ id: 'x', kind: 'opening', title: '', startMs: 0 }] }),
      'chapter-nameless',
    ],
    [
      'a chapter behind the end',
      aContent({ chapters: [{ id: 'x', kind: 'closing', title: 'Late', startMs: 90_000 }] }),
      'chapter-after-end',
    ],
    [
      'a size too short for one repeat',
      aContent({ sizes: [{ id: 'xs', name: 'tiny', bodyMm: 4 }] }),
      'kit-not-computed',
    ],
    [
      'a link that names no site',
      aContent({ links: [{ id: 'l', label: 'Rings', address: 'https://rings' }] }),
      'link-not-well-formed',
    ],
    [
      'a correction without what is right',
      aContent({ corrections: [{ ...CORRECTION, right: '' }] }),
      'correction-incomplete',
    ],
    [
      'a correction that ends before it starts',
      aContent({ corrections: [{ ...CORRECTION, endMs: 20_000 }] }),
      'correction-span-wrong',
    ],
  ])('%s blocks', (_, content, code) => {
    expect(codes(check(content).blocks)).toContain(code);
  });

  test.each<[string, Content, string]>([
    ['no chapters', aContent({ chapters: [] }), 'chapters-missing'],
    [
      'a first chapter that starts late',
      aContent({ chapters: [{ id: 'x', kind: 'opening', title: 'Late', startMs: 1 }] }),
      'chapter-late-start',
    ],
    [
      'a chapter of 9.999 s',
      aContent({
        chapters: [
          { id: 'a', kind: 'opening', title: 'A', startMs: 0 },
          { id: 'b', kind: 'closing', title: 'B', startMs: 9_999 },
        ],
      }),
      'chapter-short',
    ],
    ['no sample', aContent({ sample: null, sizes: [] }), 'sample-missing'],
    ['a half Persian weave without leaning', aContent({ weave: 'Half Persian 4-in-1' }), 'leaning-unstated'],
    ['no caution', aContent({ cautions: [] }), 'caution-missing'],
    [
      'a step with a picture and no words for it',
      aContent({ steps: [{ id: 's', sentence: 'Polish it.', atMs: 70_000, pictureText: ' ' }] }),
      'picture-without-words',
    ],
  ])('%s warns', (_, content, code) => {
    expect(codes(check(content).warns)).toContain(code);
    expect(codes(check(content).blocks)).not.toContain(code);
  });

  test('captions that most can hardly read are told once, and those that some cannot are not', () => {
    const [first, second] = aTranscript;
    if (!first || !second) throw new Error('the fixture has two cues');
    // 25 characters a second at most, of five seconds: lib/transcript/caption-profile.ts.
    const fast = { ...second, text: 'a'.repeat(126) };
    const hard = [{ ...first, endMs: 500 }, fast];
    const found = check(aContent(), { cues: hard }).warns.filter(
      ({ code }) => code === 'captions-hard-to-read',
    );
    expect(found).toMatchObject([{ of: first.id, name: '2 captions', screen: 'transcript' }]);
    const readable = [first, { ...second, text: 'a'.repeat(125) }];
    expect(codes(check(aContent(), { cues: readable }).warns)).not.toContain('captions-hard-to-read');
  });

  test('colours of rings of one size are held against each other, for all eyes', () => {
    const [one, other] = aContent().ringKinds;
    if (!one || !other) throw new Error('the fixture has two ring kinds');
    const both = (a: string, b: string, over = {}): Content =>
      aContent({
        ringKinds: [
          { ...one, colourCode: a },
          {
            ...other,
            innerDiameter: one.innerDiameter,
            wire: one.wire,
            measuredInnerMm: one.measuredInnerMm,
            colourCode: b,
            ...over,
          },
        ],
      });
    const alike = (content: Content) =>
      check(content)
        .warns.filter(({ code }) => code === 'colours-alike')
        .map(({ of }) => of);
    expect(alike(both('#b8643c', '#2f66b3'))).toEqual([]);
    expect(alike(both('#b8643c', '#b8643d'))).toEqual([other.id]);
    // Red and green of one lightness: alike to eyes that lack a cone.
    expect(alike(both('#b3302f', '#3c8a4a'))).toEqual([other.id]);
    // The size tells them apart.
    expect(alike(both('#b8643c', '#b8643c', { wire: { stated: '3 mm', mm: 3 } }))).toEqual([]);
  });

  test('a picture that cannot be taken needs no words', () => {
    const content = aContent({ steps: [{ id: 's', sentence: 'Polish it.', atMs: 70_000, pictureText: '' }] });
    const sound = { ...RECORDING, hasVideo: false };
    expect(codes(check(content, { recording: sound }).warns)).not.toContain('picture-without-words');
  });

  test('a chapter of exactly 10 s is long enough, and a stated leaning is enough', () => {
    const content = aContent({
      weave: 'half Persian',
      leaning: 'left',
      chapters: [
        { id: 'a', kind: 'opening', title: 'A', startMs: 0 },
        { id: 'b', kind: 'closing', title: 'B', startMs: 10_000 },
      ],
    });
    expect(codes(check(content).warns)).not.toContain('chapter-short');
    expect(codes(check(content).warns)).not.toContain('leaning-unstated');
  });

  test('sound without a transcript blocks; silence does not', () => {
    expect(codes(check(aContent(), { cues: [] }).blocks)).toEqual(['transcript-missing']);
    const silent = { durationMs: 90_000, hasAudio: false };
    expect(check(aContent(), { cues: [], recording: silent }).blocks).toEqual([]);
  });

  test('a warning can be put aside, a block cannot', () => {
    const lacking = aContent({ chapters: [], title: '' });
    const keys = [...check(lacking).warns, ...check(lacking).blocks].map(findingKey);
    const after = check({ ...lacking, dismissed: keys });
    expect(after.warns).toEqual([]);
    expect(codes(after.dismissed)).toContain('chapters-missing');
    expect(codes(after.blocks)).toContain('title-missing');
  });

  test('comes in order of importance', () => {
    const { warns } = check(aContent({ chapters: [], licence: '', cautions: [] }));
    const places = codes(warns).map((code) => FINDING_CODES.indexOf(code as (typeof FINDING_CODES)[number]));
    expect(places).toEqual(places.toSorted((one, other) => one - other));
    expect(places.length).toBeGreaterThan(2);
  });

  test.each([
    ['https://rings.example/x', true],
    ['mailto:bench@example.org', true],
    ['https://', false],
    ['javascript:alert(1)', false],
    ['', false],
  ])('link %j is well formed: %s', (address, well) => {
    expect(linkIsWellFormed(address)).toBe(well);
  });
});
