/** A correction in plain sentences, for feeds. */
import type { Correction } from '#lib/lesson/content.ts';

/** What was wrong, what is right, whom it concerns, and whether kits change. */
export const correctionSentences = ({ wrong, right, affects, kitsChange }: Correction): readonly string[] => [
  `Wrong: ${wrong.trim()}`,
  `Right: ${right.trim()}`,
  ...(affects.trim() === '' ? [] : [`Concerns: ${affects.trim()}`]),
  kitsChange ? 'Kits change: see your kit on the lesson page.' : 'Kits stay as they are.',
];
