/**
 * The text that goes beside the recording wherever it is hosted: plain text,
 * part by part. The same revision gives the same bytes.
 */
import { chaptersInOrder } from '#lib/chapters/chapter-rules.ts';
import { kitFor } from '#lib/kit/kit-list.ts';
import { formatTimeCode } from '#lib/time/time-code.ts';
import { sizeWords } from './asked-measure.ts';
import { cautionWords } from './cautions.ts';
import type { Content } from './content.ts';
import { correctionsNewestFirst } from './corrections.ts';
import { isTool, perWord, quantityWord, ringFacts } from './making-words.ts';
import { plainLine, plainParagraphs } from './plain-line.ts';

interface Part {
  /** Empty for the summary, which needs none. */
  readonly heading: string;
  readonly lines: readonly string[];
}

/**
 * @param lessonAddress of the lesson page, or null where it has none yet
 * @returns text with `\n` line ends that ends in one; parts without content are left out
 */
export function descriptionText(content: Content, lessonAddress: string | null): string {
  const parts = [
    summary(content),
    {
      heading: '',
      lines:
        lessonAddress === null
          ? []
          : [`Lesson page with stills and a kit for your own length: ${lessonAddress}`],
    },
    chapters(content),
    rings(content),
    materials(content),
    tools(content),
    links(content),
    cautions(content),
    corrections(content),
    licence(content),
  ];
  return `${parts
    .filter((part) => part.lines.length > 0)
    .map((part) => [...(part.heading === '' ? [] : [part.heading]), ...part.lines].join('\n'))
    .join('\n\n')}\n`;
}

const summary = (content: Content): Part => ({
  heading: '',
  lines: [plainParagraphs(content.summary) || plainLine(content.title)].filter((text) => text !== ''),
});

const chapters = (content: Content): Part => ({
  heading: 'Chapters',
  lines: chaptersInOrder(content.chapters).map(
    (chapter) => `${formatTimeCode(chapter.startMs)} ${plainLine(chapter.title)}`,
  ),
});

/** Each ring kind with its facts, and below it what every size takes of it. */
function rings(content: Content): Part {
  const kits = content.sizes.flatMap((size) => {
    const kit = kitFor(content, size.bodyMm);
    return kit.ok ? [{ size, kit: kit.value }] : [];
  });
  const lines = content.ringKinds.flatMap((kind) => [
    `- ${plainLine(kind.name)}: ${plainLine(ringFacts(kind))}${offerLink(kind.offer)}`,
    ...kits.flatMap(({ size, kit }) => {
      const line = kit.rings.find((ring) => ring.ringKind.id === kind.id);
      if (!line) return [];
      const split = `${line.opened} opened + ${line.closed} closed`;
      const spare = line.spare > 0 ? ` + ${line.spare} spare = ${line.issued}` : '';
      return [`    ${plainLine(sizeWords(size))}: ${split}${spare}`];
    }),
  ]);
  return { heading: 'Rings', lines };
}

const offerLink = (offer: Content['materials'][number]['offer']): string =>
  offer === null || offer.link === '' ? '' : ` ${plainLine(offer.link)}`;

const itemLine = (item: Content['materials'][number]): string => {
  const quantity = [quantityWord(item.quantityMilli, plainLine(item.unit)), perWord(item.per)]
    .filter((word) => word !== '')
    .join(' ');
  return `- ${plainLine(item.name)}: ${quantity}${offerLink(item.offer)}`;
};

const materials = (content: Content): Part => ({
  heading: 'Other materials',
  lines: content.materials.filter((item) => !isTool(item)).map(itemLine),
});

const tools = (content: Content): Part => ({
  heading: 'Tools',
  lines: content.materials.filter(isTool).map(itemLine),
});

const links = (content: Content): Part => ({
  heading: 'Links',
  lines: content.links.map((link) =>
    plainLine(link.label === '' ? link.address : `${link.label}: ${link.address}`),
  ),
});

const cautions = (content: Content): Part => ({
  heading: 'Cautions',
  lines: content.cautions.map((caution) => {
    const { title, text } = cautionWords(caution);
    return `- ${title === '' ? '' : `${title}: `}${plainLine(text)}`;
  }),
});

const corrections = (content: Content): Part => ({
  heading: 'Corrections',
  lines: correctionsNewestFirst(content.corrections).map((correction) => {
    const at =
      correction.startMs === null || correction.endMs === null
        ? ''
        : `${formatTimeCode(correction.startMs)} to ${formatTimeCode(correction.endMs)}, `;
    const kits = correction.kitsChange ? ' Kits change.' : '';
    return `- ${at}${correction.kind}: “${plainLine(correction.wrong)}” Right: “${plainLine(correction.right)}” Concerns: ${plainLine(correction.affects)}.${kits}`;
  }),
});

const licence = (content: Content): Part => ({
  heading: 'Licence',
  lines: [plainLine(content.licence)].filter((text) => text !== ''),
});

/** Length of a text in characters as people count them, and in UTF-8 bytes: hosts limit one or the other. */
export const lengthsOf = (text: string): { readonly characters: number; readonly bytes: number } => ({
  characters: [...text].length,
  bytes: new TextEncoder().encode(text).length,
});
