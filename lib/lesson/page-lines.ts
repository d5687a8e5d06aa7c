/** What the lesson page says, as lines in its order: to show what of it changes, without the page's look. */
import { formatTimeCode } from '#lib/time/time-code.ts';
import { cautionWords } from './cautions.ts';
import { correctionsNewestFirst } from './corrections.ts';
import { perWord, quantityWord, ringFacts } from './making-words.ts';
import { PART_TITLES, pageSteps } from './page-steps.ts';
import type { Revision } from './revision.ts';

/** Captions and kits are not among them: they are told on their own. */
export function pageLines({ content, terms }: Pick<Revision, 'content' | 'terms'>): readonly string[] {
  const at = (ms: number | null): string => (ms === null ? '' : ` (${formatTimeCode(ms)})`);
  return [
    content.title,
    content.summary,
    [content.weave, content.otherNames].filter((name) => name !== '').join(', '),
    ...content.chapters.map(({ title, startMs }) => `Chapter ${formatTimeCode(startMs)} ${title}`),
    ...correctionsNewestFirst(content.corrections).map(
      ({ kind, wrong, right, affects }) =>
        `Correction, ${kind}: ${wrong} Right: ${right} Concerns: ${affects}`,
    ),
    ...content.cautions.map((caution) => `Caution: ${cautionWords(caution).text}`),
    ...content.ringKinds.map((kind) => `${kind.name}: ${ringFacts(kind)}`),
    ...content.materials.map(({ name, quantityMilli, unit, per, note }) =>
      [`${name}: ${quantityWord(quantityMilli, unit)}`, perWord(per), note]
        .filter((text) => text !== '')
        .join(' '),
    ),
    ...pageSteps(content).map(
      ({ part, number, sentence, atMs }) => `${PART_TITLES[part]}, ${number}${at(atMs)}: ${sentence}`,
    ),
    ...terms.map(({ term, meaning }) => `${term}: ${meaning}`),
    ...content.links.map(({ label, address }) => `${label} ${address}`),
    content.licence,
  ].filter((line) => line.trim() !== '');
}
