/**
 * What the text beside a recording says of a lesson, part by part, before it
 * is written in any format.
 */
import { chaptersInOrder } from '#lib/chapters/chapter-rules.ts';
import { kitFor, type RingLine } from '#lib/kit/kit-list.ts';
import { sizeWords } from '#lib/lesson/asked-measure.ts';
import { cautionWords } from '#lib/lesson/cautions.ts';
import type { Content } from '#lib/lesson/content.ts';
import { correctionsNewestFirst } from '#lib/lesson/corrections.ts';
import { isTool, perWord, quantityWord, ringFacts } from '#lib/lesson/making-words.ts';
import { plainLine, plainParagraphs } from '#lib/lesson/plain-line.ts';
import { formatTimeCode } from '#lib/time/time-code.ts';
import { type DescriptionSetup, HEADINGS, type PartKind } from './description-setup.ts';

/** One thing of a list; `link` is an address that stands behind the text. */
export interface Item {
  readonly text: string;
  readonly link: string;
  /** Lines that belong to it. */
  readonly below: readonly string[];
}

export type PartBody =
  /** Text as it was written; an empty line parts paragraphs. */
  | { readonly as: 'paragraphs'; readonly text: string }
  | { readonly as: 'list'; readonly items: readonly Item[] }
  /** Lines that must begin with what they say, such as a time. */
  | { readonly as: 'lines'; readonly items: readonly Item[] };

export interface DescriptionPart {
  readonly kind: PartKind;
  /** Empty where the part stands without one. */
  readonly heading: string;
  readonly body: PartBody;
}

/**
 * The parts that a workshop shows, in its order; parts with nothing to say are left out.
 * @param lessonAddress of the lesson page, or null where it has none yet
 */
export function descriptionParts(
  content: Content,
  lessonAddress: string | null,
  setup: DescriptionSetup,
): DescriptionPart[] {
  const tagged = (address: string): string => withCampaign(address, setup.campaign);
  return setup.parts.flatMap(({ kind, shown, heading }) => {
    if (!shown) return [];
    const body = BODIES[kind](content, { lessonAddress, house: setup.house, tagged });
    return hasContent(body) ? [{ kind, heading: headingIn(content, kind, heading), body }] : [];
  });
}

/** Where there are no rings, other materials are no others; a heading of the workshop's own stands as it is. */
const headingIn = (content: Content, kind: PartKind, heading: string): string =>
  kind === 'materials' && heading === HEADINGS.materials && content.ringKinds.length === 0
    ? 'Materials'
    : plainLine(heading);

const hasContent = (body: PartBody): boolean =>
  body.as === 'paragraphs' ? body.text !== '' : body.items.length > 0;

/** A web address with a campaign's tag in its query; an address that is none of the web, or cannot be read, stays as it is. */
export function withCampaign(address: string, campaign: string): string {
  if (campaign === '' || !/^https?:/i.test(address) || !URL.canParse(address)) return address;
  const url = new URL(address);
  for (const [name, value] of new URLSearchParams(campaign)) url.searchParams.set(name, value);
  return url.href;
}

interface Around {
  readonly lessonAddress: string | null;
  readonly house: string;
  readonly tagged: (address: string) => string;
}
type Body = (content: Content, around: Around) => PartBody;

const item = (text: string, link = ''): Item => ({ text, link: plainLine(link), below: [] });
const paragraphs = (text: string): PartBody => ({ as: 'paragraphs', text });

const summary: Body = (content) => paragraphs(plainParagraphs(content.summary) || plainLine(content.title));

const page: Body = (_content, { lessonAddress, tagged }) => ({
  as: 'lines',
  items:
    lessonAddress === null
      ? []
      : [item('Lesson page with stills and a kit for your own length:', tagged(lessonAddress))],
});

const chapters: Body = (content) => ({
  as: 'lines',
  items: chaptersInOrder(content.chapters).map((chapter) =>
    item(`${formatTimeCode(chapter.startMs)} ${plainLine(chapter.title)}`),
  ),
});

/** Each ring kind with its facts, and below it what every size takes of it. */
const rings: Body = (content, { tagged }) => {
  const kits = content.sizes.flatMap((size) => {
    const kit = kitFor(content, size.bodyMm);
    return kit.ok ? [{ size, kit: kit.value }] : [];
  });
  const items = content.ringKinds.map((kind) => ({
    ...item(`${plainLine(kind.name)}: ${plainLine(ringFacts(kind))}`, offerLink(kind.offer, tagged)),
    below: kits.flatMap(({ size, kit }) => {
      const line = kit.rings.find((ring) => ring.ringKind.id === kind.id);
      if (!line) return [];
      return [`${plainLine(sizeWords(size))}: ${ringsTaken(line)}`];
    }),
  }));
  return { as: 'list', items };
};

/** `88 opened + 2 closed + 9 spare = 99`, without what is nought. */
function ringsTaken({ opened, closed, spare, issued }: RingLine): string {
  const parts = [`${opened} opened`, `${closed} closed`, `${spare} spare`].filter(
    (part) => !part.startsWith('0 '),
  );
  return `${parts.join(' + ') || '0'}${parts.length > 1 ? ` = ${issued}` : ''}`;
}

type Material = Content['materials'][number];

const offerLink = (offer: Material['offer'], tagged: Around['tagged']): string =>
  offer === null || offer.link === '' ? '' : tagged(offer.link);

const materialItem = (material: Material, tagged: Around['tagged']): Item => {
  const quantity = [quantityWord(material.quantityMilli, plainLine(material.unit)), perWord(material.per)]
    .filter((word) => word !== '')
    .join(' ');
  return item(`${plainLine(material.name)}: ${quantity}`, offerLink(material.offer, tagged));
};

const materialsWhere =
  (wanted: (material: Material) => boolean): Body =>
  (content, { tagged }) => ({
    as: 'list',
    items: content.materials.filter(wanted).map((material) => materialItem(material, tagged)),
  });

const links: Body = (content, { tagged }) => ({
  as: 'lines',
  items: content.links.map(({ label, address }) =>
    item(label === '' ? '' : `${plainLine(label)}:`, tagged(address)),
  ),
});

const cautions: Body = (content) => ({
  as: 'list',
  items: content.cautions.map((caution) => {
    const { title, text } = cautionWords(caution);
    return item(`${title === '' ? '' : `${title}: `}${plainLine(text)}`);
  }),
});

const corrections: Body = (content) => ({
  as: 'list',
  items: correctionsNewestFirst(content.corrections).map((correction) => {
    // Never first in its line: a place that looks for chapters would take it for one out of order.
    const at =
      correction.startMs === null || correction.endMs === null
        ? ''
        : ` at ${formatTimeCode(correction.startMs)} to ${formatTimeCode(correction.endMs)}`;
    const kits = correction.kitsChange ? ' Kits change.' : '';
    const kind = `${correction.kind.charAt(0).toUpperCase()}${correction.kind.slice(1)}`;
    return item(
      `${kind}${at}: “${plainLine(correction.wrong)}” Right: “${plainLine(correction.right)}” Concerns: ${plainLine(correction.affects).replace(/[.\s]+$/, '')}.${kits}`,
    );
  }),
});

const BODIES: Readonly<Record<PartKind, Body>> = {
  summary,
  page,
  chapters,
  rings,
  materials: materialsWhere((material) => !isTool(material)),
  tools: materialsWhere(isTool),
  links,
  cautions,
  corrections,
  licence: (content) => paragraphs(plainLine(content.licence)),
  house: (_content, { house }) => paragraphs(plainParagraphs(house)),
};
