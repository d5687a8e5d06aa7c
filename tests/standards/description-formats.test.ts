/**
 * Description texts as Markdown and HTML, read back by outside readers: npm
 * commonmark, the reference implementation of the CommonMark specification
 * (0.31), and html-validate. Whatever a teacher types must come out as the
 * text that it is, with no link, emphasis or element that she did not make.
 */
import { Parser } from 'commonmark';
import fc from 'fast-check';
import { HtmlValidate } from 'html-validate';
import { describe, expect, test } from 'vitest';
import { DEFAULT_SETUP } from '#lib/description/description-setup.ts';
import { composeDescription } from '#lib/description/description-text.ts';
import type { DescriptionFormat } from '#lib/description/write-description.ts';
import type { Content } from '#lib/lesson/content.ts';
import { plainLine } from '#lib/lesson/plain-line.ts';
import { aContent } from '#tests/support/a-content.ts';

const written = (content: Content, format: DescriptionFormat): string =>
  composeDescription({
    content,
    setup: DEFAULT_SETUP,
    lessonAddress: 'https://bench.example/workshop/k/lesson/b',
    durationMs: null,
    format,
  }).text;

interface Read {
  readonly text: string;
  readonly links: readonly string[];
  /** Kinds of nodes beside plain blocks, text and links. */
  readonly strange: readonly string[];
}

const EXPECTED = [
  'document',
  'heading',
  'paragraph',
  'list',
  'item',
  'text',
  'link',
  'softbreak',
  'linebreak',
];

function readMarkdown(markdown: string): Read {
  const walker = new Parser().parse(markdown).walker();
  let text = '';
  const links: string[] = [];
  const strange: string[] = [];
  for (let step = walker.next(); step; step = walker.next()) {
    const { node, entering } = step;
    if (!entering) continue;
    if (!EXPECTED.includes(node.type)) strange.push(node.type);
    if (node.type === 'text') text += node.literal ?? '';
    else if (node.type !== 'link') text += '\n';
    if (node.type === 'link') links.push(node.destination ?? '');
  }
  return { text, links, strange };
}

/** What Markdown and HTML give a meaning to, and pieces that begin a block in them. */
const hostile = fc
  .array(
    fc.oneof(
      fc.constantFrom(
        ...[
          '*',
          '_',
          '`',
          '<',
          '>',
          '[',
          ']',
          '(',
          ')',
          '!',
          '#',
          '-',
          '+',
          '=',
          '|',
          '~',
          '&',
          '\\',
          '$',
          '@',
        ],
        ...['1.', '2)', '---', '```', '<b>', '</ul>', '&amp;', '&#106;', '"', "'", 'https://x.example', ' '],
        ...['<script>', '![a](b)', '[a]: b', 'word', '½', '🧵'],
      ),
      fc.string({ maxLength: 3 }),
    ),
    { minLength: 1, maxLength: 12 },
  )
  .map((pieces) => pieces.join(''));

describe('Markdown (CommonMark 0.31, read by npm commonmark)', () => {
  test('hostile titles, names and lines come out as the text they are', () => {
    fc.assert(
      fc.property(hostile, hostile, hostile, (title, label, licence) => {
        const content = aContent({
          chapters: [{ id: '1', kind: 'opening', title, startMs: 0 }],
          links: [{ id: 'l', label, address: 'https://shop.example/a_(b)_c?x=1&y=<2>' }],
          licence,
        });
        const read = readMarkdown(written(content, 'markdown'));
        expect(read.strange).toEqual([]);
        expect(read.links.every((link) => /^https:\/\/(bench|shop)\.example\//.test(link))).toBe(true);
        expect(read.text).toContain(`0:00 ${plainLine(title)}`.trimEnd());
        if (plainLine(label) !== '') expect(read.text).toContain(`${plainLine(label)}:`);
        expect(read.text).toContain(plainLine(licence));
      }),
      { numRuns: 300 },
    );
  });

  test('a summary keeps its paragraphs and line ends', () => {
    const { text } = readMarkdown(written(aContent({ summary: 'One\ntwo\n\n- three' }), 'markdown'));
    expect(text.startsWith('\n\nOne\ntwo\n- three')).toBe(true);
  });
});

describe('HTML (checked by npm html-validate)', () => {
  const validator = new HtmlValidate({ extends: ['html-validate:recommended'] });

  test('hostile text is valid and opens no element', async () => {
    for (const text of fc.sample(hostile, { numRuns: 60, seed: 7 })) {
      const html = written(aContent({ title: text, summary: text, licence: text }), 'html');
      const report = await validator.validateString(html);
      expect(report.results.flatMap(({ messages }) => messages.map(({ message }) => message))).toEqual([]);
      expect(
        [...html.matchAll(/<\/?([a-z0-9]+)/gi)].every(([, name = '']) =>
          ['p', 'br', 'h2', 'ul', 'li', 'a'].includes(name),
        ),
      ).toBe(true);
    }
  });
});
