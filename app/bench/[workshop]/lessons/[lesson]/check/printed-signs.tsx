import { LOST, signs } from '#app/paper/signs.ts';
import type { Content } from '#lib/lesson/content.ts';

/** Most signs that are named; the rest are counted. */
const MOST_NAMED = 12;

/** Tells which letters of the saved draft the printed sheets cannot show, so that nobody finds it out on paper. */
export async function PrintedSigns({ content }: { readonly content: Content }) {
  const { lostIn } = await signs();
  const lost = lostIn(printedTexts(content).join('\n'));
  if (lost.length === 0) return null;
  const named = lost.slice(0, MOST_NAMED).join(' ');
  return (
    <p className="notice caution">
      <strong>Printed sheets cannot show some letters or signs of this lesson:</strong> <span>{named}</span>
      {lost.length > MOST_NAMED ? ` and ${lost.length - MOST_NAMED} more` : ''}. They read {LOST} there:
      sheets print Latin, Greek, Cyrillic, Armenian and Georgian letters and the usual signs. The lesson page,
      captions and texts show everything.
    </p>
  );
}

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
