import { LOST, signs } from '#app/paper/signs.ts';
import type { Content } from '#lib/lesson/content.ts';
import { cardSigns } from '#lib/recording/card-signs.ts';

/** Most signs that are named; the rest are counted. */
const MOST_NAMED = 12;

/** Tells which letters of the saved draft the printed sheets and the picture for links cannot show, so that nobody finds it out there. */
export async function PrintedSigns({ content }: { readonly content: Content }) {
  const onPaper = (await signs()).lostIn(printedTexts(content).join('\n'));
  const onCard = (await cardSigns()).lostIn([content.title, content.weave].join('\n'));
  return (
    <>
      {onPaper.length === 0 ? null : (
        <p className="notice caution">
          <strong>Printed sheets cannot show some letters or signs of this lesson:</strong>{' '}
          <Named signs={onPaper} />. They read {LOST} there: sheets print Latin, Greek, Cyrillic, Armenian and
          Georgian letters and the usual signs. The lesson page, captions and texts show everything.
        </p>
      )}
      {onCard.length === 0 ? null : (
        <p className="notice caution">
          <strong>The picture for links leaves some letters or signs out:</strong> <Named signs={onCard} />.
          Where nothing is left of a title, the weave or your workshop’s name stands in its place.
        </p>
      )}
    </>
  );
}

const Named = ({ signs: lost }: { readonly signs: readonly string[] }) => (
  <>
    <span>{lost.slice(0, MOST_NAMED).join(' ')}</span>
    {lost.length > MOST_NAMED ? ` and ${lost.length - MOST_NAMED} more` : ''}
  </>
);

const printedTexts = (content: Content): readonly string[] => [
  content.title,
  content.weave,
  ...[...content.start, ...content.repeat, ...content.finishing, ...content.steps].map(
    ({ sentence }) => sentence,
  ),
  ...[...content.ringKinds, ...content.materials, ...content.sizes].map(({ name }) => name),
  ...content.ringKinds.flatMap(({ colour, metalName }) => [colour, metalName]),
  ...content.chapters.map(({ title }) => title),
  ...content.cautions.map(({ text }) => text),
  ...content.corrections.flatMap(({ wrong, right }) => [wrong, right]),
];
