import { describe, expect, test } from 'vitest';
import {
  completeSetup,
  DEFAULT_SETUP,
  type DescriptionSetup,
  NO_LIMITS,
} from '#lib/description/description-setup.ts';
import { composeDescription, lengthsOf } from '#lib/description/description-text.ts';
import type { DescriptionFormat } from '#lib/description/write-description.ts';
import type { Content } from '#lib/lesson/content.ts';
import { aContent } from '#tests/support/a-content.ts';

const compose = (
  content: Content,
  over: Partial<DescriptionSetup> = {},
  lessonAddress: string | null = null,
  format: DescriptionFormat = 'text',
) =>
  composeDescription({
    content,
    setup: { ...DEFAULT_SETUP, limits: NO_LIMITS, ...over },
    lessonAddress,
    durationMs: 90_000,
    format,
  });
const descriptionText = (content: Content, lessonAddress: string | null): string =>
  compose(content, {}, lessonAddress).text;

describe('description text', () => {
  const text = descriptionText(aContent(), 'https://bench.example/workshop/k/lesson/b');

  test('holds summary, chapters from 0:00, counts per size, tools, cautions and licence in that order', () => {
    const places = [
      'A square chain in copper and aluminium.',
      'https://bench.example/workshop/k/lesson/b',
      'Chapters\n0:00 Welcome\n0:30 The repeat unit\n1:00 The end',
      'small (150 mm): 36 opened + 34 closed + 7 spare = 77',
      'Other materials\n- lobster clasp: 1 piece',
      'Cautions\n- Small parts:',
      'Licence\nWeave and sell what you make.',
    ].map((part) => text.indexOf(part));
    expect(places).not.toContain(-1);
    expect(places).toEqual(places.toSorted((one, other) => one - other));
  });

  test('is the same bytes for the same content and ends in one line end', () => {
    expect(descriptionText(aContent(), null)).toBe(descriptionText(aContent(), null));
    expect(text).toMatch(/[^\n]\n$/);
    expect(text).not.toMatch(/\n{3}|\r| \n/);
  });

  test('leaves out parts that have nothing to say', () => {
    const bare = descriptionText(aContent({ chapters: [], cautions: [], licence: '', materials: [] }), null);
    expect(bare).not.toMatch(/Chapters|Cautions|Licence|Other materials|Corrections|Links/);
  });

  test('a title cannot open a line or a chapter of its own, nor turn the text round', () => {
    const nasty = descriptionText(
      aContent({
        chapters: [{ id: 'x', kind: 'opening', title: 'One\r\n9:99 Two\u202e\u0000 end', startMs: 0 }],
      }),
      null,
    );
    expect(nasty).toContain('0:00 One 9:99 Two end\n');
    expect(nasty).not.toMatch(/\p{Cc}(?<!\n)|\u202e/u);
  });

  test('carries corrections with their span', () => {
    const corrected = descriptionText(
      aContent({
        corrections: [
          {
            id: 'c',
            kind: 'said wrongly',
            startMs: 62_000,
            endMs: 65_000,
            wrong: 'eighty',
            right: 'eighteen',
            affects: 'everyone',
            kitsChange: true,
            of: null,
            effects: [],
            revision: 2,
          },
        ],
      }),
      null,
    );
    expect(corrected).toContain(
      'Corrections\n- Said wrongly at 1:02 to 1:05: “eighty” Right: “eighteen” Concerns: everyone. Kits change.',
    );
    // Places make chapters of lines that begin with a time.
    expect(corrected.match(/^\W*\d+:\d\d/gm)).toEqual(['0:00', '0:30', '1:00']);
  });

  test('counts nothing that is nought, and makes no list of one line', () => {
    expect(text).not.toMatch(/\b0 (?:opened|closed|spare)/);
    for (const [format, line] of [
      ['markdown', /^Lesson page [^\n]+<https:/m],
      ['html', /^<p>Lesson page [^\n]+<\/p>$/m],
    ] as const)
      expect(compose(aContent(), {}, 'https://bench.example/l', format).text).toMatch(line);
  });

  test('is counted as people and as bytes', () => {
    expect(lengthsOf('¼ 🧵')).toEqual({ characters: 3, bytes: 7 });
  });
});

describe('as a workshop words it', () => {
  test('parts stand in its order under its headings, and those not shown are not there', () => {
    const { text } = compose(aContent(), {
      parts: [
        { kind: 'licence', shown: true, heading: 'What you may do' },
        { kind: 'chapters', shown: true, heading: '' },
        { kind: 'summary', shown: false, heading: '' },
      ],
    });
    expect(text).toBe(
      'What you may do\nWeave and sell what you make.\n\n0:00 Welcome\n0:30 The repeat unit\n1:00 The end\n',
    );
  });

  test('parts that came later than a stored setup stand at its end', () => {
    const stored = { ...DEFAULT_SETUP, parts: DEFAULT_SETUP.parts.slice(0, 2) };
    expect(
      completeSetup(stored)
        .parts.map(({ kind }) => kind)
        .toSorted(),
    ).toEqual(DEFAULT_SETUP.parts.map(({ kind }) => kind).toSorted());
    expect(completeSetup({ parts: 'none' })).toBe(DEFAULT_SETUP);
  });

  test('a tag goes on every web address and leaves others and their own queries alone', () => {
    const content = aContent({
      links: [
        { id: 'a', label: 'Shop', address: 'https://shop.example/rings?size=5#top' },
        { id: 'b', label: 'Write', address: 'mailto:hello@shop.example' },
      ],
    });
    const { text } = compose(content, { campaign: 'from=recording' }, 'https://bench.example/l');
    expect(text).toContain('Shop: https://shop.example/rings?size=5&from=recording#top\n');
    expect(text).toContain('Write: mailto:hello@shop.example');
    expect(text).toContain('https://bench.example/l?from=recording\n');
  });

  test('too long: whole parts go in the stated order, and no line is cut', () => {
    const whole = compose(aContent());
    const lines = new Set(whole.text.split('\n'));
    for (let characters = whole.characters; characters >= 100; characters -= 37) {
      const made = compose(aContent(), { limits: { ...NO_LIMITS, characters } });
      const order = DEFAULT_SETUP.leaveOut.filter((kind) => made.leftOut.includes(kind));
      expect(made.leftOut).toEqual(order);
      expect(made.text.split('\n').every((line) => lines.has(line))).toBe(true);
      const tooLong = made.warnings.some(({ code }) => code === 'too-long');
      expect(tooLong).toBe(made.characters > characters);
      // Nothing more was left out than had to be.
      if (!tooLong && made.leftOut.length > 0) {
        const less = DEFAULT_SETUP.leaveOut.slice(
          0,
          DEFAULT_SETUP.leaveOut.indexOf(made.leftOut.at(-1) ?? 'page'),
        );
        expect(
          compose(aContent(), {
            parts: DEFAULT_SETUP.parts.filter(({ kind }) => !less.includes(kind)),
          }).characters,
        ).toBeGreaterThan(characters);
      }
    }
  });

  test('bytes are a limit of their own', () => {
    const content = aContent({ licence: '⅜'.repeat(200) });
    const { bytes, characters } = compose(content);
    expect(bytes).toBeGreaterThan(characters + 300);
    const made = compose(content, { limits: { ...NO_LIMITS, characters, bytes: bytes - 1 } });
    expect(made.leftOut).toEqual(['licence']);
  });

  test('says what a place may stumble over', () => {
    const content = aContent({
      title: 'A <b> chain',
      summary: '',
      chapters: [
        { id: '1', kind: 'opening', title: 'Hello', startMs: 4_000 },
        { id: '2', kind: 'repeat unit', title: 'Weave', startMs: 4_900 },
      ],
    });
    const codes = compose(content, {
      limits: { ...DEFAULT_SETUP.limits, characters: null, bytes: null },
    }).warnings.map(({ code }) => code);
    expect(codes).toEqual([
      'chapters-not-from-nought',
      'too-few-chapters',
      'same-second',
      'refused-characters',
    ]);
    const short = compose(
      aContent({
        chapters: [
          { id: '1', kind: 'opening', title: 'Hello', startMs: 0 },
          { id: '2', kind: 'repeat unit', title: 'Weave', startMs: 9_000 },
          { id: '3', kind: 'clasp', title: 'Clasp', startMs: 85_000 },
        ],
      }),
      { limits: DEFAULT_SETUP.limits },
    ).warnings;
    expect(short).toEqual([
      { code: 'chapter-too-short', title: 'Hello', lastsMs: 9_000 },
      { code: 'chapter-too-short', title: 'Clasp', lastsMs: 5_000 },
    ]);
  });
});
