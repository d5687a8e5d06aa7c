/** A description text's parts, written as plain text, Markdown or HTML. The same parts give the same bytes. */
import { escapeUTF8 } from 'entities';
import type { DescriptionPart, Item } from './description-parts.ts';

export const DESCRIPTION_FORMATS = ['text', 'markdown', 'html'] as const;
export type DescriptionFormat = (typeof DESCRIPTION_FORMATS)[number];

/** @returns text with `\n` line ends that ends in one; empty where there are no parts */
export function writeDescription(parts: readonly DescriptionPart[], format: DescriptionFormat): string {
  const written = parts.map(WRITERS[format]);
  return written.length === 0 ? '' : `${written.join(BETWEEN[format])}\n`;
}

const BETWEEN = { text: '\n\n', markdown: '\n\n', html: '\n' } as const;

const WRITERS: Readonly<Record<DescriptionFormat, (part: DescriptionPart) => string>> = {
  text: writeText,
  markdown: writeMarkdown,
  html: writeHtml,
};

function writeText({ heading, body }: DescriptionPart): string {
  const lines =
    body.as === 'paragraphs'
      ? [body.text]
      : body.items.flatMap(({ text, link, below }) => [
          `${body.as === 'list' ? '- ' : ''}${[text, link].filter((piece) => piece !== '').join(' ')}`,
          ...below.map((line) => `    ${line}`),
        ]);
  return [...(heading === '' ? [] : [heading]), ...lines].join('\n');
}

/** The one line of a part that stands without a heading: no list is made of it. */
const onlyLine = ({ heading, body }: DescriptionPart): Item | null =>
  heading === '' && body.as === 'lines' && body.items.length === 1 ? (body.items[0] ?? null) : null;

function writeMarkdown(part: DescriptionPart): string {
  const { heading, body } = part;
  const only = onlyLine(part);
  if (only) return markdownItem(only);
  const content =
    body.as === 'paragraphs'
      ? body.text
          .split('\n')
          .map((line) => markdownText(line))
          // Two spaces before its end keep a line's end (CommonMark, hard line breaks); an empty line parts paragraphs.
          .join('  \n')
          .replace(/ {2}\n {2}\n/g, '\n\n')
      : body.items
          .flatMap((item) => [
            `- ${markdownItem(item)}`,
            ...item.below.map((line) => `  - ${markdownText(line)}`),
          ])
          .join('\n');
  return heading === '' ? content : `## ${markdownText(heading)}\n\n${content}`;
}

const markdownItem = ({ text, link }: Item): string =>
  [markdownText(text), link === '' ? '' : markdownLink(link)].filter((piece) => piece !== '').join(' ');

/** CommonMark lets every ASCII punctuation character be escaped; these are the ones that could mean something. */
const markdownText = (text: string): string =>
  text
    .replace(/[\\`*_[\]<>&|~#!$@]/g, '\\$&')
    .replace(/^(\s*)([-+=])/, '$1\\$2')
    .replace(/^(\s*\d{1,9})([.)])/, '$1\\$2')
    .replace(/(https?|ftp|www|mailto)([:.])/gi, '$1\\$2');

/** An autolink (CommonMark 6.5): an address in angle brackets, which may hold anything but brackets and white space. */
const markdownLink = (link: string): string =>
  `<${link.replace(/[<>\s]/g, (character) => encodeURIComponent(character))}>`;

function writeHtml(part: DescriptionPart): string {
  const { heading, body } = part;
  const only = onlyLine(part);
  if (only) return `<p>${htmlPieces(only)}</p>`;
  const content =
    body.as === 'paragraphs'
      ? body.text
          .split('\n\n')
          .map((paragraph) => `<p>${paragraph.split('\n').map(escapeUTF8).join('<br>\n')}</p>`)
          .join('\n')
      : `<ul>\n${body.items.map(htmlItem).join('\n')}\n</ul>`;
  return heading === '' ? content : `<h2>${escapeUTF8(heading)}</h2>\n${content}`;
}

function htmlPieces({ text, link }: Item): string {
  const address = escapeUTF8(link);
  const pieces = [escapeUTF8(text), link === '' ? '' : `<a href="${address}">${address}</a>`];
  return pieces.filter((piece) => piece !== '').join(' ');
}

function htmlItem(item: Item): string {
  const { below } = item;
  const nested =
    below.length === 0
      ? ''
      : `\n<ul>\n${below.map((line) => `<li>${escapeUTF8(line)}</li>`).join('\n')}\n</ul>\n`;
  return `<li>${htmlPieces(item)}${nested}</li>`;
}
