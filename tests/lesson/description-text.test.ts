import { describe, expect, test } from 'vitest';
import { descriptionText, lengthsOf } from '#lib/lesson/description-text.ts';
import { aContent } from '#tests/support/a-content.ts';

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
            revision: 2,
          },
        ],
      }),
      null,
    );
    expect(corrected).toContain(
      'Corrections\n- 1:02 to 1:05, said wrongly: “eighty” Right: “eighteen” Concerns: everyone. Kits change.',
    );
  });

  test('is counted as people and as bytes', () => {
    expect(lengthsOf('¼ 🧵')).toEqual({ characters: 3, bytes: 7 });
  });
});
